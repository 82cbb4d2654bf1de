/** The Spanish catalogue; each file's type is its English twin's. */
import { app } from './app';
import { names } from './names';

export const es = { app, names };
