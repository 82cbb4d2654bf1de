/**
 * Every debrief stands on computed numbers: each can be traced to a run of the model that gives it, what it says of two
 * causes has the sign that the model gives, and another fault under the same hands gives other sentences.
 */
import { describe, expect, it } from 'vitest';
import { type AttemptState, REAL_WORLD, start } from '../../src/attempt';
import type { Pack } from '../../src/attempt/pack/types';
import { type Band, type Debrief, type Differential, type Judged, judge, type Run } from '../../src/examiner';
import { sourceOf } from '../../src/examiner/source';
import { playTrainee, type TraineeId } from '../../src/examiner/trainees';
import { createText, LANGUAGES } from '../../src/i18n';
import { channelValue } from '../../src/instruments';
import { messageText } from '../../src/panels/kit/message';
import { differentialFor, type ShippedCallout, shippedCallouts } from '../support/differentials';

const PLAYED: readonly TraineeId[] = ['greedy', 'first-hunch'];
/** Two callouts of each machine are enough for what is tested of every one of their numbers. */
const all = shippedCallouts();
const subjects = (['orifice-split', 'inverter-split'] as const).flatMap((plant) =>
  all.filter(({ callout }) => callout.plant === plant).slice(0, 2),
);

interface Told {
  readonly name: string;
  readonly shipped: ShippedCallout;
  readonly state: AttemptState;
  readonly judged: Judged;
}

const told: Told[] = subjects.flatMap((shipped) => {
  const differential = differentialFor(shipped);
  return PLAYED.map((trainee) => {
    const { pack, callout } = shipped;
    const state = playTrainee(trainee, { pack, callout: callout.id, seed: 'debrief', differential });
    return { name: `${callout.id}, ${trainee}`, shipped, state, judged: judge(state, differential) };
  });
});

/** Value of a compared reading or sum in a run of the model. */
function valueIn(run: Run, picture: NonNullable<Debrief['picture']>): number {
  const { plant, refrigerant, conditions, faults, nuisance } = run;
  const setup = { plant, refrigerant, conditions, faults, nuisance };
  const snapshot = sourceOf(REAL_WORLD).snapshots(setup, [picture.state])[picture.state]!;
  const probe = (name: keyof typeof snapshot.probes) => snapshot.probes[name].value;
  const { quantum } = picture;
  if (quantum.sum === undefined) {
    return channelValue(snapshot, quantum.channel);
  }
  switch (quantum.sum) {
    case 'superheat':
    case 'subcooling':
      return probe(quantum.sum);
    case 'air-drop':
      return probe('returnAirTemp') - probe('supplyAirTemp');
    case 'air-rise':
      return probe('condenserLeavingAirTemp') - probe('condenserEnteringAirTemp');
    case 'approach':
      return probe('liquidLineTemp') - probe('condenserEnteringAirTemp');
    default:
      return probe('liquidLineTemp') - probe('liquidLineTempAfterDrier');
  }
}

describe.each(told.map((each) => [each.name, each] as const))('%s', (_name, { judged, state, shipped }) => {
  const { debrief, grade } = judged;
  const runOf = (id: string) => debrief.runs.find((run) => run.id === id)!;

  it('says at most eight things, in both languages, with every place filled', () => {
    expect(debrief.sentences.length).toBeLessThanOrEqual(8);
    expect(debrief.sentences.length).toBeGreaterThanOrEqual(4);
    for (const language of LANGUAGES) {
      const text = createText(language, 'si');
      for (const message of [debrief.verdict, ...debrief.sentences, ...grade.parts.flatMap(({ reasons }) => reasons)]) {
        const words = messageText(text, message, state.site.atmosphere);
        expect(words, message.key).not.toContain('{{');
        expect(words).not.toBe(message.key);
      }
    }
  });

  it('names the machine that was there and what was said of it', () => {
    const truth = Object.keys(shipped.callout.faults)[0]?.split(':')[0] ?? 'no-fault';
    const said = state.verdicts.at(-1)!.cause;
    const values = Object.values(debrief.verdict.values) as { id: string }[];
    expect(values.map(({ id }) => id)).toContain(said);
    expect(grade.twins[0]).toBe(truth);
    if (said !== truth) expect(values.map(({ id }) => id)).toContain(truth);
  });

  it('shows as its picture what was read, and bands that a run of the model falls into', () => {
    const { picture } = debrief;
    if (!picture) return;
    const [truth, rival] = picture.bands;
    expect(Math.abs(truth.middle - rival.middle)).toBeGreaterThan(0);
    const inside = (band: Band) => {
      const width = band.high - band.low;
      const run = valueIn(runOf(band.run), picture);
      expect(run, band.run).toBeGreaterThan(band.low - width);
      expect(run, band.run).toBeLessThan(band.high + width);
    };
    inside(truth);
    inside(rival);
    for (const note of picture.notes) expect(state.notes[note]).toBeDefined();
  });

  it('calls high or low only what the model makes higher or lower than the healthy machine, for both causes', () => {
    for (const { key, values } of debrief.sentences.filter(({ key }) => key.startsWith('alike.'))) {
      const what = values.what as { kind: 'channel' | 'sum'; id: string };
      const quantum = (what.kind === 'sum' ? { sum: what.id } : { channel: what.id }) as never;
      const [a, b] = debrief.picture!.bands;
      const picture = { ...debrief.picture!, quantum };
      const healthy = valueIn(runOf('healthy/running'), picture);
      for (const band of [a, b]) {
        const off = valueIn(runOf(band.run), picture) - healthy;
        expect(Math.sign(off), `${key} ${what.id} with ${band.cause}`).toBe(key === 'alike.high' ? 1 : -1);
      }
    }
  });

  it('traces every number to a run that it holds', () => {
    const ids = new Set(debrief.runs.map(({ id }) => id));
    const numbers = debrief.sentences.flatMap(({ values }) =>
      Object.values(values).flatMap((value) => (typeof value === 'object' && 'run' in value ? [value.run!] : [])),
    );
    const bands = debrief.rivals.flatMap(({ readings }) => readings.map(({ band }) => band.run));
    for (const id of [...numbers, ...bands]) expect(ids, id).toContain(id);
    for (const { run } of debrief.cycles.cycles) expect(ids).toContain(run);
    expect(debrief.cycles.cycles.length).toBeGreaterThanOrEqual(1);
  });

  it('lists all causes with beliefs that sum to 1, and a trail as long as the notes', () => {
    expect(debrief.rivals.reduce((sum, { posterior }) => sum + posterior, 0)).toBeCloseTo(1, 9);
    expect(debrief.trail.length).toBe(state.verdicts.at(-1)!.notes);
  });
});

describe('another fault under the same hands', () => {
  it('gives other sentences and other numbers', () => {
    const [{ pack, callout }] = subjects;
    const differential = differentialFor(subjects[0]);
    const other = { ...callout, faults: { 'drier-restriction': 0.45 }, rootCause: 'wet-or-dirty-circuit' as const };
    const twin: Pack = { ...pack, callouts: [other] };
    const said = (each: Pack) => JSON.stringify(judgeSame(each, callout.id, differential).debrief.sentences);
    expect(said(twin)).not.toBe(said(pack));
  });
});

/** The same few readings and the same verdict on whichever machine stands there. */
function judgeSame(pack: Pack, callout: string, differential: Differential): Judged {
  const state = playTrainee('first-hunch', { pack, callout, seed: 'same-hands', differential });
  expect(start(pack, callout, 'same-hands').site.callout.id).toBe(callout);
  return judge(state, differential);
}
