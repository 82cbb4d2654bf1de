import { readFileSync } from 'node:fs';
import Ajv2020 from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { checkPack, readPack } from '../../src/attempt/pack/load';
import { packJsonSchema } from '../../src/attempt/pack/schema';
import { sampleFacts, samplePack } from '../support/pack-fixture';

// biome-ignore lint/suspicious/noExplicitAny: tests spoil packs in ways that no type allows
type Loose = any;
const spoilt = (spoil: (pack: Loose) => void): Loose => {
  const pack = structuredClone(samplePack());
  spoil(pack);
  return pack;
};
const problemsOf = (value: unknown) => {
  const outcome = checkPack(value, sampleFacts);
  return outcome.ok ? [] : outcome.problems;
};
const published = JSON.parse(readFileSync('scenarios/pack.schema.json', 'utf8'));
const validate = new Ajv2020({ allErrors: true, strict: true }).compile(published);

test('a good pack is read whole and unchanged', () => {
  const outcome = readPack(JSON.stringify(samplePack()), sampleFacts);
  expect(outcome).toEqual({ ok: true, pack: samplePack() });
  expect(validate(samplePack())).toBe(true);
});

test('the published JSON Schema is the one that validates (npm run schema writes it)', () => {
  expect(published).toEqual(JSON.parse(JSON.stringify(packJsonSchema())));
});

test.each([
  [
    'an outdoor temperature in °C',
    (p: Loose) => (p.callouts[0].conditions.outdoor = 35),
    'callout back-office, conditions.outdoor: found 35, expected outdoor air dry bulb, K, from 243.15 to 328.15',
  ],
  [
    'a missing language',
    (p: Loose) => delete p.callouts[1].text.title.es,
    'callout front-shop, text.title.es: found nothing, expected text in English and Spanish',
  ],
  [
    'an id with capitals',
    (p: Loose) => (p.callouts[1].id = 'Shop'),
    'callout #2, id: found "Shop", expected id of the callout',
  ],
  [
    'an unknown key',
    (p: Loose) => (p.callouts[0].faultt = {}),
    'callout back-office, faultt: found unknown key "faultt", expected one of id, plant',
  ],
  [
    'an unknown cause in the tally',
    (p: Loose) => (p.callouts[0].tally.ghosts = 5),
    'tally.ghosts: found unknown key "ghosts", expected one of undercharge',
  ],
  [
    'an unknown instrument',
    (p: Loose) => p.callouts[0].toolbag.push('dowsing-rod'),
    'toolbag.4: found "dowsing-rod", expected one of eyes',
  ],
  ['a fault key that is no key', (p: Loose) => (p.callouts[0].faults = { 'a b': 1 }), 'found key "a b"'],
  [
    'a severity in words',
    (p: Loose) => (p.callouts[0].faults.undercharge = 'much'),
    'faults.undercharge: found "much", expected severity',
  ],
  [
    'another plant',
    (p: Loose) => (p.callouts[0].plant = 'steam-engine'),
    'plant: found "steam-engine", expected one of orifice-split',
  ],
  ['no callouts', (p: Loose) => (p.callouts = []), 'callouts: found a list of 0, expected 1 to 100 callouts'],
  [
    'a text of 5,000 characters',
    (p: Loose) => (p.callouts[0].text.site.en = 'x'.repeat(5000)),
    'text.site.en: found "xxx',
  ],
  [
    'an infinite number',
    (p: Loose) => (p.callouts[0].budget = Number.POSITIVE_INFINITY),
    'budget: found Infinity, expected simulated minutes',
  ],
  [
    'a list instead of an object',
    (p: Loose) => (p.weights = []),
    'weights: found a list of 0, expected weights of the six score parts',
  ],
])('%s is refused with its place, what was found and what is expected', (_name, spoil, message) => {
  const pack = spoilt(spoil);
  expect(problemsOf(pack).map((each) => each.message)).toEqual([expect.stringContaining(message)]);
  expect(validate(pack)).toBe(false);
});

