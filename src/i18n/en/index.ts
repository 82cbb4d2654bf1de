/** The English catalogue, source of every key. One file an area. */
import { app } from './app';
import { names } from './names';

export const en = { app, names } as const;
