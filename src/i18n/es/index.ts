/** The Spanish catalogue; each file's type is its English twin's. */
import { app } from './app';
import { bench } from './bench';
import { names } from './names';
import { panels } from './panels';

export const es = { app, bench, names, panels };
