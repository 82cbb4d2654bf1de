// Replays must be bit-identical in every engine. The engine's transcendental functions are not (they differ between
// browsers in the last bits), and neither are clocks and its random numbers. This check refuses them in the core.
import { pathToFileURL } from 'node:url';
import ts from 'typescript';
import { lineOf, listCode, parse } from './source-files.mjs';

const CORE = ['physics', 'src/instruments', 'src/attempt', 'src/examiner'];

/** Math members that ECMAScript defines exactly (sqrt: every engine uses the IEEE instruction). */
const EXACT = new Set(
  'abs ceil floor round trunc sign min max sqrt fround imul clz32 PI E LN2 LN10 LOG2E LOG10E SQRT2 SQRT1_2'.split(' '),
);
const CLOCKS = new Set([
  'Date',
  'performance',
  'setTimeout',
  'setInterval',
  'requestAnimationFrame',
  'queueMicrotask',
  'crypto',
]);
const LOCALE = new Set(['toLocaleString', 'toLocaleLowerCase', 'toLocaleUpperCase', 'localeCompare']);
const PAGE = new Set(['document', 'window', 'navigator', 'localStorage', 'process']);

/** Objections to one file, as `{ line, text }`. */
export function impurities(path, sourceText) {
  const source = parse(path, sourceText);
  const inPhysics = path.startsWith('physics/');
  const found = [];
  const add = (node, text) => found.push({ line: lineOf(source, node), text });

  const visit = (node) => {
    if (ts.isPropertyAccessExpression(node)) {
      const name = node.name.text;
      if (isNamed(node.expression, 'Math') && !EXACT.has(name)) add(node, mathAdvice(name));
      if (LOCALE.has(name)) add(node, `${name} depends on the language of the machine: format in src/i18n instead`);
    }
    if (isNamed(node, 'Math') && !ts.isPropertyAccessExpression(node.parent)) {
      add(node, 'Math is taken as a whole here, so this check cannot see what is used: write Math.name at each use');
    }
    if (isPower(node)) add(node, '** differs between engines: multiply, or use pow of physics/math/elementary.ts');
    if (ts.isIdentifier(node) && isFreeName(node)) {
      if (CLOCKS.has(node.text)) add(node, `${node.text}: the core has no clock and no entropy; pass time and seed in`);
      if (inPhysics && PAGE.has(node.text)) add(node, `${node.text}: physics/ runs in Node, workers and pages alike`);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function mathAdvice(name) {
  if (name === 'random') return 'Math.random has no seed: use the seeded stream that the caller passes in';
  return `Math.${name} differs between engines: use physics/math/elementary.ts (exp, ln, pow, tanh …)`;
}

function isPower(node) {
  if (!ts.isBinaryExpression(node)) return false;
  const operator = node.operatorToken.kind;
  return operator === ts.SyntaxKind.AsteriskAsteriskToken || operator === ts.SyntaxKind.AsteriskAsteriskEqualsToken;
}

function isNamed(node, name) {
  return ts.isIdentifier(node) && node.text === name && isFreeName(node);
}

/** True where an identifier stands for a variable and not for a member, a key or a type's field of the same name. */
function isFreeName(node) {
  const parent = node.parent;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isQualifiedName(parent) || ts.isTypeReferenceNode(parent)) return false;
  return !('name' in parent && parent.name === node);
}

function main() {
  const files = listCode(CORE);
  let wrong = 0;
  for (const file of files) {
    for (const { line, text } of impurities(file)) {
      wrong += 1;
      console.error(`${file}:${line}  ${text}`);
    }
  }
  console.log(`purity: ${files.length} core files read, ${wrong} objections`);
  process.exitCode = wrong > 0 ? 1 : 0;
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) main();
