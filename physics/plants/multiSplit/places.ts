import type { Place } from '../types';

export const MULTI_SPLIT_PLACES: readonly Place[] = [];
