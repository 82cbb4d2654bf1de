import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { type FoundChromium, findChromium } from './chromium.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    chromium: FoundChromium;
    /** Where the built page is served, with a slash at the end. */
    baseUrl: string;
  }
}

/** Builds the page once into a folder of this run's own and serves it, so that tests see what a person gets. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const cache = join(project.config.root, 'node_modules', '.cache', 'coldbench');
  await mkdir(cache, { recursive: true });
  const outDir = await mkdtemp(join(cache, 'dist-'));
  const chromium = await findChromium();
  await build({ logLevel: 'warn', build: { outDir, emptyOutDir: true } });
  const server = await preview({
    logLevel: 'warn',
    build: { outDir },
    preview: { host: '127.0.0.1', port: 0, strictPort: false, open: false },
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error('the preview server has no port');
  project.provide('chromium', chromium);
  project.provide('baseUrl', `http://127.0.0.1:${address.port}/`);
  return async () => {
    await server.close();
    await rm(outDir, { recursive: true, force: true });
  };
}
