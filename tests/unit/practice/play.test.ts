import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Action, apply, decode, encode, refusalOf, replay, start } from '../../../src/attempt';
import { machineFacts } from '../../../src/attempt/pack/facts';
import { checkPack } from '../../../src/attempt/pack/load';
import type { Pack } from '../../../src/attempt/pack/types';
import { grade } from '../../../src/examiner';
import { becauseTold, chalksTold, reflectionTold } from '../../../src/practice/head';
import { returnVisit } from '../../../src/practice/returnVisit';
import { checkTrap, packToCode, readTrap, trapCallout, trapFaults, trapPack } from '../../../src/practice/trap';
import { toppedUpJob } from '../../support/closed-job';
import { settingAt } from '../../support/practice';

const SETTING = settingAt('old-wharf', 'fish-hall-office');
const { lookAlike: _none, ...HOME } = SETTING.callout;
const PACK: Pack = {
  format: 1,
  id: 'play',
  version: 1,
  title: { en: 'Play', es: 'Juego' },
  about: { en: 'Play', es: 'Juego' },
  weights: { cause: 20, belief: 15, evidence: 20, working: 15, repair: 20, economy: 10 },
  callouts: [
    { ...HOME, id: 'drier', faults: { 'drier-restriction': 0.45 }, rootCause: 'wet-or-dirty-circuit' },
    { ...HOME, id: 'short', faults: { undercharge: 0.25 }, rootCause: 'leak-at-joint' },
  ],
};
const TEXTS = { title: PACK.title, about: PACK.about, history: { en: 'Our own visit.', es: 'Nuestra visita.' } };

/** What is kept of a person and never scored. */
const KEPT: readonly Action['kind'][] = ['chalk', 'because', 'reflect'];

describe('chalk, reasons and the look back', () => {
  const state = toppedUpJob(PACK, 'drier');

  test('are kept in the attempt: its code carries them and a replay has them again', () => {
    const again = replay(decode(encode(state.attempt)), PACK);
    expect(again.chalks.map(({ expect: way, note }) => [way, note])).toEqual([
      ['higher', 0],
      ['higher', 1],
    ]);
    expect(again.becauses).toEqual([{ verdict: 0, shows: 0, rulesOut: 1, action: 5 }]);
    expect(again.reflections).toMatchObject([{ verdict: 0, forVerdict: [1], forRival: [0] }]);
  });

  test('never move a score', () => {
    const without = state.attempt.actions.filter(({ action }) => !KEPT.includes(action.kind));
    const plain = without.reduce((now, { action }) => apply(now, action), start(PACK, 'drier', state.attempt.seed));
    const [a, b] = [state, plain].map((each) => grade(each, SETTING.differential));
    expect(a!.uncapped).toBe(b!.uncapped);
    expect(a!.parts.map(({ points }) => points)).toEqual(b!.parts.map(({ points }) => points));
  });

  test('are refused where they make no sense', () => {
    const fresh = start(PACK, 'drier', 'x');
    const chalk = { kind: 'chalk', instrument: 'pipe-clamp', place: 'suction-line', quantity: 'temperature' } as const;
    const why = (action: Parameters<typeof refusalOf>[1]) => refusalOf(fresh, action)?.code ?? null;
    expect(why({ ...chalk, cause: 'undercharge', expect: 'lower' })).toBeNull();
    expect(why({ ...chalk, place: 'nowhere', cause: 'undercharge', expect: 'lower' })).toBe('unknown-place');
    expect(why({ ...chalk, cause: 'bulb-loose', expect: 'lower' })).toBe('cause-not-here');
    expect(why({ kind: 'because', shows: 0, rulesOut: 0 })).toBe('no-verdict');
    const back = { kind: 'reflect', forVerdict: [0], forRival: [0], missing: null } as const;
    expect(why(back)).toBe('no-verdict');
    const open = state.attempt.actions
      .filter(({ action }) => action.kind !== 'verified' && action.kind !== 'reflect')
      .reduce((now, { action }) => apply(now, action), start(PACK, 'drier', 'y'));
    expect(refusalOf(open, back)?.code).toBe('note-on-both-sides');
  });

  test('too little refrigerant warms the suction line and lowers its pressure, whatever was expected', () => {
    const [pipe, pressure] = chalksTold(state, SETTING.differential);
    // Common practice, no source: a starved coil gives warm gas at low pressure.
    expect(pipe).toMatchObject({ cause: 'undercharge', expect: 'higher', does: 'higher' });
    expect(pressure).toMatchObject({ cause: 'undercharge', expect: 'higher', does: 'lower' });
  });

  test('a look back is told note by note, with what would have parted the two', () => {
    const told = reflectionTold(state, SETTING.differential)!;
    expect(told).toMatchObject({ cause: 'undercharge', rival: 'drier-restriction' });
    expect(told.sorted.map(({ note, side }) => [note, side])).toEqual([
      [1, 'verdict'],
      [0, 'rival'],
    ]);
    // the trade's separator of the two: liquid backs up before a drier that is clogged
    expect(told.missing?.bits).toBeGreaterThan(0.5);
    expect(told.best).not.toBeNull();
  });

  test('a reason speaks for the cause that it fits better, and for the other one the other way round', () => {
    const told = becauseTold(state, SETTING.differential)!;
    expect(told).toMatchObject({ cause: 'undercharge', rival: 'drier-restriction' });
    const verdicts = [{ ...state.verdicts[0]!, cause: state.verdicts[0]!.rival, rival: state.verdicts[0]!.cause }];
    const turned = becauseTold({ ...state, verdicts }, SETTING.differential)!;
    if (told.showsBits !== null) expect(turned.showsBits).toBeCloseTo(-told.showsBits, 9);
  });
});

