/** Replays an attempt and gives what must not change: every note, and the machine to its last bit every five minutes. */
import type { ProbeName } from '../../physics/types';
import { type Attempt, replay, snapshotAt } from '../../src/attempt';
import { GOLDEN_PACK } from './pack';

const TRACED: readonly ProbeName[] = [
  'suctionPressure',
  'dischargePressure',
  'suctionLineTemp',
  'liquidLineTemp',
  'supplyAirTemp',
  'compressorCurrent',
  'valveOpening',
  'refrigerantCharge',
];
const EVERY = 300;

export interface GoldenResult {
  readonly clock: number;
  readonly notes: readonly {
    readonly value: number;
    readonly settled: string;
    readonly state: string;
    readonly misuse: readonly string[];
  }[];
  readonly repairs: readonly { readonly fits: boolean; readonly callBack: string | null }[];
  /** time, then the traced probes, as they are in the model */
  readonly trace: readonly (readonly number[])[];
}

export interface Golden {
  readonly physics: string;
  readonly attempt: Attempt;
  readonly result: GoldenResult;
}

export function goldenResult(attempt: Attempt): GoldenResult {
  const state = replay(attempt, GOLDEN_PACK);
  const times = Array.from({ length: Math.floor(state.clock / EVERY) + 1 }, (_, i) => i * EVERY);
  return {
    clock: state.clock,
    notes: state.notes.map(({ value, settled, state: operating, misuse }) => ({
      value,
      settled,
      state: operating,
      misuse,
    })),
    repairs: state.repairs.map(({ fits, callBack }) => ({ fits, callBack })),
    trace: times.map((t) => {
      const { probes } = snapshotAt(state, t);
      return [t, ...TRACED.map((name) => probes[name].value)];
    }),
  };
}
