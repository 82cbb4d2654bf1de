/** The differential of a callout, computed once a run for every machine and weather. */
import { computeDifferential } from '../examiner';
import type { Differential, DifferentialInput } from '../examiner/types';
import type { Io } from './io';
import { startProgress } from './progress';

const known = new Map<string, Differential>();

export function differentialOf(what: string, input: DifferentialInput, io: Io): Differential {
  const { plant, refrigerant, conditions } = input;
  const key = JSON.stringify([plant, refrigerant, conditions]);
  const earlier = known.get(key);
  if (earlier) return earlier;
  const progress = startProgress(io, `differential of ${what}`);
  const computed = computeDifferential({ plant, refrigerant, conditions }, ({ done, total }) =>
    progress.at(done, total, 'nodes'),
  );
  progress.end();
  known.set(key, computed);
  return computed;
}
