import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FAULTS } from '../../physics';
import type { CauseId, OperatingMode, PlantId } from '../../physics/types';
import type { Callout, Pack } from '../../src/attempt/pack/types';
import { truthsOf } from '../../src/examiner/case';
import { cellsOf } from '../../src/examiner/nodes';
import { stream } from '../../src/instruments/streams';
import { type Blueprint, checkBlueprint } from '../../src/packs/blueprint';
import { drawCause, drawFault, drawPack, drawSize, isClear } from '../../src/packs/draw';

const IDS = ['old-wharf', 'upper-town'];
const read = (path: string) => JSON.parse(readFileSync(path, 'utf8'));
const blueprintOf = (id: string): Blueprint => {
  const outcome = checkBlueprint(read(`scenarios/blueprints/${id}.blueprint.json`));
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('\n'));
  return outcome.blueprint;
};
const packOf = (id: string): Pack => {
  const { $schema: _address, ...pack } = read(`scenarios/${id}.pack.json`);
  return pack;
};
const orders = IDS.flatMap((id) => blueprintOf(id).callouts);
const callouts = IDS.flatMap((id) => packOf(id).callouts);
const truth = (callout: Callout): CauseId => truthsOf(callout.faults)[0];

/** Σ (found − expected)² / expected: on average the number of classes less one, with variance twice that. */
function chiSquare(found: ReadonlyMap<string, number>, expected: ReadonlyMap<string, number>): number {
  return [...expected].reduce((sum, [name, wanted]) => sum + ((found.get(name) ?? 0) - wanted) ** 2 / wanted, 0);
}
const count = <T>(list: readonly T[], name: (each: T) => string): Map<string, number> => {
  const counts = new Map<string, number>();
  for (const each of list) counts.set(name(each), (counts.get(name(each)) ?? 0) + 1);
  return counts;
};
/** A deviation that fewer than one honest draw in 10,000 shows. */
const farFor = (classes: number) => classes - 1 + 5 * Math.sqrt(2 * (classes - 1));

const SEEDS = Array.from({ length: 10_000 }, (_, i) => `try-${i}`);
const FEWER = SEEDS.slice(0, 3000);

describe('draws', () => {
  it.each(orders.map((order) => [order.id, order] as const))(
    'of %s reproduce its tally over 10,000 seeds',
    (_, order) => {
      const found = count(SEEDS, (seed) => drawFault(order, seed).cause);
      const named = Object.entries(order.tally).filter(([, share]) => share > 0);
      const expected = new Map(named.map(([cause, share]) => [cause, (share / 100) * SEEDS.length]));
      expect([...found.keys()].every((cause) => expected.has(cause))).toBe(true);
      expect(chiSquare(found, expected)).toBeLessThan(farFor(expected.size));
    },
  );

  it.each(
    FAULTS.flatMap(({ id, plants, modes }) =>
      plants.map((plant) => [id, plant, modes?.[plant]?.[0] ?? 'cooling'] as [CauseId, PlantId, OperatingMode]),
    ),
  )('of the size of %s on %s (%s) follow the prior that the examiner uses', (cause, plant, mode) => {
    const cells = cellsOf(plant, mode, FAULTS).filter((cell) => cell.cause === cause);
    const ends = ({ from, to }: (typeof cells)[number]) => [Math.min(from, to), Math.max(from, to)];
    const found = count(FEWER, (seed) => {
      const [[key, severity]] = Object.entries(drawSize(cause, plant, mode, stream(seed)));
      const at = cells.findIndex((cell) => cell.key === key && ends(cell)[0] <= severity && severity <= ends(cell)[1]);
      return String(at);
    });
    const expected = new Map(cells.map(({ weight }, i) => [String(i), weight * FEWER.length]));
    expect(found.has('-1')).toBe(false);
    // Rounded severities may fall on the bound of two cells; that moves a cell's count by less than its chance does.
    expect(chiSquare(found, expected)).toBeLessThan(2 * farFor(cells.length));
  });

  it('of callouts of one pack know nothing of one another', () => {
    const [a, b] = orders;
    const both = SEEDS.filter((seed) => drawCause(a, seed) === 'undercharge' && drawCause(b, seed) === 'undercharge');
    const expected = (a.tally.undercharge! / 100) * (b.tally.undercharge! / 100) * SEEDS.length;
    expect(Math.abs(both.length - expected)).toBeLessThan(4 * Math.sqrt(expected));
  });
});

