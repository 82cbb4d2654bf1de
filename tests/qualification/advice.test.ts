/**
 * What the examiner says while a job is open, on shipped callouts: hints from the belief of the moment and this
 * machine's numbers, one more reading for a right verdict, another cause in the same machine.
 */
import { describe, expect, it } from 'vitest';
import { type Action, type AttemptState, REAL_WORLD, start } from '../../src/attempt';
import type { Callout, Pack } from '../../src/attempt/pack/types';
import {
  benchOf,
  type Differential,
  grade,
  type Hint,
  hintFor,
  type Message,
  observationsIn,
} from '../../src/examiner';
import { candidatesOf } from '../../src/examiner/candidates';
import { airProved, needsAirFirst } from '../../src/examiner/order';
import { causesToTry, comparison, readRows, runTrial, trialOf, wouldRead } from '../../src/examiner/otherCause';
import { sourceOf } from '../../src/examiner/source';
import { Hand } from '../../src/examiner/traineeHand';
import { createText, LANGUAGES } from '../../src/i18n';
import { channelValue } from '../../src/instruments/places';
import { hintText } from '../../src/panels/hints/hintText';
import { differentialFor, isFirst, shippedCallouts } from '../support/differentials';

const all = shippedCallouts()
  .filter(isFirst)
  .filter((_, i) => i % 3 === 0);
/** Readings that a cause may take, hint by hint. */
const MOST_READINGS = 14;
const DRIER = all.find(({ callout }) => 'drier-restriction' in callout.faults)!;
const differential = differentialFor(DRIER);

function arrive({ pack, callout }: { pack: Pack; callout: Callout }, seed = 'advice'): Hand {
  return new Hand(start(pack, callout.id, seed), { patient: true, gaugeAs: 'gauge' });
}

function survey(hand: Hand): Hand {
  for (const each of candidatesOf(benchOf(hand.state))) {
    if (each.instrument === 'eyes' && each.state === 'running') hand.read(each);
  }
  return hand;
}

function readAll(hand: Hand, ...channels: readonly string[]): Hand {
  const candidates = candidatesOf(benchOf(hand.state));
  for (const channel of channels) {
    const found = candidates.find((each) => each.channel === channel && each.state === 'running');
    if (!found || hand.read(found) === null) throw new Error(`${channel} cannot be read`);
  }
  return hand;
}

const causesIn = (lines: readonly Message[]) =>
  lines.flatMap(({ values }) =>
    Object.values(values).flatMap((value) =>
      typeof value === 'object' && 'id' in value && value.kind === 'cause' ? [value.id] : [],
    ),
  );
const line = (hint: Hint, key: string) => hint.lines.find((each) => each.key === key);
const numberIn = (message: Message | undefined, name: string) => (message!.values[name] as { value: number }).value;

