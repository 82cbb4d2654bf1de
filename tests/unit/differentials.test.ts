/** What ships beside the packs is what this physics and this examiner compute (`npm run differentials` writes it). */
import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { familiesOf, plantDescription } from '../../physics';
import { REAL_WORLD } from '../../src/attempt';
import { decodeDifferential, differentialInput, encodeDifferential, type PackedDifferential } from '../../src/examiner';
import { computeDifferentialFrom } from '../../src/examiner/differential';
import { differentialFile, isCurrent } from '../../src/examiner/shipped';
import { sourceOf } from '../../src/examiner/source';
import { isFirst, shippedCallouts } from '../support/differentials';

const FOLDER = 'scenarios/differentials';
/** Most have 25 to 40 KB; a system whose rooms cool and heat at once has twice as many regimes to tell apart. */
const MOST_GZIPPED = 96 * 1024;
const shipped = shippedCallouts();
/** Of the packs that came later every third is computed anew, of machines with many units one a plant and mode. */
const isAsked = (one: (typeof shipped)[number], index: number): boolean => {
  const { callout } = one;
  if (!isFirst(one) && index % 3 !== 0) return false;
  const same = ({ plant, conditions }: typeof callout) =>
    plant === callout.plant && conditions.mode === callout.conditions.mode;
  return !plantDescription(callout.plant).units || shipped.find((each) => same(each.callout))?.callout === callout;
};
const textOf = (pack: string, callout: string) => readFileSync(`${FOLDER}/${differentialFile(pack, callout)}`, 'utf8');

it('every callout has one, and nothing else lies there', () => {
  const wanted = shipped.map(({ pack, callout }) => differentialFile(pack.id, callout.id));
  expect(readdirSync(FOLDER).sort()).toEqual(wanted.sort());
});

describe.each(shipped.map((each, i) => [`${each.pack.id}.${each.callout.id}`, each, i] as const))(
  '%s',
  (_name, each, i) => {
    const { pack, callout } = each;
    const text = textOf(pack.id, callout.id);
    const packed = JSON.parse(text) as PackedDifferential;

    it('was computed for this machine, weather and version', () => {
      expect(isCurrent(packed, callout, REAL_WORLD)).toBe(true);
      const cooler = { ...callout, conditions: { ...callout.conditions, outdoor: callout.conditions.outdoor - 1 } };
      expect(isCurrent(packed, cooler, REAL_WORLD)).toBe(false);
      expect(isCurrent(packed, callout, { ...REAL_WORLD, physics: 'another' })).toBe(false);
    });

    const numbers = isAsked(each, i) ? it : null;
    numbers?.('holds the numbers that the model gives today', { timeout: 120_000 }, () => {
      const many = packed.channels.some((channel) => channel.includes('@'));
      // One family of the plant and the healthy machine, another family for each callout.
      const families = familiesOf(callout.plant);
      const family = families[i % families.length];
      const source = { ...sourceOf(REAL_WORLD), families: [family] };
      const today = computeDifferentialFrom(differentialInput(callout), source);
      const { steps } = encodeDifferential(today);
      const nodes = decodeDifferential(packed).nodes.filter(({ cause }) => cause === 'no-fault' || cause === family.id);
      expect(nodes.map(({ key, from, to }) => [key, from, to])).toEqual(
        today.nodes.map(({ key, from, to }) => [key, from, to]),
      );
      for (const [n, node] of today.nodes.entries()) {
        for (const state of today.states) {
          const [old, now] = [nodes[n].states[state] ?? [], node.states[state] ?? []];
          expect(
            old.map(({ weight }) => weight),
            `${node.key} ${state}`,
          ).toEqual(now.map(({ weight }) => weight));
          now.forEach(({ mean }, k) => {
            mean.forEach((value, c) => {
              // Both are rounded, each to its own step, which depends on the rivals; of many units what lies within two
              // steps of the healthy machine is told as its number.
              const room = (many ? 3 : 1) * (packed.steps[c] + steps[c]);
              expect(Math.abs(old[k].mean[c] - value), `${node.key} ${packed.channels[c]}`).toBeLessThanOrEqual(room);
            });
          });
        }
      }
    });

    it('is small enough to be fetched with its callout', () => {
      expect(gzipSync(text, { level: 9 }).length).toBeLessThanOrEqual(MOST_GZIPPED);
    });
  },
);
