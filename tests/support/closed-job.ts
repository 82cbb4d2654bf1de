/** A job that was closed with a wrong verdict and a repair that does not hold, predictions and reasons with it. */
import { type Action, type AttemptState, apply, type RemedyId, start } from '../../src/attempt';
import type { Pack } from '../../src/attempt/pack/types';

/** A callout taken for one with too little refrigerant; gas is added by feel, unless another remedy is asked for. */
export function toppedUpJob(
  pack: Pack,
  callout: string,
  seed = 'returns',
  remedy: RemedyId = 'top-up-only',
): AttemptState {
  const clamp = { instrument: 'pipe-clamp', place: 'suction-line', quantity: 'temperature' } as const;
  const gauge = { instrument: 'low-gauge', place: 'suction-port', quantity: 'pressure' } as const;
  const actions: Action[] = [
    { kind: 'chalk', ...clamp, cause: 'undercharge', expect: 'higher' },
    { kind: 'read', ...clamp },
    { kind: 'chalk', ...gauge, cause: 'undercharge', expect: 'higher' },
    { kind: 'read', ...gauge },
    { kind: 'verdict', cause: 'undercharge', size: 'clear', rival: 'drier-restriction', cites: [0] },
    { kind: 'because', shows: 0, rulesOut: 1 },
    { kind: 'repair', remedy, steps: [], root: null },
    { kind: 'reflect', forVerdict: [1], forRival: [0], missing: 'liquidLineTempAfterDrier' },
    { kind: 'verified', notes: [] },
  ];
  return actions.reduce(apply, start(pack, callout, seed));
}
