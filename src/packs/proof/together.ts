/** Rules for the callouts of a pack taken together: no routine may solve it, and its tallies must be believable. */
import type { CauseId } from '../../../physics/types';
import type { Pack } from '../../attempt/pack/types';
import { causeLogLikelihoods, priorOf, temper } from '../../examiner/belief';
import { truthsOf } from '../../examiner/case';
import type { Observation } from '../../examiner/types';
import { stream } from '../../instruments/streams';
import { TOLD } from '../prove';
import type { CalloutProof } from './callout';
import type { Finding } from './findings';

/** Readings of a fixed routine, and the share of a pack that it must stay below. */
const ROUTINE = 5;
const SOLVED = 0.6;
/** Callouts below which five readings fit any pack and say nothing about it; and below which one hit too many is chance. */
const FEWEST = 6;
const SURE = 8;
/** Readings that are tried for a place in the routine. */
const TRIED = 24;
/** The same best first reading this many times running makes a habit. */
const RUNNING = 3;

export interface Routine {
  /** channel and state */
  readonly readings: readonly string[];
  /** ids of the callouts that it tells, as far as 0.8 */
  readonly solved: readonly string[];
  /** ids of the callouts that are told by the routine that is best for the others */
  readonly foreseen: readonly string[];
}

/** `routine` is null where the pack is too short to say anything about one. */
export function packFindings(
  pack: Pack,
  proofs: readonly CalloutProof[],
): { findings: Finding[]; routine: Routine | null } {
  const routine = proofs.length >= FEWEST ? routineOf(proofs) : null;
  const findings = [...firstReadings(proofs), ...untrueTallies(pack)];
  const length = routine?.foreseen.length ?? 0;
  if (routine && length / proofs.length >= SOLVED) {
    const why =
      `a fixed routine of ${ROUTINE} readings, such as ${routine.readings.join(', ')}, tells callouts that it was not ` +
      `made for: ${length} of ${proofs.length} (${routine.foreseen.join(', ')})`;
    findings.push({
      callout: null,
      rule: 'routine',
      weight: proofs.length < SURE ? 'doubtful' : 'refused',
      why,
      mend: 'other plants, other toolbags or other causes, so that no fixed routine tells three of five',
    });
  }
  return { findings, routine };
}

function firstReadings(proofs: readonly CalloutProof[]): Finding[] {
  const firsts = proofs.map(({ telling }) => telling?.path.steps[0]?.candidate.channel ?? null);
  const at = firsts.findIndex(
    (first, i) =>
      first !== null && i >= RUNNING - 1 && firsts.slice(i - RUNNING + 1, i).every((each) => each === first),
  );
  if (at < 0) return [];
  const { id } = proofs[at].opened.callout;
  const why = `the best first reading is ${firsts[at]} for the third callout running`;
  const mend = 'put another callout between them, or give this one another toolbag or tally';
  return [{ callout: id, rule: 'first-reading', weight: 'refused', why, mend }];
}

/**
 * Five readings chosen with a pack in hand tell nearly all of it: that says nothing. What a routine is worth shows on the
 * callouts that it was not made for, so each callout is tried with the routine that is best for all the others.
 */
function routineOf(proofs: readonly CalloutProof[]): Routine {
  const open = proofs.filter(({ telling }) => telling !== null);
  const known = new Map<string, number>();
  const belief = (proof: CalloutProof, names: readonly string[]) => {
    const own = names.filter((name) => has(proof, name));
    const key = [proof.opened.callout.id, ...own.sort()].join(' ');
    const found = known.get(key) ?? beliefFrom(proof, own);
    known.set(key, found);
    return found;
  };
  const told = (proof: CalloutProof, names: readonly string[]) => belief(proof, names) >= TOLD;
  const readings = bestReadings(open, belief);
  const idOf = ({ opened }: CalloutProof) => opened.callout.id;
  return {
    readings,
    solved: open.filter((proof) => told(proof, readings)).map(idOf),
    foreseen: open
      .filter((proof) =>
        told(
          proof,
          bestReadings(
            open.filter((other) => other !== proof),
            belief,
          ),
        ),
      )
      .map(idOf),
  };
}

type BeliefOf = (proof: CalloutProof, names: readonly string[]) => number;

