/**
 * Hints: three steps from the belief of the moment – where to look, which pair to separate, the pair separated with
 * this machine's numbers. Nothing canned: another machine, or other notes, give another hint.
 */
import type { AttemptState, HintLevel } from '../../attempt';
import type { Differential, Hint } from '../types';
import { lookHint } from './look';
import { pairHint } from './pair';
import { type Standing, standingOf } from './standing';
import { workedHint } from './worked';

const STEPS: Readonly<Record<HintLevel, (standing: Standing) => Omit<Hint, 'level'>>> = {
  1: lookHint,
  2: pairHint,
  3: workedHint,
};

/** What the hint of this step says in this state of the attempt. */
export function hintFor(state: AttemptState, differential: Differential, level: HintLevel): Hint {
  return { level, ...STEPS[level](standingOf(state, differential)) };
}
