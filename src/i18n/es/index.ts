/** The Spanish catalogue; each file's type is its English twin's. */
import { app } from './app';
import { bench } from './bench';
import { examiner } from './examiner';
import { debrief, finish } from './finish';
import { guide } from './guide';
import { names } from './names';
import { panels } from './panels';

export const es = { app, bench, debrief, examiner, finish, guide, names, panels };