/** Readings added one by one, each the one that brings belief in the truths furthest over all these callouts. */
function bestReadings(proofs: readonly CalloutProof[], belief: BeliefOf): string[] {
  const tried = worthTrying(proofs);
  const chosen: string[] = [];
  const worthWith = (names: readonly string[]) => worthOf(proofs.map((proof) => belief(proof, names)));
  let worth = worthWith(chosen);
  while (chosen.length < ROUTINE && chosen.length < tried.length) {
    const options = tried
      .filter((name) => !chosen.includes(name))
      .map((name) => ({ name, worth: worthWith([...chosen, name]) }));
    const best = options.reduce((a, b) => (b.worth > a.worth ? b : a));
    if (best.worth <= worth) break;
    chosen.push(best.name);
    worth = best.worth;
  }
  return chosen;
}

/** Callouts told first; where that is the same, how far the others have come. */
function worthOf(beliefs: readonly number[]): number {
  return beliefs.reduce((sum, belief) => sum + (belief >= TOLD ? 1 : 0) + 0.5 * Math.min(belief, TOLD), 0);
}

const nameOf = ({ channel, state }: { readonly channel: string; readonly state: string }): string =>
  state === 'running' ? channel : `${channel} (${state})`;

function worthTrying(proofs: readonly CalloutProof[]): string[] {
  const worth = new Map<string, number>();
  const add = (name: string, bits: number) => worth.set(name, (worth.get(name) ?? 0) + bits);
  for (const { telling } of proofs) {
    for (const candidate of telling!.arrival) add(nameOf(candidate), candidate.bits);
    for (const { candidate } of telling!.path.steps) add(nameOf(candidate), 1);
  }
  return [...worth]
    .sort((a, b) => b[1] - a[1])
    .slice(0, TRIED)
    .map(([name]) => name);
}

function has({ telling }: CalloutProof, name: string): boolean {
  return candidates(telling!).some((each) => nameOf(each) === name);
}

function candidates({ arrival, path }: NonNullable<CalloutProof['telling']>) {
  return [...arrival, ...path.steps.map(({ candidate }) => candidate)];
}

function beliefFrom({ opened, telling }: CalloutProof, names: readonly string[]): number {
  const { differential, callout } = opened;
  const read = opened.erring;
  const found = new Map<string, Observation>();
  for (const candidate of candidates(telling!)) {
    const name = nameOf(candidate);
    const observation = names.includes(name) && !found.has(name) ? read(candidate) : null;
    if (observation) found.set(name, observation);
  }
  const belief = temper(
    priorOf(differential, callout.tally),
    causeLogLikelihoods(differential, [...found.values()]),
    1,
  );
  return telling!.twins.reduce((sum, cause) => sum + (belief[cause] ?? 0), 0);
}

/** Draws to compare with, and the share of them below which true causes are too rare to be drawn from their tallies. */
const DRAWS = 4000;
const TOO_RARE = 1 / 1000;

/** Were these causes drawn from these tallies? As improbable a set comes less than once in a thousand draws if not. */
function untrueTallies({ id, callouts }: Pack): Finding[] {
  const chances = callouts.map(({ tally }) => (Object.values(tally) as number[]).map((count) => count / 100));
  const own = callouts.map(({ tally, faults }) => {
    const [truth] = truthsOf(faults) as CauseId[];
    return Math.max(tally[truth] ?? 0, 1e-3) / 100;
  });
  const found = own.reduce((sum, chance) => sum + Math.log(chance), 0);
  const { uniform } = stream(`${id}/tally-true`);
  let rarer = 0;
  for (let n = 0; n < DRAWS; n++) {
    const drawn = chances.reduce((sum, each) => sum + Math.log(pick(each, uniform())), 0);
    if (drawn <= found + 1e-9) rarer += 1;
  }
  if (rarer / DRAWS >= TOO_RARE) return [];
  const rarest = callouts[own.indexOf(Math.min(...own))];
  const why = `the true causes are too rare for their tallies: such a set comes less than once in ${1 / TOO_RARE} draws`;
  const mend = `draw the causes from the tallies, or count more often what is true (${rarest.id} first of all)`;
  return [{ callout: rarest.id, rule: 'tally-true', weight: 'refused', why, mend }];
}

function pick(chances: readonly number[], at: number): number {
  let left = at;
  for (const chance of chances) {
    left -= chance;
    if (left < 0) return chance;
  }
  return chances[chances.length - 1];
}
