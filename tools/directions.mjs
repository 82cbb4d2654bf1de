// Imports run one way. This check reads every import in physics/ and src/ and refuses an arrow that runs back,
// a package that a layer may not use, and a folder that is not in the table below.
import { posix } from 'node:path';
import { pathToFileURL } from 'node:url';
import { importsOf, listCode, parse } from './source-files.mjs';

const PHYSICS = ['physics'];
const INSTRUMENTS = [...PHYSICS, 'src/instruments'];
const ATTEMPT = [...INSTRUMENTS, 'src/attempt', 'scenarios'];
const CORE = [...ATTEMPT, 'src/examiner'];
const SHOWN = [...CORE, 'src/i18n'];
const STYLED = [...SHOWN, 'src/styles'];

/** For each layer: which layers it may import besides itself, which packages, and the reason in one sentence. */
export const LAYERS = {
  physics: {
    may: [],
    packages: [],
    why: 'the machine is pure: it must give the same bits in every engine and know nothing of what is built on it',
  },
  scenarios: { may: [], packages: [], why: 'packs are data' },
  'src/instruments': {
    may: PHYSICS,
    packages: ['seedrandom'],
    why: 'a reading is made from the machine and a seed, never from what the trainee did with it or how it is shown',
  },
  'src/attempt': {
    may: [...INSTRUMENTS, 'scenarios'],
    packages: ['seedrandom', 'immer', 'lz-string', 'zod', 'idb'],
    why: 'an attempt is replayed without a screen and without knowing how it will be judged',
  },
  'src/examiner': {
    may: ATTEMPT,
    packages: ['seedrandom'],
    why: 'the examiner emits message keys and computed values; words and screens are made from them elsewhere',
  },
  'src/packs': {
    may: CORE,
    packages: ['zod'],
    why: 'packs are drawn and proven with what the examiner knows; only practice draws more of them while it runs',
  },
  'src/practice': {
    may: [...CORE, 'src/packs'],
    packages: ['ts-fsrs', 'lz-string', 'zod'],
    why: 'ways to play stand on the same examiner and machines as callouts, and know neither screen nor clock',
  },
  'src/i18n': { may: CORE, packages: ['i18next'], why: 'catalogues and formats serve every face of the core alike' },
  'src/bench': {
    may: STYLED,
    packages: ['phaser', 'preact', '@preact/signals'],
    why: 'the drawn machine shows state; the app passes it in, so that the panels work without it',
  },
  'src/panels': {
    may: STYLED,
    packages: ['preact', '@preact/signals', 'idb'],
    why: 'panels must work where the drawn machine does not (screen reader, no canvas)',
  },
  'src/interop': {
    may: SHOWN,
    packages: ['zod'],
    why: 'exports are made from the core, on the page and in the terminal',
  },
  'src/desk': {
    may: [...STYLED, 'src/interop'],
    packages: ['preact', '@preact/signals', 'idb'],
    why: "the instructor's side stands on the core, not on the trainee's screens",
  },
  'src/refresher': { may: STYLED, packages: ['preact', '@preact/signals', 'idb'], why: 'stands on the core' },
  'src/cli': {
    may: [...SHOWN, 'src/packs', 'src/interop'],
    packages: ['commander', 'zod', 'node:'],
    why: 'the terminal has no page: it must start without Phaser, Preact or a DOM; packs are checked and drawn there',
  },
  'src/styles': { may: [], packages: [], why: 'style sheets know no code' },
  'src/app': {
    may: [...STYLED, 'src/practice', 'src/bench', 'src/panels', 'src/interop', 'src/desk', 'src/refresher'],
    packages: ['preact', '@preact/signals', 'i18next', 'idb'],
    why: 'the app puts the parts together; the terminal is no part of the page',
  },
  'src/main': { may: ['src/app', 'src/styles'], packages: ['preact'], why: 'the entry only mounts the app' },
};

/** The layer a file belongs to, e.g. `src/attempt/codec/encode.ts` → `src/attempt`. */
export function layerOf(path) {
  const [top, second] = path.split('/');
  if (top !== 'src') return top;
  return `src/${second.replace(/\.\w+$/, '')}`;
}

/** What is wrong with one import, as a sentence, or null. */
export function objection(file, specifier) {
  const from = layerOf(file);
  const rule = LAYERS[from];
  if (!rule) {
    return `${from}/ is in no table. Name the new layer in tools/directions.mjs, with what it may import and why.`;
  }
  const bare = specifier.replace(/\?.*$/, '');
  if (!bare.startsWith('.')) {
    const fits = rule.packages.some((name) => (name.endsWith(':') ? bare.startsWith(name) : isPackage(bare, name)));
    if (fits) return null;
    const list = rule.packages.length > 0 ? `only ${rule.packages.join(', ')}` : 'no package at all';
    return `${from} may use ${list}, not "${bare}", because ${rule.why}. Move what needs it to a layer that may.`;
  }
  const target = posix.normalize(posix.join(posix.dirname(file), bare));
  const to = layerOf(target);
  if (to === from || rule.may.includes(to)) return null;
  const list = rule.may.length > 0 ? rule.may.join(', ') : 'nothing outside itself';
  return (
    `the arrow ${from} → ${to} runs back. ${from} may import ${list}, because ${rule.why}. ` +
    `Pass the value in as an argument, or move the shared part down to a layer that both may import.`
  );
}

function isPackage(specifier, name) {
  return specifier === name || specifier.startsWith(`${name}/`);
}

function main() {
  const files = listCode(['physics', 'src']);
  let wrong = 0;
  for (const file of files) {
    for (const { line, specifier } of importsOf(parse(file))) {
      const text = objection(file, specifier);
      if (!text) continue;
      wrong += 1;
      console.error(`${file}:${line}  imports "${specifier}"\n    ${text}`);
    }
  }
  console.log(`directions: ${files.length} files read, ${wrong} wrong ${wrong === 1 ? 'import' : 'imports'}`);
  process.exitCode = wrong > 0 ? 1 : 0;
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) main();
