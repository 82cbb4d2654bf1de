// Finds a Chromium for the browser tests: $CHROMIUM_PATH, then /usr/bin/chromium, then the one that npm installed.
// Run as a program it prints what it found.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync, mkdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { brotliDecompressSync } from 'node:zlib';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
const PACKAGE = join(ROOT, 'node_modules', '@sparticuz', 'chromium');

/** @returns {Promise<{ executablePath: string, env: Record<string, string>, from: string }>} */
export async function findChromium() {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (!isExecutable(named)) throw new Error(`CHROMIUM_PATH names "${named}", which is not an executable file`);
    return { executablePath: named, env: {}, from: 'CHROMIUM_PATH' };
  }
  if (isExecutable('/usr/bin/chromium')) return { executablePath: '/usr/bin/chromium', env: {}, from: 'the system' };
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error(
      'No Chromium found. Install one and set CHROMIUM_PATH to it (the bundled one is for Linux x64 only).',
    );
  }
  return unpackBundled();
}

/**
 * Unpacks the Chromium inside @sparticuz/chromium once, into a folder named by its version: the package's own
 * folder in the system's temporary directory is reused whatever its version, and two first calls race in it.
 */
async function unpackBundled() {
  const version = JSON.parse(readFileSync(join(PACKAGE, 'package.json'), 'utf8')).version;
  const home = join(ROOT, 'node_modules', '.cache', 'coldbench', `chromium-${version}`);
  if (!existsSync(home)) {
    const staging = `${home}.${process.pid}`;
    mkdirSync(staging, { recursive: true });
    const before = process.env.TMPDIR;
    process.env.TMPDIR = staging;
    try {
      const { default: chromium } = await import('@sparticuz/chromium');
      await chromium.executablePath();
    } finally {
      if (before === undefined) delete process.env.TMPDIR;
      else process.env.TMPDIR = before;
    }
    unpackLibraries(staging);
    try {
      renameSync(staging, home);
    } catch (error) {
      // Another run was first; its folder is as good as ours.
      rmSync(staging, { recursive: true, force: true });
      if (!existsSync(home)) throw error;
    }
  }
  const env = {};
  if (!hasLibrary('libnspr4.so')) env.LD_LIBRARY_PATH = join(home, 'al2023', 'lib');
  if (!existsSync('/etc/fonts/fonts.conf')) env.FONTCONFIG_PATH = join(home, 'fonts');
  return { executablePath: join(home, 'chromium'), env, from: `@sparticuz/chromium ${version}` };
}

/** The shared libraries that slim images lack; the package itself unpacks them only on one cloud's machines. */
function unpackLibraries(folder) {
  const target = join(folder, 'al2023');
  mkdirSync(target, { recursive: true });
  const archive = brotliDecompressSync(readFileSync(join(PACKAGE, 'bin', 'al2023.tar.br')));
  const tar = spawnSync('tar', ['-x', '-C', target], { input: archive });
  if (tar.status !== 0) throw new Error(`could not unpack the browser's libraries: ${tar.stderr}`);
}

function hasLibrary(name) {
  const listed = spawnSync('/sbin/ldconfig', ['-p'], { encoding: 'utf8' });
  return listed.status === 0 && listed.stdout.includes(name);
}

function isExecutable(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { executablePath, from } = await findChromium();
  console.log(`browser tests will use ${executablePath} (from ${from})`);
}
