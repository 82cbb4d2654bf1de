import type { PlantDrawing } from '../types';

export const HEAT_RECOVERY_DRAWING: PlantDrawing = {
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
