/** The English catalogue, source of every key. One file an area. */
import { app } from './app';
import { bench } from './bench';
import { names } from './names';
import { panels } from './panels';

export const en = { app, bench, names, panels } as const;
