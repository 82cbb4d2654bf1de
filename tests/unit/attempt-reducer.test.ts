import { describe, expect, it } from 'vitest';
import { chipsFromTally, currentChips, openMoment, unsureChips } from '../../src/attempt/chips';
import { phaseOf } from '../../src/attempt/phase';
import { choicesAt, planReading } from '../../src/attempt/reading';
import { applyAction, refusalOf, startAttempt } from '../../src/attempt/reducer';
import type { RefusalCode } from '../../src/attempt/refusal';
import { ReplayError, replayAttempt } from '../../src/attempt/replay';
import type { AttemptState } from '../../src/attempt/state';
import type { Action } from '../../src/attempt/types';
import { fakeWorld } from '../support/fake-machine';
import { samplePack } from '../support/pack-fixture';

const pack = samplePack();
const begin = (callout = 'back-office') => startAttempt(pack, callout, 'seed', fakeWorld);
const play = (state: AttemptState, ...actions: Action[]) => actions.reduce(applyAction, state);
const refused = (state: AttemptState, action: Action): RefusalCode | undefined => refusalOf(state, action)?.code;

const lowGauge: Action = { kind: 'read', instrument: 'low-gauge', place: 'suction-port', quantity: 'pressure' };
const highGauge: Action = { kind: 'read', instrument: 'high-gauge', place: 'liquid-port', quantity: 'pressure' };
const clamp = (place = 'suction-line'): Action => ({
  kind: 'read',
  instrument: 'pipe-clamp',
  place,
  quantity: 'temperature',
});
const verdict: Action = { kind: 'verdict', cause: 'undercharge', size: 'clear', rival: 'drier-restriction', cites: [] };
const fullRepair: Action = {
  kind: 'repair',
  remedy: 'find-leak-mend-and-weigh-in',
  steps: [
    'isolate',
    'recover',
    'nitrogen-purge',
    'new-drier',
    'pressure-test',
    'evacuate-and-hold',
    'weigh-in',
    'restart-and-settle',
    'record',
  ],
  root: 'leak-at-joint',
};

describe('time', () => {
  it('is advanced by actions only, by what each takes', () => {
    const state = play(begin(), clamp());
    // wrap 15 + put on 30 + settle 90 + read 5
    expect(state.clock).toBe(140);
    expect(state.notes[0]).toMatchObject({
      time: 135,
      cost: 140,
      settled: 'settled',
      misuse: [],
      index: 0,
      state: 'running',
    });
    // It sits there: the second reading takes only the reading.
    expect(play(state, clamp()).clock).toBe(145);
    // Moved away and back it has to be put on again.
    expect(play(state, clamp('liquid-line'), clamp()).clock).toBe(420);
  });

  it('is planned before it is spent', () => {
    const state = play(begin(), lowGauge);
    const plan = planReading(begin(), lowGauge as Extract<Action, { kind: 'read' }>);
    expect(plan.end).toBe(state.clock);
    expect(plan.newlyOn).toBe(true);
  });

  it('read at once, the clamp has not come to the pipe; waited for, it has', () => {
    const hasty: Action = { ...clamp(), dwell: 0 } as Action;
    const state = play(begin(), hasty, { kind: 'wait', seconds: 90 }, hasty);
    expect(state.notes.map(({ settled }) => settled)).toEqual(['fresh', 'settled']);
    expect(state.notes[0]!.misuse).toContain('instrument-not-settled');
    expect(state.notes[0]!.value - state.notes[1]!.value).toBeGreaterThan(10);
  });

  it('is told apart by what it was spent on', () => {
    const state = play(
      begin(),
      { kind: 'look', place: 'sight-glass' },
      { kind: 'safety', step: 'zero-gauges', taken: true },
      { kind: 'safety', step: 'ventilate', taken: false },
      clamp(),
      { kind: 'wait', seconds: 60 },
    );
    expect(state.spent).toMatchObject({ survey: 15, safety: 30, measuring: 140, waiting: 60, repair: 0 });
    expect(Object.values(state.spent).reduce((a, b) => a + b, 0)).toBe(state.clock);
  });
});

