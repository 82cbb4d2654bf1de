import { fileURLToPath } from 'node:url';
import { build, type Rollup } from 'vite';

/** One file of `tests/browser/entries` with all it imports, as a script that a page can evaluate. */
export async function bundled(entry: string): Promise<string> {
  const file = fileURLToPath(new URL(`../entries/${entry}.ts`, import.meta.url));
  const built = await build({
    configFile: false,
    logLevel: 'error',
    define: { 'process.env.NODE_ENV': '"production"' },
    build: { write: false, minify: false, lib: { entry: file, formats: ['iife'], name: 'entry', fileName: entry } },
  });
  const [{ output }] = built as Rollup.RollupOutput[] as [Rollup.RollupOutput];
  return output[0].code;
}
