import type { Place } from '../types';

export const HEAT_RECOVERY_PLACES: readonly Place[] = [];
