/** Everything that a calibration asks of one callout, told attempt by attempt, so that several processes can share the work. */
import type { CauseId, PlantId } from '../../../physics/types';
import { posterior } from '../../examiner';
import type { Differential, Posterior } from '../../examiner/types';
import type { InstrumentId } from '../../instruments/types';
import { firstOf, logScore } from './account';
import { type Attempt, drawAttempt, type Strangeness, type Subject } from './machines';

export const WORLDS: readonly Strangeness[] = ['none', 'model-error', 'coils', 'correlations', 'noise'];

/** Share of the attempts that are drawn again in each stranger world, and of those on which instruments are left out. */
const STRANGER = 0.1;

export type Told =
  | {
      readonly kind: 'believed';
      readonly world: Strangeness;
      readonly plant: PlantId;
      readonly truth: CauseId;
      readonly belief: Posterior;
    }
  /** change of log score (bits) and of the first choice being right (−1, 0, 1) on the same attempt */
  | { readonly kind: 'without'; readonly what: InstrumentId | 'quiet'; readonly log: number; readonly top: number }
  /** bits that expectations from many more draws gain */
  | { readonly kind: 'sharper'; readonly plant: PlantId; readonly gain: number };

/** @param each attempts in the examiner's own world */
export function* calibration(subject: Subject, each: number, reference: Differential | null): Generator<Told> {
  const { callout } = subject;
  const { plant } = callout;
  const drawn = (world: Strangeness, i: number): Attempt | null =>
    drawAttempt(subject, world, `calibration/${callout.id}/${i}`);
  for (const world of WORLDS) {
    const count = world === 'none' ? each : Math.ceil(each * STRANGER);
    for (let i = 0; i < count; i++) {
      const attempt = drawn(world, i);
      if (!attempt) continue;
      const { truth } = attempt;
      const belief = believe(subject, attempt);
      yield { kind: 'believed', world, plant, truth, belief };
      if (world === 'noise') {
        const quiet = drawn('none', i);
        if (quiet) yield { kind: 'without', what: 'quiet', ...change(quiet.truth, believe(subject, quiet), belief) };
      }
      if (world !== 'none') continue;
      if (i < each * STRANGER) yield* leftOut(subject, attempt, belief);
      if (reference) {
        const better = believe({ callout, differential: reference }, attempt);
        yield { kind: 'sharper', plant, gain: logScore(truth, better) - logScore(truth, belief) };
      }
    }
  }
}

function believe({ callout, differential }: Subject, { readings }: Attempt): Posterior {
  return posterior(
    differential,
    callout.tally,
    readings.map(({ observation }) => observation),
  );
}

function* leftOut(subject: Subject, attempt: Attempt, full: Posterior): Generator<Told> {
  for (const what of new Set(attempt.readings.map(({ candidate }) => candidate.instrument))) {
    const readings = attempt.readings.filter(({ candidate }) => candidate.instrument !== what);
    yield { kind: 'without', what, ...change(attempt.truth, full, believe(subject, { ...attempt, readings })) };
  }
}

function change(truth: CauseId, before: Posterior, after: Posterior): { readonly log: number; readonly top: number } {
  const hit = (belief: Posterior): number => (firstOf(belief)[0] === truth ? 1 : 0);
  return { log: logScore(truth, after) - logScore(truth, before), top: hit(after) - hit(before) };
}
