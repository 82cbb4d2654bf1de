import type { Place } from '../../types';
export const COLD_ROOM_PLACES: readonly Place[] = [];
