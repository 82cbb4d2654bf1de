import { describe, expect, it } from 'vitest';
import type { SumKind, SumSlip } from '../../../src/attempt';
import { markBelief } from '../../../src/examiner/parts/belief';
import { markCause } from '../../../src/examiner/parts/cause';
import { markEvidence } from '../../../src/examiner/parts/evidence';
import { markWorking } from '../../../src/examiner/parts/working';
import { provingOf } from '../../../src/examiner/proving';
import type { Channel } from '../../../src/examiner/types';
import { chipsOf, makeCase } from './case';

const READ: readonly Channel[] = [
  'look:filterDust',
  'supplyAirTemp',
  'compressorCurrent',
  'suctionLineTemp',
  'liquidLineTemp',
  'suctionPressure',
  'liquidPressure',
  'liquidPressureAfterDrier',
];
const faults = { 'drier-restriction': 0.4 };
const belief = (stakes: { notes: number; chips: Record<string, number> }[], read = READ) =>
  markBelief(makeCase({ faults, read, stakes })).share;
const honest = [3, 6, 8].map((notes) => ({
  notes,
  chips: chipsOf(makeCase({ faults, read: READ }).plain.posterior(notes)) as Record<string, number>,
}));

describe('Belief: the trail against what the readings supported', () => {
  it('is nearly whole for honest stakes, nothing for untouched ones', () => {
    expect(belief(honest)).toBeGreaterThan(0.85);
    expect(belief([])).toBe(0);
  });

  it('is nothing for stakes on the wrong cause, and for all on the first hunch', () => {
    expect(belief(honest.map(({ notes }) => ({ notes, chips: { overcharge: 19 } })))).toBeLessThan(0.05);
    expect(belief([{ notes: 1, chips: { undercharge: 19 } }])).toBeLessThan(0.05);
  });

  it('charges little for half the justified move: caution in the right direction is nearly free', () => {
    const cautious = honest.map(({ notes, chips }) => ({
      notes,
      chips: Object.fromEntries(Object.entries(chips).map(([cause, count]) => [cause, Math.floor(0.7 * count)])),
    }));
    expect(belief(cautious)!).toBeGreaterThan(0.6);
    expect(belief(cautious)!).toBeLessThanOrEqual(belief(honest)! + 0.05);
  });

  it('earns nothing where nothing was read, although the stake then equals what is known', () => {
    expect(belief([], [])).toBe(0);
    expect(belief([{ notes: 0, chips: {} }], [])).toBe(0);
  });

  it('moves by no more than a point of 15 when a span is split into two moments', () => {
    const split = [...honest, honest[1]].sort((a, b) => a.notes - b.notes);
    expect(Math.abs(belief(split)! - belief(honest)!)).toBeLessThan(1 / 15);
  });
});

describe('Belief on a lucky hunch', () => {
  it('weighs the leap as what it claimed, not as the little that was known', () => {
    const first = { notes: 1, chips: { 'drier-restriction': 19 } };
    const lucky = [first, ...[3, 6, 8].map((notes) => ({ notes, chips: first.chips }))];
    expect(belief(lucky)!).toBeLessThan(belief(honest)! - 0.3);
  });
});

describe('Working', () => {
  const mark = (needed: readonly ('subcooling' | 'superheat')[], sums: Parameters<typeof makeCase>[0]['sums']) =>
    markWorking(makeCase({ faults, read: READ, needed, sums: sums ?? [] }));
  const right = (sum: SumKind) => ({ sum, credit: 1 });
  const wrong = (sum: SumKind, slip: SumSlip) => ({ sum, slip, credit: 0 });

  it('marks the sums that are needed, and does not pay for others', () => {
    expect(mark(['subcooling', 'superheat'], [right('subcooling')]).share).toBe(0.5);
    expect(mark(['subcooling'], [right('subcooling'), right('air-drop')]).share).toBe(1);
    expect(mark([], [right('superheat')]).share).toBeNull();
  });

  it('charges a slip of method wherever it stands, a slip of the pencil only where the sum was needed', () => {
    const method = mark(['subcooling'], [right('subcooling'), wrong('superheat', 'gauge-for-absolute')]);
    expect(method.share).toBe(0.5);
    expect(method.reasons.map(({ key }) => key)).toContain('reason.working.slip.gauge-for-absolute');
    expect(mark(['subcooling'], [right('subcooling'), wrong('superheat', 'arithmetic')]).share).toBe(1);
    expect(mark([], [wrong('superheat', 'gauge-for-absolute')]).share).toBe(0.5);
  });

  it('forgives a slip that was put right', () => {
    const sums = [wrong('superheat', 'gauge-for-absolute'), { sum: 'superheat' as const, credit: 0.5 }];
    expect(mark(['subcooling'], [right('subcooling'), ...sums]).share).toBe(1);
  });
});

