/** The English catalogue, source of every key. One file an area. */
import { app } from './app';
import { bench } from './bench';
import { names } from './names';

export const en = { app, bench, names } as const;
