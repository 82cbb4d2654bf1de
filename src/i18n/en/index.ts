/** The English catalogue, source of every key. One file an area. */
import { app } from './app';
import { bench } from './bench';
import { examiner } from './examiner';
import { debrief, finish } from './finish';
import { guide } from './guide';
import { names } from './names';
import { panels } from './panels';

export const en = { app, bench, debrief, examiner, finish, guide, names, panels } as const;
