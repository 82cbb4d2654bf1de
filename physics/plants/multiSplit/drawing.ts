import type { PlantDrawing } from '../types';

export const MULTI_SPLIT_DRAWING: PlantDrawing = {
  width: 20,
  height: 12,
  ground: 11,
  views: [],
  blocks: [],
  parts: [],
  pipes: [],
  air: [],
  wires: [],
  drain: [],
};
