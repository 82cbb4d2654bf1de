import type { PlantDrawing } from '../../types';
export const COLD_ROOM_DRAWING: PlantDrawing = { width: 10, height: 6, ground: 5.5, views: [], blocks: [], parts: [], pipes: [], air: [], wires: [], drain: [] };