describe.each(IDS)('the shipped pack %s', (id) => {
  it('is what its blueprint draws (npm run draw writes it)', () => {
    expect(packOf(id)).toEqual(drawPack(blueprintOf(id)));
  });

  it('fulfils the wishes that its seed was sought for', () => {
    const { wishes, callouts: list, seed } = blueprintOf(id);
    for (const order of list) {
      const drawn = drawFault(order, seed);
      expect(drawn.cause).toBe(wishes.causes[order.id] ?? drawn.cause);
      expect(isClear(drawn), order.id).toBe(true);
    }
    expect(Object.keys(wishes.causes).every((wished) => list.some((order) => order.id === wished))).toBe(true);
  });

  it('offers each callout another of its own that looks alike and is not the same', () => {
    const { callouts: list } = packOf(id);
    for (const callout of list) {
      const alike = list.find((other) => other.id === callout.lookAlike);
      expect(alike, callout.id).toBeDefined();
      expect(truth(alike!)).not.toBe(truth(callout));
    }
  });
});

describe('the shipped callouts', () => {
  it('are twelve, under other weather each, on both plants and all their refrigerants, from the sea to 1,600 m', () => {
    expect(callouts).toHaveLength(12);
    expect(new Set(callouts.map(({ id }) => id)).size).toBe(12);
    const outdoor = callouts.map(({ conditions }) => conditions.outdoor - 273.15);
    expect(new Set(outdoor).size).toBe(12);
    expect(Math.min(...outdoor)).toBeCloseTo(22, 6);
    expect(Math.max(...outdoor)).toBeCloseTo(42, 6);
    expect(Math.max(...callouts.map(({ conditions }) => conditions.altitude))).toBe(1600);
    const kinds = new Set(callouts.map(({ plant, refrigerant }) => `${plant} ${refrigerant}`));
    expect([...kinds].sort()).toEqual(['inverter-split R-32', 'orifice-split R-22', 'orifice-split R-410A']);
  });

  it('begin with the guided one: fixed orifice, three causes, nothing that burns', () => {
    const [first] = packOf('old-wharf').callouts;
    expect(first.mode).toBe('guided');
    expect(first.plant).toBe('orifice-split');
    expect(Object.keys(first.tally)).toHaveLength(3);
    expect(callouts.filter(({ mode }) => mode === 'guided')).toHaveLength(1);
  });

  it.each([
    ['undercharge', 'drier-restriction'],
    ['condenser-dirty', 'overcharge'],
    ['overcharge', 'non-condensable'],
    ['condenser-dirty', 'non-condensable'],
    ['filter-dirty', 'undercharge'],
  ] satisfies [CauseId, CauseId][])('hold %s and %s in one pack, each a possible cause of both', (a, b) => {
    const pairs = IDS.flatMap((id) => {
      const { callouts: list } = packOf(id);
      return list.flatMap((x) => list.map((y) => [x, y] as const));
    });
    const found = pairs.filter(([x, y]) => truth(x) === a && truth(y) === b);
    expect(found.some(([x, y]) => (x.tally[b] ?? 0) > 0 && (y.tally[a] ?? 0) > 0)).toBe(true);
  });

  it('hold a machine with nothing wrong, and causes that come more than once', () => {
    const truths = callouts.map(truth);
    expect(truths).toContain('no-fault');
    expect(new Set(truths).size).toBeLessThan(truths.length);
  });
});

describe('a blueprint', () => {
  it('with a mistake is refused with its place', () => {
    const spoilt = read('scenarios/blueprints/old-wharf.blueprint.json');
    spoilt.callouts[1].conditions.outdoor = 35;
    delete spoilt.seed;
    const outcome = checkBlueprint(spoilt);
    const said = outcome.ok ? [] : outcome.problems.map(({ message }) => message);
    expect(said.join('\n')).toContain('callout fish-hall-office, conditions.outdoor: found 35');
    expect(said.join('\n')).toContain('seed: found nothing');
  });

  it('may not carry what is drawn', () => {
    const spoilt = read('scenarios/blueprints/old-wharf.blueprint.json');
    spoilt.callouts[0].faults = { undercharge: 0.2 };
    expect(checkBlueprint(spoilt).ok).toBe(false);
  });
});