describe('the machine', () => {
  it('loses what fills the hoses: tens of grams of liquid, a gram of vapour', () => {
    const state = play(begin(), highGauge);
    expect(state.spilt).toBeCloseTo(0.029, 4);
    const share = 0.029 / state.site.nameplate.charge;
    expect(state.faults.undercharge).toBeCloseTo(0.2 + share, 6);
    expect(state.events).toHaveLength(1);
    expect(play(begin(), lowGauge).spilt).toBeCloseTo(0.001, 3);
    // Reading again from the hose that is on costs nothing more.
    expect(play(state, highGauge).spilt).toBe(state.spilt);
  });

  it('marks notes with the operating state and the change before them', () => {
    const state = play(
      begin(),
      clamp(),
      { kind: 'control', change: { running: false } },
      { kind: 'wait', seconds: 20 },
      clamp(),
      { kind: 'wait', seconds: 7200 },
      clamp(),
      { kind: 'control', change: { running: true, outdoorFanRunning: false } },
      clamp(),
    );
    expect(state.notes.map(({ state: operating, epoch }) => [operating, epoch])).toEqual([
      ['running', 0],
      ['other', 1],
      ['standing', 1],
      ['other', 2],
    ]);
    expect(state.notes[1]!.settled).not.toBe('settled');
  });

  it('has a full-speed state only where the speed varies', () => {
    const full: Action = { kind: 'control', change: { fixedSpeed: true } };
    expect(refused(begin(), full)).toBe('not-on-this-machine');
    const link: Action = { kind: 'read', instrument: 'data-link', place: 'data-link', quantity: 'speed' };
    const state = play(begin('front-shop'), full, { kind: 'wait', seconds: 600 }, link);
    expect(state.notes[0]).toMatchObject({ state: 'full-speed', channel: 'compressorSpeed' });
  });

  it('voltage and capacitance count in any state; the capacitor wants the machine off', () => {
    const bag = samplePack();
    const callout = { ...bag.callouts[0]!, toolbag: ['multimeter' as const] };
    const state = startAttempt({ ...bag, callouts: [callout] }, 'back-office', 'seed', fakeWorld);
    const capacitor: Action = {
      kind: 'read',
      instrument: 'multimeter',
      place: 'run-capacitor',
      quantity: 'capacitance',
    };
    expect(refused(state, capacitor)).toBe('needs-isolation');
    const off = play(state, { kind: 'control', change: { running: false } }, capacitor);
    expect(off.notes[0]).toMatchObject({ state: 'standing', settled: 'settled' });
  });
});

describe('hazards', () => {
  it('met unprepared are met and not handled; the same danger is met once', () => {
    const state = play(begin(), lowGauge, highGauge);
    expect(state.hazards).toHaveLength(1);
    expect(state.hazards[0]).toMatchObject({
      hazard: 'refrigerant-under-pressure',
      handled: false,
      missing: ['eye-and-hand-protection'],
    });
  });

  it('prepared for are handled; an omitted step is not a taken one', () => {
    const protect = (taken: boolean): Action => ({ kind: 'safety', step: 'eye-and-hand-protection', taken });
    expect(play(begin(), protect(true), lowGauge).hazards[0]!.handled).toBe(true);
    expect(play(begin(), protect(false), lowGauge).hazards[0]!.handled).toBe(false);
  });

  it('a flammable refrigerant asks for air and no flame', () => {
    const bag = samplePack();
    const callout = { ...bag.callouts[1]!, toolbag: ['low-gauge' as const] };
    const state = startAttempt({ ...bag, callouts: [callout] }, 'front-shop', 'seed', fakeWorld);
    expect(play(state, lowGauge).hazards.map(({ hazard }) => hazard)).toEqual([
      'refrigerant-under-pressure',
      'flammable-refrigerant',
    ]);
  });

  it('a deliberate act lets refrigerant out', () => {
    const state = play(begin(), { kind: 'hazard', act: 'loosen-pressurised-joint' });
    expect(state.hazardActs).toHaveLength(1);
    expect(state.faults.undercharge).toBeCloseTo(0.25, 9);
  });
});

