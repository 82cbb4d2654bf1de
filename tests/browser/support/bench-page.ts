import { mkdtemp, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { build, preview } from 'vite';

export interface BenchPageServer {
  /** Address of the page without its query. */
  readonly url: string;
  close(): Promise<void>;
}

const ROOT = join(import.meta.dirname, '..', '..', '..');

/** Builds and serves tests/browser/bench-page, the drawn machine by itself, under the policy of the real page. */
export async function serveBenchPage(): Promise<BenchPageServer> {
  const outDir = await mkdtemp(join(ROOT, 'node_modules', '.cache', 'coldbench', 'bench-page-'));
  const page = 'tests/browser/bench-page/index.html';
  await build({
    root: ROOT,
    logLevel: 'warn',
    build: { outDir, emptyOutDir: true, target: 'es2022', rolldownOptions: { input: join(ROOT, page) } },
  });
  const server = await preview({
    root: ROOT,
    logLevel: 'warn',
    build: { outDir },
    preview: { host: '127.0.0.1', port: 0, strictPort: false, open: false },
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error('the preview server has no port');
  return {
    url: `http://127.0.0.1:${address.port}/${page}`,
    async close() {
      await server.close();
      await rm(outDir, { recursive: true, force: true });
    },
  };
}
