/** The Spanish catalogue; each file's type is its English twin's. */
import { app } from './app';
import { bench } from './bench';
import { debrief, finish } from './finish';
import { guide } from './guide';
import { names } from './names';
import { panels } from './panels';

export const es = { app, bench, debrief, finish, guide, names, panels };