describe('stakes', () => {
  it('begin as the tally, with at least one chip on "not sure yet"', () => {
    const chips = chipsFromTally(pack.callouts[0]!.tally);
    expect(chips).toEqual({ undercharge: 11, 'drier-restriction': 6, 'no-fault': 2 });
    expect(unsureChips(chips)).toBe(1);
    expect(chipsFromTally({ undercharge: 33, 'no-fault': 67 })).toEqual({ undercharge: 6, 'no-fault': 13 });
    expect(currentChips(begin())).toEqual(chips);
  });

  it('are declared once at each fixed moment, in its time', () => {
    const stake = (moment: 'survey' | 'third' | 'verdict' | 'free', chips = {}): Action => ({
      kind: 'stake',
      moment,
      chips,
    });
    const survey = play(begin(), stake('survey', { undercharge: 10 }));
    expect(survey.stakes[0]).toMatchObject({ unsure: 10, notes: 0 });
    expect(refused(survey, stake('survey'))).toBe('moment-declared');
    expect(refused(survey, stake('third'))).toBe('moment-too-early');
    expect(refused(survey, stake('free', { undercharge: 20 }))).toBe('bad-chips');
    expect(refused(survey, stake('free', { undercharge: 1.5 }))).toBe('bad-chips');
    expect(refused(survey, stake('free', { 'filter-dirty': 1 }))).toBe('cause-not-here');
    const third = play(survey, clamp(), clamp('liquid-line'), lowGauge);
    expect(openMoment(third)).toBe('third');
    expect(refused(third, stake('survey'))).toBe('moment-declared');
    expect(refused(play(begin(), clamp(), clamp('liquid-line'), lowGauge), stake('survey'))).toBe('moment-past');
    const done = play(third, stake('third'), verdict);
    expect(refused(done, stake('verdict'))).toBe('moment-past');
    expect(openMoment(done)).toBeNull();
  });
});

describe('undo', () => {
  it('strikes the note but keeps its number, its time and what it spilt', () => {
    const state = play(begin(), highGauge, clamp(), { kind: 'undo' });
    expect(state.notes[1]).toMatchObject({ index: 1, struck: true });
    expect(state.notes[0]!.struck).toBe(false);
    expect(state.clock).toBe(play(begin(), highGauge, clamp()).clock);
    const both = play(state, { kind: 'undo' });
    expect(both.notes.map(({ struck }) => struck)).toEqual([true, true]);
    expect(both.spilt).toBe(state.spilt);
    expect(refused(both, { kind: 'undo' })).toBe('nothing-to-undo');
    expect(play(both, clamp()).notes[2]).toMatchObject({ index: 2, struck: false });
    expect(refused(both, { kind: 'star', note: 1, side: 'for' })).toBe('struck-note');
  });

  it('does not reach back over a declared stake', () => {
    const state = play(begin(), clamp(), { kind: 'stake', moment: 'survey', chips: {} });
    expect(refused(state, { kind: 'undo' })).toBe('nothing-to-undo');
  });

  it('takes back a star, a choice of care, a control and the recorder', () => {
    const state = play(begin(), clamp(), { kind: 'star', note: 0, side: 'for' });
    expect(play(state, { kind: 'undo' }).notes[0]!.star).toBe('none');
    const safe = play(begin(), { kind: 'safety', step: 'ventilate', taken: true });
    expect(play(safe, { kind: 'undo' }).safety).toEqual({});
    const off = play(begin(), { kind: 'control', change: { running: false } });
    const on = play(off, { kind: 'undo' });
    expect(on.controls).toEqual(begin().controls);
    // By hand, now: the machine has stood for ten seconds.
    expect(on.clock).toBe(20);
    expect(on.epoch).toBe(2);
    const taping = play(begin('front-shop'), { kind: 'tape', on: true });
    expect(play(taping, { kind: 'undo' }).tape[0]!.to).not.toBeNull();
  });
});