test.each([
  ['weights-sum', (p: Loose) => (p.weights.cause = 30), 'weights: found a sum of 110'],
  ['callout-id-unique', (p: Loose) => (p.callouts[1].id = 'back-office'), 'callout back-office, id'],
  ['look-alike-known', (p: Loose) => (p.callouts[0].lookAlike = 'nowhere'), 'found "nowhere"'],
  ['look-alike-known', (p: Loose) => (p.callouts[0].lookAlike = 'back-office'), 'another callout'],
  [
    'refrigerant-on-plant',
    (p: Loose) => (p.callouts[0].refrigerant = 'R-32'),
    'expected R-410A or R-22 for orifice-split',
  ],
  [
    'mode-on-plant',
    (p: Loose) => (p.callouts[0].conditions.mode = 'heating'),
    'conditions.mode: found "heating", expected cooling for orifice-split',
  ],
  ['wet-bulb-below-dry-bulb', (p: Loose) => (p.callouts[0].conditions.wetBulb = 305), 'conditions.wetBulb: found 305'],
  ['toolbag-unique', (p: Loose) => p.callouts[0].toolbag.push('eyes'), 'toolbag.4: found "eyes"'],
  ['root-cause-named', (p: Loose) => (p.callouts[0].rootCause = null), 'rootCause: found null'],
  ['tally-sum', (p: Loose) => (p.callouts[0].tally['no-fault'] = 11), 'tally: found a sum of 101'],
  [
    'tally-cause-on-plant',
    (p: Loose) => (p.callouts[1].tally = { 'thermistor-drift': 50, 'capacitor-weak': 50 }),
    'found capacitor-weak',
  ],
  ['true-cause-in-tally', (p: Loose) => (p.callouts[0].tally = { overcharge: 100 }), 'for the true cause, undercharge'],
  [
    'fault-on-plant',
    (p: Loose) => (p.callouts[1].faults = { 'thermistor-drift:suctionLine': 3, 'capacitor-weak': 0.2 }),
    'expected a fault of inverter-split',
  ],
  [
    'fault-target',
    (p: Loose) => (p.callouts[1].faults = { 'thermistor-drift:elbow': 3 }),
    'one of suctionLine, evaporatorCoil',
  ],
  [
    'fault-target',
    (p: Loose) => (p.callouts[1].faults = { 'thermistor-drift': 3 }),
    'one of suctionLine, evaporatorCoil',
  ],
  ['severity-range', (p: Loose) => (p.callouts[0].faults = { undercharge: 0.7 }), 'above 0, at most 0.6'],
  ['severity-range', (p: Loose) => (p.callouts[0].faults = { undercharge: -0.1 }), 'above 0, at most 0.6'],
  ['severity-range', (p: Loose) => (p.callouts[1].faults = { 'thermistor-drift:suctionLine': -11 }), 'from -10 to 10'],
])('rule %s is broken by one edit and says so', (rule, spoil, message) => {
  const problems = problemsOf(spoilt(spoil));
  expect(problems.find((each) => each.rule === rule)?.message).toContain(message);
});

test('a healthy callout whose tally leaves out "no-fault" is refused', () => {
  const pack = spoilt((p) => {
    p.callouts[0].faults = {};
    p.callouts[0].tally = { undercharge: 100 };
  });
  expect(problemsOf(pack).map(({ rule }) => rule)).toEqual(['true-cause-in-tally']);
});

test('several mistakes are told at once, each with a pointer to its value', () => {
  const pack = spoilt((p) => {
    p.version = 0;
    p.callouts[0].budget = 1;
    p.callouts[1].conditions.mode = 'drying';
  });
  expect(problemsOf(pack).map(({ pointer }) => pointer)).toEqual([
    '/version',
    '/callouts/0/budget',
    '/callouts/1/conditions/mode',
  ]);
});

test.each(['__proto__', 'constructor', 'prototype'])('the key %s is refused wherever it stands', (key) => {
  const good = JSON.stringify(samplePack());
  const entry = `"${key}":{"polluted":1},`;
  for (const place of ['"weights":{', '"faults":{', '"tally":{', '"en":', '"format":']) {
    const hostile = good.replace(place, place.endsWith('{') ? place + entry : entry + place);
    const outcome = readPack(hostile, sampleFacts);
    expect(outcome.ok ? [] : outcome.problems.map(({ rule }) => rule), place).toEqual(['unsafe-key']);
  }
  expect(({} as Loose).polluted).toBeUndefined();
});

test('what is no pack at all gets a clear refusal and never an exception', () => {
  const rule = (text: string) => {
    const outcome = readPack(text, sampleFacts);
    return outcome.ok ? 'accepted' : outcome.problems[0].rule;
  };
  expect(rule('')).toBe('json');
  expect(rule('{"format":1')).toBe('json');
  expect(rule('null')).toBe('schema');
  expect(rule('7')).toBe('schema');
  expect(rule('{"format":2}')).toBe('format');
  expect(rule(' '.repeat(1_000_001))).toBe('size');
  expect(rule('['.repeat(100_000) + ']'.repeat(100_000))).toBe('depth');
});

/** Every value of a pack, as a path. */
function pathsOf(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value !== 'object' || value === null) return [path];
  const children = Object.entries(value).flatMap(([key, child]) =>
    pathsOf(child, [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return path.length > 0 ? [path, ...children] : children;
}

test('zod and an independent JSON Schema validator agree on every one-value mutation of a good pack', () => {
  const replacements: unknown[] = [
    undefined,
    null,
    true,
    -1,
    0.5,
    1e9,
    '',
    'x',
    'X y',
    'x'.repeat(3000),
    [],
    ['x'],
    {},
    { x: 1 },
  ];
  let mutated = 0;
  let refused = 0;
  for (const path of pathsOf(samplePack())) {
    for (const replacement of replacements) {
      const pack = spoilt((root) => {
        const holder = path.slice(0, -1).reduce((here, key) => here[key], root);
        if (replacement === undefined && !Array.isArray(holder)) delete holder[path.at(-1)!];
        else holder[path.at(-1)!] = replacement ?? null;
      });
      mutated += 1;
      const outcome = checkPack(pack, sampleFacts);
      const shapeRefused = !outcome.ok && outcome.problems.some(({ rule }) => rule === 'schema' || rule === 'format');
      if (shapeRefused) refused += 1;
      expect(shapeRefused, `${path.join('.')} = ${JSON.stringify(replacement)}`).toBe(!validate(pack));
    }
  }
  expect(mutated).toBeGreaterThan(1000);
  expect(refused / mutated).toBeGreaterThan(0.8);
});
