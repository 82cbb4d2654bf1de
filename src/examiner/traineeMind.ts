/** The mind of a scripted trainee: what it believes of its own notes, and what it declares of that. */
import type { CauseId } from '../../physics/types';
import { CHIPS, type SizeWord } from '../attempt';
import { senseOf } from '../instruments/looks';
import { causeLogLikelihoods, posterior } from './belief';
import { candidatesOf } from './candidates';
import { benchOf } from './case';
import { driftOf } from './drift';
import { inputsOf, neededSums } from './needed';
import { classed, considered, observationsOf, takeNotes } from './observe';
import { sizeOf } from './parts/size';
import type { Hand } from './traineeHand';
import type { Candidate, Differential, Observation, Posterior } from './types';

const MOST_CITES = 3;

export class Mind {
  constructor(
    readonly hand: Hand,
    readonly differential: Differential,
  ) {}

  /** Notes as this trainee takes them: the hasty one believes what had not settled, the careless one the gauge's figure. */
  observations(): Observation[] {
    const { state, habits } = this.hand;
    const careful = habits.patient && habits.gaugeAs === 'gauge';
    const taking = { atmosphere: state.site.atmosphere, drift: driftOf(state) };
    const taken = takeNotes(state.notes, careful ? taking : { ...taking, followThrough: { gaugeAs: habits.gaugeAs } });
    return observationsOf(taken);
  }

  /** Belief over the causes that may be named. */
  belief(): Posterior {
    const { tally } = this.hand.state.site.callout;
    const all = posterior(this.differential, tally, this.observations());
    const named = Object.entries(all).filter(([cause]) => (tally[cause as CauseId] ?? 0) > 0);
    const total = named.reduce((sum, [, share]) => sum + share, 0);
    return Object.fromEntries(named.map(([cause, share]) => [cause, share / total]));
  }

  ranked(): CauseId[] {
    return (Object.entries(this.belief()) as [CauseId, number][]).sort((a, b) => b[1] - a[1]).map(([cause]) => cause);
  }

  sureness(): number {
    return Math.max(...Object.values(this.belief()));
  }

  /** Belief in whole chips, one always left on "not sure yet". */
  chips(): Partial<Record<CauseId, number>> {
    return inChips(this.belief());
  }

  /** The size that its readings leave, else the middle one. */
  size(cause: CauseId): SizeWord {
    const { families } = this.hand.state.site.world;
    return sizeOf(this.differential, families, this.observations(), cause) ?? 'clear';
  }

  /** Up to three notes, each the one that adds most for the cause against its rival to those chosen before. */
  cites(cause: CauseId, rival: CauseId): number[] {
    const weigh = (observations: readonly Observation[]) => {
      const likelihoods = causeLogLikelihoods(this.differential, observations, [cause, rival]);
      return likelihoods.get(cause)! - likelihoods.get(rival)!;
    };
    const rest = [...this.observations()];
    const cited: Observation[] = [];
    let carried = 0;
    while (rest.length > 0 && cited.length < MOST_CITES) {
      const weights = rest.map((each) => weigh([...cited, each]));
      const most = Math.max(...weights);
      if (most <= carried) break;
      carried = most;
      cited.push(...rest.splice(weights.indexOf(most), 1));
    }
    return cited.map(({ note }) => note);
  }

  /** Readings for the sums that, after what it has seen, still tell something. */
  readingsForSums(): Candidate[] {
    const bench = benchOf(this.hand.state);
    const seen = this.observations();
    const read = (candidate: Candidate) => {
      if (!senseOf(candidate.channel)) return considered(candidate, candidate.state, 0);
      const found = seen.find((each) => each.kind === 'classed' && each.channel === candidate.channel);
      return found ? classed(candidate.channel, candidate.state, found.value) : null;
    };
    const sums = neededSums(this.differential, this.hand.state.site.callout.tally, bench, read);
    return inputsOf(sums, candidatesOf(bench));
  }
}

/** A belief in whole chips by largest remainders, one always left on "not sure yet". */
export function inChips(belief: Posterior): Partial<Record<CauseId, number>> {
  const shares = (Object.entries(belief) as [CauseId, number][]).map(([cause, share]) => ({
    cause,
    exact: share * (CHIPS - 1),
  }));
  const chips = new Map(shares.map(({ cause, exact }) => [cause, Math.floor(exact)]));
  const given = [...chips.values()].reduce((sum, count) => sum + count, 0);
  const rest = shares.sort((a, b) => b.exact - Math.floor(b.exact) - (a.exact - Math.floor(a.exact)));
  for (const { cause } of rest.slice(0, CHIPS - 1 - given)) chips.set(cause, chips.get(cause)! + 1);
  return Object.fromEntries([...chips].filter(([, count]) => count > 0));
}