describe('Cause', () => {
  const markOf = (one: ReturnType<typeof makeCase>, right: 0 | 1) => markCause(one, right, provingOf(one, right));
  const mark = (cause: 'drier-restriction' | 'undercharge', read: readonly Channel[], right: 0 | 1) =>
    markOf(makeCase({ faults, read, verdict: { cause, rival: 'overcharge', cites: [] } }), right).share!;

  it('gives an unargued right verdict almost nothing, a proven one everything', () => {
    expect(mark('drier-restriction', [], 1)).toBeLessThan(0.15);
    expect(mark('drier-restriction', [...READ, 'liquidLineTempAfterDrier'], 1)).toBe(1);
  });

  it('takes a twentieth for a size that the readings rule out', () => {
    const read: readonly Channel[] = [...READ, 'liquidLineTempAfterDrier'];
    const sized = (size: 'slight' | 'clear' | 'severe') => {
      const verdict = { cause: 'drier-restriction', rival: 'overcharge', cites: [], size } as const;
      return markOf(makeCase({ faults, read, verdict }), 1);
    };
    expect(sized('clear').share).toBe(1);
    expect(sized('severe').share).toBeCloseTo(0.95, 12);
    expect(sized('severe').reasons.map(({ key }) => key)).toContain('reason.cause.size');
  });

  it('gives a right one without the act that proves it four fifths', () => {
    const read = READ.filter((channel) => channel !== 'liquidPressure');
    expect(mark('drier-restriction', read, 1)).toBeCloseTo(0.8, 5);
  });

  it('gives a wrong verdict that the readings refute nothing, and one that they support half', () => {
    expect(mark('undercharge', READ, 0)).toBeLessThan(0.01);
    const few: readonly Channel[] = ['suctionLineTemp', 'suctionPressure'];
    const one = makeCase({ faults, read: few, verdict: { cause: 'undercharge', rival: 'overcharge', cites: [] } });
    expect(markOf(one, 0).share).toBeCloseTo(0.5 * one.support, 12);
  });
});

describe('Evidence', () => {
  const after = READ.indexOf('liquidPressureAfterDrier');
  const mark = (cites: readonly number[], rival: 'undercharge' | 'overcharge' = 'undercharge', right: 0 | 1 = 1) =>
    markEvidence(makeCase({ faults, read: READ, verdict: { cause: 'drier-restriction', rival, cites } }), right).share!;

  it('is whole for the readings that tell, nothing for none', () => {
    const air = makeCase({ faults, read: READ }).plain.taken.length;
    expect(air).toBe(READ.length);
    expect(mark([after, 4, 6])).toBeLessThanOrEqual(1);
    expect(mark([])).toBe(0);
  });

  it('leaves gauges out of a charge judgement while the air is unproved', () => {
    const proved: readonly Channel[] = [
      ...READ,
      'look:evaporatorFanSpeed',
      'look:condenserDirt',
      'look:condenserFanSpeed',
    ];
    const verdict = { cause: 'drier-restriction', rival: 'undercharge', cites: [after] } as const;
    const with_ = markEvidence(makeCase({ faults, read: proved, verdict }), 1).share!;
    const without = markEvidence(makeCase({ faults, read: READ, verdict }), 1).share!;
    expect(with_).toBeGreaterThan(0.9);
    expect(without).toBe(0);
  });

  it('lets no reading under load judge the charge in the cold, where the head is not held', () => {
    const cites = [4, 6];
    const verdict = { cause: 'undercharge', rival: 'drier-restriction', cites } as const;
    const proved: readonly Channel[] = [
      ...READ,
      'look:evaporatorFanSpeed',
      'look:condenserDirt',
      'look:condenserFanSpeed',
    ];
    const at = (celsius: number) =>
      markEvidence(makeCase({ faults: { undercharge: 0.2 }, outdoor: 273.15 + celsius, read: proved, verdict }), 1);
    expect(at(14).share!).toBeGreaterThan(0.5);
    expect(at(12).share).toBe(0);
    expect(at(12).reasons.map(({ key }) => key)).toContain('reason.evidence.coldOutdoors');
    const drier = { cause: 'drier-restriction', rival: 'undercharge', cites: [after] } as const;
    const restricted = makeCase({ faults, outdoor: 281.15, read: proved, verdict: drier });
    expect(markEvidence(restricted, 1).share!).toBeGreaterThan(0.9);
  });

  it('is halved for a wrong verdict', () => {
    expect(mark([4], 'undercharge', 0)).toBeCloseTo(0.5 * mark([4], 'undercharge', 1), 12);
  });

  it('takes off for a cited reading that speaks for the rival', () => {
    const one = makeCase({
      faults,
      read: READ,
      verdict: { cause: 'undercharge', rival: 'drier-restriction', cites: [4, 3] },
    });
    const { reasons } = markEvidence(one, 0);
    expect(reasons.map(({ key }) => key)).toContain('reason.evidence.against');
  });

  it('never calls the cause itself a rival that never was one', () => {
    const verdict = { cause: 'overcharge', rival: 'drier-restriction', cites: [4, 6] } as const;
    const keys = markEvidence(makeCase({ faults, read: READ, verdict }), 0).reasons.map(({ key }) => key);
    expect(keys).toContain('reason.evidence.notParted');
    expect(keys).not.toContain('reason.evidence.easyRival');
  });
});