describe('repair', () => {
  it('mends a leak for good, and leaves the rest', () => {
    const state = play(begin(), verdict, fullRepair);
    expect(state.repairs[0]).toMatchObject({
      fits: true,
      rootRight: true,
      callBack: null,
      mended: ['undercharge'],
      caused: [],
    });
    expect(state.repairs[0]!.procedure).toMatchObject({ share: 1, missing: [], outOfOrder: [] });
    expect(state.faults).toEqual({});
  });

  it('topped up, the machine runs and the van comes back', () => {
    const state = play(begin(), verdict, { kind: 'repair', remedy: 'top-up-only', steps: ['weigh-in'], root: null });
    expect(state.faults).toEqual({});
    expect(state.repairs[0]).toMatchObject({ fits: false, callBack: 'leak-left', rootRight: false });
  });

  it('the wrong remedy leaves the cause', () => {
    const state = play(begin(), verdict, {
      kind: 'repair',
      remedy: 'replace-filter',
      steps: ['isolate'],
      root: 'no-cleaning',
    });
    expect(state.repairs[0]).toMatchObject({ fits: false, callBack: 'cause-left', mended: [] });
    expect(state.faults).toEqual({ undercharge: 0.2 });
  });

  it('left-out steps have their consequence in the machine', () => {
    const steps = fullRepair.kind === 'repair' ? fullRepair.steps : [];
    const without = (step: string): Action =>
      ({ ...fullRepair, steps: steps.filter((each) => each !== step) }) as Action;
    const wet = play(begin(), verdict, without('evacuate-and-hold'));
    expect(wet.faults).toEqual({ 'non-condensable': 0.05 });
    expect(wet.repairs[0]).toMatchObject({ caused: ['non-condensable'], fits: false });
    expect(play(begin(), verdict, without('weigh-in')).faults).toEqual({ undercharge: 0.1 });
  });

  it('names steps out of order and needless ones', () => {
    const repair = play(begin(), verdict, {
      kind: 'repair',
      remedy: 'replace-filter',
      steps: ['restart-and-settle', 'isolate', 'record', 'recover'],
      root: null,
    }).repairs[0]!;
    expect(repair.procedure.needless).toEqual(['recover']);
    expect(repair.procedure.outOfOrder).toHaveLength(1);
    expect(repair.procedure.share).toBeCloseTo(2 / 3 - 0.1, 9);
  });

  it('changes the readings that follow, and they are told from those before', () => {
    const before = play(begin(), lowGauge, verdict);
    const done = play(before, fullRepair, lowGauge, { kind: 'verified', notes: [1] });
    expect(done.notes[1]!.value - done.notes[0]!.value).toBeGreaterThan(150_000);
    expect(done.notes.map(({ state }) => state)).toEqual(['running', 'repaired']);
    expect(done.verification).toMatchObject({ after: true, settled: false, notes: [1] });
    expect(done.verification!.ran).toBeGreaterThan(900);
    expect(phaseOf(done)).toBe('debrief');
    expect(refused(done, { kind: 'wait', seconds: 1 })).toBe('attempt-closed');
  });

  it('wants a verdict first; a healthy machine is left alone', () => {
    expect(refused(begin(), fullRepair)).toBe('no-verdict');
    const bag = samplePack();
    const healthy = { ...bag.callouts[0]!, faults: {}, rootCause: null };
    const state = startAttempt({ ...bag, callouts: [healthy] }, 'back-office', 'seed', fakeWorld);
    const said = play(state, { ...verdict, cause: 'no-fault' } as Action);
    const nothing = play(said, { kind: 'repair', remedy: 'nothing-to-mend', steps: ['record'], root: null });
    expect(nothing.repairs[0]).toMatchObject({ fits: true, rootRight: true, callBack: null });
    expect(nothing.events).toEqual([]);
    expect(play(said, fullRepair).repairs[0]).toMatchObject({ fits: false });
  });
});

