import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dueAt, progressOf, type RoundDone, type RoundWay, SUPPORT_STEPS } from '../../../src/practice/progress';
import { EMPTY, readRecord, roundsOf, withEntry } from '../../../src/practice/record';

const EDGE = 'orifice-split/drier-restriction+undercharge';
const DAY = 86_400_000;

function round(way: RoundWay, change: Partial<RoundDone> = {}): RoundDone {
  const truth = way === 'contrast' ? null : 'undercharge';
  const pick = way === 'contrast' ? null : 'settles';
  return { kind: 'round', at: 0, edge: EDGE, way, truth, pick, right: true, hint: false, ...change };
}
const drier = { truth: 'drier-restriction' } as const;
const LEARNED = [round('contrast'), round('completion'), round('completion', drier)];
const reached = (...rounds: RoundDone[]) => progressOf(rounds).get(EDGE)!;

describe('steps of a pair', () => {
  test('side by side, then both sides completed, then both told alone, then mixed', () => {
    expect(reached(round('contrast')).stage).toBe('completion');
    expect(reached(...LEARNED.slice(0, 2)).stage).toBe('completion');
    // The same side twice is not both.
    expect(reached(...LEARNED.slice(0, 2), round('completion')).stage).toBe('completion');
    expect(reached(...LEARNED).stage).toBe('solo');
    expect(reached(...LEARNED, round('solo'), round('solo', drier)).stage).toBe('mixed');
  });

  test('a miss moves nothing on', () => {
    expect(reached(round('contrast'), round('completion', { right: false }), round('completion', drier)).stage).toBe(
      'completion',
    );
  });

  test('a right answer by a reading that tells nothing, or by a hint, is not told', () => {
    const lucky = [...LEARNED, round('solo', { pick: 'nothing' }), round('solo', { ...drier, hint: true })];
    expect(reached(...lucky).stage).toBe('solo');
    expect(reached(...lucky).told).toBe(2);
  });
});

describe('help', () => {
  test('one thing goes a time', () => {
    for (let i = 1; i < SUPPORT_STEPS.length; i++) {
      const [a, b] = [SUPPORT_STEPS[i - 1]!, SUPPORT_STEPS[i]!];
      const changed = (Object.keys(a) as (keyof typeof a)[]).filter((key) => a[key] !== b[key]);
      expect(changed).toHaveLength(1);
    }
    expect(SUPPORT_STEPS[0]).toEqual({ beside: 'twin', sums: 'given', causes: 3, places: 'few' });
    expect(SUPPORT_STEPS.at(-1)).toEqual({ beside: 'nothing', sums: 'own', causes: null, places: 'all' });
  });

  test('fades with each case told alone, stays after one miss, comes back after two in a row', () => {
    const told = [...LEARNED, round('solo'), round('solo', drier)];
    const miss = round('mixed', { right: false });
    expect(reached(...told).level).toBe(2);
    expect(reached(...told, miss).level).toBe(2);
    expect(reached(...told, miss, miss).level).toBe(1);
    expect(reached(...told, miss, round('mixed'), miss).level).toBe(3);
  });
});

describe('reviews', () => {
  // Days from ts-fsrs 5.4.2 with its default weights, without random spread: first good 3, second good 14 days on.
  test('are due three days after both sides were completed, and two weeks after a review that was told', () => {
    const learned = reached(...LEARNED);
    expect(learned.due).toBe(3 * DAY);
    expect(reached(...LEARNED, round('quarrel', { at: 3 * DAY })).due).toBe(17 * DAY);
  });

  test('a review with a hint counts as forgotten: it comes back as after a miss', () => {
    const hinted = reached(...LEARNED, round('quarrel', { at: 3 * DAY, hint: true }));
    const missed = reached(...LEARNED, round('quarrel', { at: 3 * DAY, right: false }));
    const helped = reached(...LEARNED, round('quarrel', { at: 3 * DAY, pick: 'helps' }));
    expect(hinted.due).toBe(missed.due);
    expect(hinted.card?.lapses).toBe(1);
    expect(hinted.due!).toBeLessThan(helped.due!);
    expect(helped.due!).toBeLessThan(17 * DAY);
  });

  test('what is due longest comes first; what was never completed is never due', () => {
    const other = 'cold-room/bulb-loose+undercharge';
    const rounds = [
      ...LEARNED,
      ...LEARNED.map((each) => ({ ...each, edge: other, at: DAY })),
      round('contrast', { edge: 'cold-room/a+b' }),
    ];
    const progress = progressOf(rounds);
    expect(dueAt(progress, 2 * DAY)).toEqual([]);
    expect(dueAt(progress, 10 * DAY).map(({ edge }) => edge)).toEqual([EDGE, other]);
  });
});

describe('the record', () => {
  test('comes back as it was written', () => {
    const record = LEARNED.reduce(withEntry, EMPTY);
    const read = readRecord(JSON.stringify(record));
    expect(read).toEqual({ record, damage: null });
    expect(roundsOf(read.record)).toEqual(LEARNED);
    expect(readRecord(null)).toEqual({ record: EMPTY, damage: null });
  });

  test('damage is named, and whole entries beside it are kept', () => {
    expect(readRecord('{"format":1,').damage).toEqual({ what: 'not-json', lost: 0 });
    expect(readRecord('{"format":2,"entries":[]}').damage).toEqual({ what: 'other-format', lost: 0 });
    const spoilt = JSON.stringify({ format: 1, entries: [LEARNED[0], { kind: 'round', at: 'yesterday' }, LEARNED[1]] });
    expect(readRecord(spoilt)).toEqual({
      record: { format: 1, entries: [LEARNED[0], LEARNED[1]] },
      damage: { what: 'entries', lost: 1 },
    });
  });

  test('no text makes it throw', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(readRecord(text).record.format).toBe(1);
      }),
      { seed: 11 },
    );
  });
});
