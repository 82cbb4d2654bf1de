/** A case made by hand on the machine of straight lines, for tests of single parts of the grade. */
import type { CauseId, Faults } from '../../../physics/types';
import type { MarkedSum, SizeWord, Stake } from '../../../src/attempt';
import { causeLogLikelihoods, priorOf, temper } from '../../../src/examiner/belief';
import { candidatesOf } from '../../../src/examiner/candidates';
import type { Case, View } from '../../../src/examiner/case';
import { computeDifferentialFrom } from '../../../src/examiner/differential';
import type { Taken } from '../../../src/examiner/observe';
import { greedyPathOn } from '../../../src/examiner/path';
import { readerOf } from '../../../src/examiner/readings';
import type { Channel } from '../../../src/examiner/types';
import { benchFor, INPUT, SYNTHETIC, TALLY } from './synthetic';

export const differential = computeDifferentialFrom(INPUT, SYNTHETIC);
const bench = benchFor(differential);
const candidates = candidatesOf(bench);
export const prior = priorOf(differential, TALLY);

export interface Made {
  readonly faults: Faults;
  /** K, of the air outdoors; left out = that of the machine of straight lines */
  readonly outdoor?: number;
  /** channels in the order in which they are read */
  readonly read: readonly Channel[];
  /** declared after so many notes */
  readonly stakes?: readonly { readonly notes: number; readonly chips: Stake['chips'] }[];
  /** sums that the case needs, and those that were worked out */
  readonly needed?: Case['needed'];
  readonly sums?: readonly Partial<MarkedSum>[];
  readonly verdict?: {
    readonly size?: SizeWord;
    readonly cause: CauseId;
    readonly rival: CauseId;
    readonly cites: readonly number[];
  };
}

export function makeCase({
  faults,
  outdoor = INPUT.conditions.outdoor,
  read: channels,
  stakes = [],
  needed = [],
  sums = [],
  verdict,
}: Made): Case {
  const read = readerOf(SYNTHETIC.snapshots({ ...INPUT, faults }, differential.states));
  const taken = channels.map((channel, note): Taken => {
    const candidate = candidates.find((each) => each.channel === channel && each.state === 'running');
    if (!candidate) throw new Error(`${channel} cannot be read on the machine of straight lines`);
    return { observation: { ...read(candidate)!, note } };
  });
  const likelihoods = (count: number) =>
    causeLogLikelihoods(
      differential,
      taken.slice(0, count).flatMap((each) => ('observation' in each ? [each.observation] : [])),
    );
  const posterior = (count: number) => temper(prior, likelihoods(count), 1);
  const view: View = { taken, likelihoods, posterior, final: posterior(taken.length) };
  const truths = Object.keys(faults) as CauseId[];
  const declared = stakes.map(({ notes, chips }) => ({ notes, chips, unsure: 20 - total(chips), moment: 'free' }));
  return {
    state: {
      site: { world: { families: SYNTHETIC.families }, callout: { mode: 'solo', faults: {} } },
      stakes: declared,
      sums: sums.map((sum) => ({ notes: [], credit: 0, slip: null, inputsFit: true, ...sum })),
      notes: [],
      repairs: [],
      attempt: { actions: [] },
    },
    differential: { ...differential, conditions: { ...differential.conditions, outdoor } },
    bench,
    candidates,
    tally: TALLY,
    prior,
    truths,
    twins: truths,
    read,
    path: greedyPathOn(differential, TALLY, bench, read),
    needed,
    bestCost: 10,
    verdict: verdict ? { size: 'clear', ...verdict, notes: taken.length } : null,
    judgedNotes: taken.length,
    plain: view,
    followThrough: view,
    belief: verdict ? view.final[verdict.cause]! : 0,
    support: verdict ? Math.min(1, view.final[verdict.cause]! / 0.8) : 0,
  } as unknown as Case;
}

const total = (chips: Stake['chips']) => Object.values(chips).reduce((sum, count) => sum + count, 0);

/** A belief in whole chips, one left on "not sure yet". */
export function chipsOf(belief: Readonly<Partial<Record<CauseId, number>>>): Stake['chips'] {
  const entries = Object.entries(belief) as [CauseId, number][];
  return Object.fromEntries(entries.map(([cause, share]) => [cause, Math.floor(share * 19)]));
}