describe('refusals', () => {
  const read = (instrument: string, place: string, quantity: string) =>
    ({ kind: 'read', instrument, place, quantity }) as unknown as Action;

  it.each([
    ['unknown-place', read('pipe-clamp', 'nowhere', 'temperature')],
    ['not-in-toolbag', read('air-probe', 'return-air', 'temperature')],
    ['does-not-fit', read('pipe-clamp', 'suction-port', 'temperature')],
    ['nothing-to-read', read('pipe-clamp', 'suction-line', 'pressure')],
    ['no-such-note', { kind: 'star', note: 3, side: 'for' }],
    ['no-change', { kind: 'control', change: { running: true } }],
    ['out-of-range', { kind: 'control', change: { setPoint: 400 } }],
    ['out-of-range', { kind: 'wait', seconds: 0.5 }],
    ['no-link', { kind: 'tape', on: true }],
    ['rival-is-verdict', { ...verdict, rival: 'undercharge' }],
    ['cause-not-here', { ...verdict, rival: 'filter-dirty' }],
    ['nothing-repaired', { kind: 'verified', notes: [] }],
  ] as [RefusalCode, Action][])('%s', (code, action) => {
    const state = begin();
    expect(refused(state, action)).toBe(code);
    expect(state).toEqual(begin());
  });

  it('offer what fits a place of what is in the bag', () => {
    expect(choicesAt(begin(), 'suction-line').map(({ instrument }) => instrument)).toEqual(['hand', 'pipe-clamp']);
    expect(choicesAt(begin(), 'nowhere')).toEqual([]);
  });
});

describe('replay', () => {
  it('names the action that cannot be', () => {
    const { attempt } = play(begin(), clamp(), lowGauge);
    const late = { ...attempt, actions: [attempt.actions[0]!, { ...attempt.actions[1]!, t: 141 }] };
    expect(() => replayAttempt(late, pack, fakeWorld)).toThrow(ReplayError);
    try {
      replayAttempt(late, pack, fakeWorld);
    } catch (error) {
      expect(error).toMatchObject({ index: 1, code: 'time-differs' });
    }
    const foreign = { ...attempt, callout: 'elsewhere' };
    expect(() => replayAttempt(foreign, pack, fakeWorld)).toThrow('is not in pack');
    const undoable = { ...attempt, actions: [{ t: 0, action: { kind: 'undo' as const } }] };
    expect(() => replayAttempt(undoable, pack, fakeWorld)).toThrow('action 0: nothing-to-undo');
  });

  it('gives the same notes whatever was looked at in between', () => {
    const state = play(begin(), clamp(), { kind: 'control', change: { running: false } }, clamp());
    for (const t of [500, 3, 99, 1000]) state.site.snapshot(state.events, t);
    const more = play(state, { kind: 'wait', seconds: 77 }, clamp());
    expect(replayAttempt(more.attempt, pack, fakeWorld).notes).toEqual(more.notes);
  });

  it('phases follow what was done', () => {
    const seen: string[] = [phaseOf(begin())];
    let state = begin();
    const steps: Action[] = [
      { kind: 'look', place: 'sight-glass' },
      { kind: 'safety', step: 'zero-gauges', taken: true },
      clamp(),
      { kind: 'stake', moment: 'verdict', chips: { undercharge: 15 } },
      verdict,
      fullRepair,
    ];
    for (const action of steps) {
      state = applyAction(state, action);
      seen.push(phaseOf(state));
    }
    expect(seen).toEqual(['work-order', 'survey', 'make-safe', 'measure', 'verdict', 'repair', 'verify']);
  });
});