describe('hints', () => {
  it('say on every callout, at arrival and after the survey, something that both languages have words for', () => {
    for (const shipped of all) {
      const expectations = differentialFor(shipped);
      const hand = arrive(shipped);
      for (const round of ['arrival', 'survey']) {
        for (const level of [1, 2, 3] as const) {
          const hint = hintFor(hand.state, expectations, level);
          for (const language of LANGUAGES) {
            const words = hintText(createText(language, 'si'), hint, hand.state.site.atmosphere);
            expect(words.length, `${shipped.callout.id} ${round} ${level}`).toBeGreaterThan(0);
            for (const each of words) expect(each).not.toMatch(/\{\{|^hint\./);
          }
        }
        survey(hand);
      }
    }
  }, 120_000);

  it('lead whoever follows the first step to the cause on every callout, air before hoses, naming no cause', () => {
    for (const shipped of all) {
      const expectations = differentialFor(shipped);
      const hand = arrive(shipped);
      let told: Hint | null = null;
      for (let readings = 0; readings <= MOST_READINGS && !told; readings++) {
        const hint = hintFor(hand.state, expectations, 1);
        expect(causesIn(hint.lines)).toEqual([]);
        if (!hint.reading) told = hint;
        else {
          if (needsAirFirst(hint.reading)) {
            expect(airProved(candidatesOf(benchOf(hand.state)), observationsIn(hand.state))).toBe(true);
          }
          expect(hand.read(hint.reading), hint.reading.id).not.toBeNull();
        }
      }
      expect(told, shipped.callout.id).not.toBeNull();
      const { posterior, twins } = grade(hand.state, expectations);
      const [leader] = Object.entries(posterior).sort((a, b) => b[1] - a[1])[0];
      expect(twins, shipped.callout.id).toContain(leader);
    }
  }, 120_000);

  it('name second the two causes that lead, and the reading that parts them', () => {
    const hand = readAll(survey(arrive(DRIER)), 'supplyAirTemp', 'suctionLineTemp');
    const hint = hintFor(hand.state, differential, 2);
    const pair = causesIn(hint.lines);
    expect(pair.length).toBe(2);
    const { posterior } = grade(hand.state, differential);
    const ranked = Object.entries(posterior).sort((a, b) => b[1] - a[1]);
    expect(pair).toContain(ranked[0][0]);
    expect(hint.reading).not.toBeNull();
    // Taking it moves the odds of the two.
    const odds = (state: AttemptState) => {
      const belief = grade(state, differential).posterior as Record<string, number>;
      return Math.log2(belief[pair[0]] / belief[pair[1]]);
    };
    const before = odds(hand.state);
    hand.read(hint.reading!);
    expect(Math.abs(odds(hand.state) - before)).toBeGreaterThan(0.5);
  });

  it('work the last step out with what this machine shows, in a run of its own', () => {
    const hand = readAll(survey(arrive(DRIER)), 'suctionLineTemp', 'supplyAirTemp');
    const hint = hintFor(hand.state, differential, 3);
    const { plant, refrigerant, conditions, faults, machineSeed } = DRIER.callout;
    const { nuisance } = trialOf(hand.state, '', 0).setup;
    expect(machineSeed).toBeTruthy();
    const snapshot = sourceOf(REAL_WORLD).snapshots({ plant, refrigerant, conditions, faults, nuisance: nuisance! }, [
      'running',
    ]).running!;
    const { what } = line(hint, 'hint.worked.value')!.values as { what: { kind: string; id: string } };
    const own =
      what.kind === 'sum' ? channelValue(snapshot, what.id as never) : channelValue(snapshot, hint.reading!.channel);
    if (what.kind === 'channel' || what.id === 'superheat' || what.id === 'subcooling') {
      expect(numberIn(line(hint, 'hint.worked.value'), 'value')).toBeCloseTo(own, 1);
    }
    const bands = hint.lines.filter(({ key }) => key === 'tells.band');
    expect(bands.length).toBe(2);
    for (const band of bands) expect(numberIn(band, 'low')).toBeLessThan(numberIn(band, 'high'));
    const shift = line(hint, 'hint.worked.belief');
    expect(numberIn(shift, 'after')).toBeGreaterThanOrEqual(numberIn(shift, 'before'));
  });

  it('follow the notes and the machine: other notes, another fault, other hints', () => {
    const early = hintFor(arrive(DRIER).state, differential, 3);
    const late = hintFor(readAll(survey(arrive(DRIER)), 'suctionLineTemp').state, differential, 3);
    expect(late.lines).not.toEqual(early.lines);
    const other = { ...DRIER.callout, faults: { undercharge: 0.25 }, rootCause: 'leak-at-joint' as const };
    const pack = { ...DRIER.pack, callouts: [other] };
    expect(hintFor(arrive({ pack, callout: other }).state, differential, 3).lines).not.toEqual(early.lines);
  });

  it('cost nothing up to the second, and make a study of the third', () => {
    const hand = survey(arrive(DRIER));
    hand.act({ kind: 'hint', level: 1 });
    expect(grade(hand.state, differential)).toMatchObject({ scored: true, hints: 1 });
    const act = (action: Action) => {
      hand.act({ kind: 'wait', seconds: 60 });
      hand.act(action);
    };
    act({ kind: 'hint', level: 2 });
    expect(grade(hand.state, differential).scored).toBe(true);
    act({ kind: 'hint', level: 3 });
    expect(grade(hand.state, differential)).toMatchObject({ scored: false, hints: 3 });
  });
});

const SAID = { kind: 'verdict', cause: 'drier-restriction', size: 'severe', rival: 'undercharge', cites: [] } as const;
const part = (state: AttemptState, name: string) =>
  grade(state, differential).parts.find((each) => each.part === name)!.points!;

describe('prove it', () => {
  /** Right, argued, but half of the proof is missing. */
  const said = () => {
    const hand = readAll(survey(arrive(DRIER)), 'suctionLineTemp', 'liquidLineTempAfterDrier');
    hand.act(SAID);
    return hand;
  };
  const proof = (state: AttemptState, expectations: Differential = differential) => grade(state, expectations).proveIt;

  it('opens for a right verdict that was argued, and pays what the one reading adds', () => {
    const hand = said();
    const before = hand.state;
    expect(proof(before)!.open).toBeGreaterThan(1);
    expect(proof(before)).toMatchObject({ won: 0, note: null });
    readAll(hand, 'liquidLineTemp');
    const { open, won, note } = proof(hand.state)!;
    expect(note).toBe(hand.state.notes.length - 1);
    expect(won).toBeGreaterThan(1);
    expect(won).toBeLessThanOrEqual(open + 1e-9);
    expect(part(hand.state, 'cause') - part(before, 'cause')).toBeCloseTo(won, 9);
    for (const name of ['belief', 'evidence', 'economy']) {
      expect(part(hand.state, name)).toBe(part(before, name));
    }
  });

  it('counts one reading only, and a taken-back one too', () => {
    const two = readAll(said(), 'suctionPressure');
    const after = proof(two.state)!;
    expect(proof(readAll(two, 'liquidLineTemp').state)).toEqual(after);
    const back = readAll(said(), 'suctionPressure');
    back.act({ kind: 'undo' });
    expect(proof(readAll(back, 'liquidLineTemp').state)!.won).toBe(0);
  });

  it('takes nothing away, whatever the reading says', () => {
    for (const channel of ['supplyAirTemp', 'compressorCurrent', 'returnAirTemp']) {
      const hand = said();
      const before = part(hand.state, 'cause');
      expect(part(readAll(hand, channel).state, 'cause'), channel).toBeGreaterThanOrEqual(before);
    }
  });

  it('stays shut for a wrong verdict, for a guess without readings, and after the repair', () => {
    const wrong = readAll(survey(arrive(DRIER)), 'suctionLineTemp');
    wrong.act({ ...SAID, cause: 'undercharge', rival: 'drier-restriction' });
    expect(proof(wrong.state)).toBeNull();
    const guess = arrive(DRIER);
    guess.act(SAID);
    expect(proof(guess.state)).toBeNull();
    const late = said();
    late.act({ kind: 'repair', remedy: 'clean-outdoor-coil', steps: [], root: null });
    late.act({ kind: 'wait', seconds: 1800 });
    readAll(late, 'liquidLineTemp');
    expect(proof(late.state)!.won).toBe(0);
  });

  it('stays shut in an exam', () => {
    const exam = { ...DRIER.callout, mode: 'exam' as const };
    const hand = arrive({ pack: { ...DRIER.pack, callouts: [exam] }, callout: exam });
    readAll(survey(hand), 'suctionLineTemp', 'liquidLineTempAfterDrier');
    hand.act(SAID);
    readAll(hand, 'liquidLineTemp');
    expect(proof(hand.state)).toBeNull();
  });
});

describe('another cause in the same machine', () => {
  const hand = readAll(
    survey(arrive(DRIER)),
    ...['supplyAirTemp', 'returnAirTemp', 'suctionLineTemp', 'liquidLineTemp', 'suctionPressure', 'liquidPressure'],
  );
  const rows = readRows(hand.state);
  const tried = (key: string, severity: number) => {
    const outcome = runTrial(trialOf(hand.state, key, severity), REAL_WORLD);
    if (outcome.as !== 'runs') throw new Error(JSON.stringify(outcome));
    return rows.map((row) => ({ row, would: wouldRead(row, outcome.snapshots, hand.state.site.saturation)! }));
  };
  const differing = (list: ReturnType<typeof tried>) =>
    list.filter(({ row, would }) => comparison(row, would) !== 'alike');

  it('lays sums and looks beside the bare readings', () => {
    const names = rows.map(({ quantum }) => quantum.sum ?? quantum.channel);
    for (const name of ['superheat', 'subcooling', 'suctionPressure', 'look:filterDust']) expect(names).toContain(name);
  });

  it('shows with the true fault what was read, and with others something else', () => {
    const [key, severity] = Object.entries(DRIER.callout.faults)[0];
    expect(differing(tried(key, severity)).length).toBeLessThanOrEqual(1);
    expect(differing(tried('undercharge', 0.25)).length).toBeGreaterThanOrEqual(3);
    expect(differing(tried('', 0)).length).toBeGreaterThanOrEqual(4);
  });

  it('runs or says why not, for every cause of each plant at both ends of its range', () => {
    const plants = (['orifice-split', 'inverter-split'] as const).map(
      (plant) => all.find(({ callout }) => callout.plant === plant)!,
    );
    for (const shipped of plants) {
      const { state } = arrive(shipped);
      for (const { key, from, to } of causesToTry(state)) {
        for (const severity of [from, to]) {
          const outcome = runTrial(trialOf(state, key, severity), REAL_WORLD);
          if (outcome.as === 'stops')
            expect(['high-pressure', 'low-pressure', 'discharge-heat', 'overload']).toContain(outcome.limit);
          else if (outcome.as === 'unsolved') expect(['no-convergence', 'range', 'table-end']).toContain(outcome.code);
          else expect(outcome.snapshots.running).toBeDefined();
        }
      }
    }
  }, 120_000);
});