describe('the van comes back', () => {
  test('to the drier that was left, on the same machine; the grams that a hose took are no fault', () => {
    const visit = returnVisit(toppedUpJob(PACK, 'drier'), TEXTS)!;
    const [callout] = visit.callouts;
    expect(checkPack(visit, machineFacts)).toEqual({ ok: true, pack: visit });
    expect(callout!.faults).toEqual({ 'drier-restriction': 0.45 });
    expect(callout!.machineSeed).toBe(SETTING.callout.machineSeed);
    expect(callout!.text.history).toEqual(TEXTS.history);
    // The machine as it now is runs, and an attempt at it can be begun.
    expect(start(visit, callout!.id, 'again').site.machine.steady().regime).toBeDefined();
  });

  test('to what the repair itself brought: air left in, charge by feel; the new work order names them', () => {
    const state = toppedUpJob(PACK, 'short', 'brought', 'replace-drier');
    const visit = returnVisit(state, TEXTS)!;
    const [callout] = visit.callouts;
    expect(callout!.faults).toEqual({ undercharge: 0.25, 'non-condensable': 0.05 });
    expect(SETTING.callout.tally['non-condensable']).toBeUndefined();
    expect(callout!.tally['non-condensable']).toBe(6);
    expect(checkPack(visit, machineFacts).ok).toBe(true);
  });

  test('to a leak that nobody mended: the charge is gone again', () => {
    const [callout] = returnVisit(toppedUpJob(PACK, 'short'), TEXTS)!.callouts;
    expect(callout!.faults).toEqual({ undercharge: 0.25 });
  });

  test('not while the job is open, and not after a repair that holds', () => {
    const { attempt } = toppedUpJob(PACK, 'drier');
    const open = attempt.actions
      .slice(0, -1)
      .reduce((now, { action }) => apply(now, action), start(PACK, 'drier', 'r'));
    expect(returnVisit(open, TEXTS)).toBeNull();
    const right = attempt.actions.reduce(
      (now, { action }) => {
        const mended = { kind: 'repair', remedy: 'replace-drier', root: 'wet-or-dirty-circuit' } as const;
        const steps = [
          'isolate',
          'recover',
          'nitrogen-purge',
          'new-drier',
          'pressure-test',
          'evacuate-and-hold',
          'weigh-in',
        ] as const;
        return apply(now, action.kind === 'repair' ? { ...mended, steps } : action);
      },
      start(PACK, 'drier', 'r'),
    );
    expect(right.repairs[0]!.fits).toBe(true);
    expect(returnVisit(right, TEXTS)).toBeNull();
  });
});

describe('the trap', () => {
  const callout = trapCallout(SETTING, { fault: 'drier-restriction', severity: 0.42, imitates: 'undercharge' });

  test('a blocked drier passes for too little refrigerant at first, and all readings tell it', () => {
    const check = checkTrap(SETTING, callout, 'undercharge');
    if (check.as !== 'checked') throw new Error('the machine stops');
    expect([check.works, check.fair]).toEqual([true, true]);
    expect(check.first.undercharge).toBeGreaterThan(check.first['drier-restriction']!);
    expect(check.all['drier-restriction']).toBeGreaterThan(0.8);
  });

  test('nobody takes a blocked drier for a slow fan', () => {
    const check = checkTrap(SETTING, callout, 'evaporator-fan-slow');
    expect(check).toMatchObject({ as: 'checked', works: false });
  });

  test('what only a gauge tells is no fair trap for who carries none', () => {
    const blind = { ...callout, toolbag: ['eyes', 'hand', 'clamp-ammeter'] as const };
    expect(checkTrap(SETTING, blind, 'undercharge')).toMatchObject({ fair: false });
  });

  test('travels as a link and as a file, and its name gives nothing away', () => {
    const pack = trapPack(PACK, callout);
    expect(readTrap(packToCode(pack))).toEqual({ pack });
    expect(readTrap(JSON.stringify(pack))).toEqual({ pack });
    expect(packToCode(pack).length).toBeLessThan(6000);
    expect(`${pack.id} ${callout.id} ${packToCode(pack)}`).not.toMatch(/drier|undercharge/);
  });

  test('whatever comes instead of a trap is refused with a reason', () => {
    expect(readTrap('')).toHaveProperty('problem');
    expect(readTrap(packToCode({ ...PACK, id: 'old-wharf' }))).toEqual({ problem: 'it is no trap' });
    expect(readTrap('x'.repeat(7000))).toHaveProperty('problem');
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(readTrap(text)).toHaveProperty('problem');
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  test('only faults of the place can be set, within their range', () => {
    for (const { cause, from, to } of trapFaults(SETTING)) {
      expect(SETTING.callout.tally[cause]).toBeGreaterThan(0);
      expect(from).toBeLessThan(to);
    }
  });
});
