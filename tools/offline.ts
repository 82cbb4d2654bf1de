/** Builds the keeper of files (src/app/offline/worker.ts) and puts into it what the build consists of. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

const WORKER = fileURLToPath(new URL('../src/app/offline/worker.ts', import.meta.url));
const FILE = 'offline.js';
const PLACE = '__OFFLINE_BUILD__';

export function offline(): Plugin {
  return {
    name: 'offline',
    apply: 'build',
    buildStart() {
      this.emitFile({ type: 'chunk', id: WORKER, fileName: FILE });
    },
    writeBundle({ dir }) {
      if (dir) writeFileSync(join(dir, FILE), stamped(readFileSync(join(dir, FILE), 'utf8'), dir));
    },
  };
}

/** The worker's code with the list of files and their common version in it. */
export function stamped(code: string, dist: string): string {
  if (code.split(PLACE).length !== 2) throw new Error(`${FILE}: "${PLACE}" must stand in it exactly once`);
  return code.replace(PLACE, JSON.stringify(contentOf(dist)));
}

function contentOf(dist: string): { version: string; files: string[] } {
  const files = filesIn(dist).sort();
  const hash = createHash('sha256');
  for (const file of files)
    hash
      .update(file)
      .update('\0')
      .update(readFileSync(join(dist, file)))
      .update('\0');
  // The page is asked for by its folder: some servers redirect from its file's name.
  return { version: hash.digest('hex').slice(0, 16), files: files.map((file) => (file === 'index.html' ? '' : file)) };
}

function filesIn(folder: string, prefix = ''): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = posix.join(prefix, entry.name);
    if (path === FILE || path === '.vite') return [];
    return entry.isDirectory() ? filesIn(join(folder, entry.name), path) : [path];
  });
}
