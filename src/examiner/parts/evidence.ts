/**
 * Evidence: do the cited readings, jointly, carry the verdict against the rival that the trainee named? Λ = log₂ of
 * p(cited | verdict) / p(cited | rival), against the best three pieces among the readings taken. A sum and the notes
 * behind it are one piece.
 */
import type { CauseId } from '../../../physics/types';
import { causeLogLikelihoods } from '../belief';
import { type Case, observed, type View } from '../case';
import { LN2 } from '../numeric';
import { airProved, COLD_OUTDOORS, isChargeJudgement, loadTells, needsAirFirst } from '../order';
import type { Candidate, Message, Observation } from '../types';
import { clip, type Marked } from './part';

const MOST_PIECES = 3;
const MOST_BITS = 6;
/** Less than this parts nothing, bits. */
const LEAST_BITS = 1;
/** A cited piece that speaks for the rival by more than this costs `AGAINST`. */
const SPEAKS_AGAINST = 0.5;
const AGAINST = 0.15;
/** A rival that never was a contender is an easy one. */
const EASY_RIVAL = 0.75;
const CONTENDERS = 3;
/** Best pieces from which all triples are tried. */
const SHORT_LIST = 8;

/** What else than gauges reads the circuit. */
const OF_CIRCUIT: readonly Candidate['instrument'][] = ['pipe-clamp', 'data-link'];

type Piece = readonly Observation[];

export function markEvidence(one: Case, right: 0 | 0.8 | 1): Marked {
  const { verdict } = one;
  if (!verdict) return { share: 0, reasons: [{ key: 'reason.evidence.noVerdict', values: {} }] };
  const named = verdict.rival;
  const invalid: Message[] = loadTells(verdict.cause, one.differential)
    ? []
    : [
        {
          key: 'reason.evidence.coldOutdoors',
          values: { outdoors: { kind: 'temperature', value: COLD_OUTDOORS } },
        },
      ];
  const rivals = contenders(one, verdict.cause);
  // Where nothing that was read parts the named rival, the best remaining one is taken instead.
  const found = [named, ...rivals].map((rival) => ({ rival, ...compare(one, verdict.cause, rival) }));
  const usable = found.find(({ best, rival }) => best >= LEAST_BITS && rival !== verdict.cause);
  if (!usable) {
    const tellable = rivals.some((rival) => couldTell(one, verdict.cause, rival));
    const key = tellable ? 'reason.evidence.nothingTold' : 'reason.evidence.notMeasured';
    return { share: tellable ? 0 : null, reasons: [{ key, values: {} }, ...invalid] };
  }
  const { rival, cited, best, against } = usable;
  const real = isReal(one, named, rivals);
  const easy = rival !== named || !real;
  const values = {
    rival: { kind: 'cause', id: rival },
    bits: { kind: 'bits', value: Math.max(0, cited) },
    best: { kind: 'bits', value: best },
  } as const;
  const share = clip(cited / best - AGAINST * against);
  const reasons: Message[] = [{ key: `reason.evidence.${word(share)}`, values }, ...invalid];
  if (against > 0) reasons.push({ key: 'reason.evidence.against', values: { rival: values.rival } });
  if (easy) {
    // The named rival may be the cause itself: then it is no easy one, the readings only do not speak against it.
    const key = real ? 'reason.evidence.notParted' : 'reason.evidence.easyRival';
    reasons.push({ key, values: { rival: { kind: 'cause', id: named } } });
  }
  return { share: share * (easy ? EASY_RIVAL : 1) * (right === 1 ? 1 : 0.5), reasons };
}

const word = (share: number): string => (share >= 0.8 ? 'strong' : share >= 0.4 ? 'partly' : 'weak');

/** Rivals outside the verdict and its twins, those that the readings left most belief first. */
function contenders({ prior, plain, twins }: Case, cause: CauseId): CauseId[] {
  const group = twins.includes(cause) ? twins : [cause];
  const others = (Object.keys(prior) as CauseId[]).filter((each) => !group.includes(each));
  return others.sort((a, b) => plain.final[b]! - plain.final[a]!);
}

/** A real rival: among the first to be suspected, or among the last to be ruled out. */
function isReal({ prior }: Case, rival: CauseId, rivals: readonly CauseId[]): boolean {
  const suspected = [...rivals].sort((a, b) => prior[b]! - prior[a]!);
  return [rivals, suspected].some((list) => list.slice(0, CONTENDERS).includes(rival));
}

function compare(one: Case, cause: CauseId, rival: CauseId): { cited: number; best: number; against: number } {
  const views = [one.plain, one.followThrough].map((view) => compareIn(one, view, cause, rival));
  return views.reduce((a, b) => (b.cited / Math.max(b.best, 1) > a.cited / Math.max(a.best, 1) ? b : a));
}

function compareIn(
  one: Case,
  view: View,
  cause: CauseId,
  rival: CauseId,
): { cited: number; best: number; against: number } {
  const weigh = (pieces: readonly Piece[]) => ratioBits(one, unique(pieces.flat()), cause, rival);
  const pieces = citedPieces(one, view, cause);
  const cited = weigh(pieces);
  const against = pieces.filter((piece) => cited - weigh(pieces.filter((other) => other !== piece)) < -SPEAKS_AGAINST);
  const best = Math.max(cited, weighBest(openPieces(one, view), weigh));
  return { cited: Math.min(MOST_BITS, cited), best: Math.min(MOST_BITS, best), against: against.length };
}

function weighBest(pieces: readonly Piece[], weigh: (pieces: readonly Piece[]) => number): number {
  const short = pieces
    .map((piece) => ({ piece, bits: weigh([piece]) }))
    .sort((a, b) => b.bits - a.bits)
    .slice(0, SHORT_LIST);
  let best = short[0]?.bits ?? 0;
  for (let i = 0; i < short.length && best < MOST_BITS; i++) {
    for (let j = i + 1; j < short.length && best < MOST_BITS; j++) {
      best = Math.max(best, weigh([short[i].piece, short[j].piece]));
      for (let k = j + 1; k < short.length && best < MOST_BITS; k++) {
        best = Math.max(best, weigh([short[i].piece, short[j].piece, short[k].piece]));
      }
    }
  }
  return best;
}

/** log₂ p(observations | cause) / p(observations | rival), everything else integrated out. */
function ratioBits(one: Case, observations: readonly Observation[], cause: CauseId, rival: CauseId): number {
  const likelihoods = causeLogLikelihoods(one.differential, observations, [cause, rival]);
  return (likelihoods.get(cause)! - likelihoods.get(rival)!) / LN2;
}

/**
 * The first three cited pieces; without proved air, circuit readings carry no judgement of the charge, and in the cold nothing
 * that is read of the running circuit does.
 */
function citedPieces(one: Case, view: View, cause: CauseId): Piece[] {
  const { verdict, state } = one;
  const rest = [...(verdict?.cites ?? [])];
  const pieces: Piece[] = [];
  while (rest.length > 0 && pieces.length < MOST_PIECES) {
    const note = rest.shift()!;
    const sums = state.sums.filter(({ notes }) => notes.includes(note));
    const sum = sums.find(({ notes }) => notes.some((each) => rest.includes(each))) ?? sums[0];
    const notes = sum ? [...new Set([note, ...sum.notes])] : [note];
    for (const each of notes) if (rest.includes(each)) rest.splice(rest.indexOf(each), 1);
    pieces.push(notes.flatMap((each) => observationOf(view, each)));
  }
  if (!loadTells(cause, one.differential)) {
    return pieces.map((piece) =>
      piece.filter(({ state, channel }) => state === 'standing' || !fromCircuit(one, channel)),
    );
  }
  if (!isChargeJudgement(cause) || airProved(one.candidates, observed(view, one.judgedNotes))) return pieces;
  return pieces.map((piece) => piece.filter(({ channel }) => !fromGauge(one, channel)));
}

function fromGauge({ candidates }: Case, channel: string): boolean {
  return candidates.some((each) => each.channel === channel && needsAirFirst(each));
}

function fromCircuit({ candidates }: Case, channel: string): boolean {
  return candidates.some(
    (each) => each.channel === channel && (needsAirFirst(each) || OF_CIRCUIT.includes(each.instrument)),
  );
}

function openPieces({ state }: Case, view: View): Piece[] {
  const singles = view.taken.flatMap((each): Piece[] => ('observation' in each ? [[each.observation]] : []));
  const sums = state.sums.map(({ notes }) => notes.flatMap((note) => observationOf(view, note)));
  return [...singles, ...sums.filter((piece) => piece.length > 1)];
}

function observationOf(view: View, note: number): Observation[] {
  const taken = view.taken[note];
  return taken && 'observation' in taken ? [taken.observation] : [];
}

function unique(observations: readonly Observation[]): Observation[] {
  return [...new Set(observations)];
}

/** Whether any three allowed readings on this machine part the two. */
function couldTell(one: Case, cause: CauseId, rival: CauseId): boolean {
  const pieces = one.candidates.flatMap((candidate): Piece[] => {
    const observation = one.read(candidate);
    return observation ? [[observation]] : [];
  });
  return weighBest(pieces, (chosen) => ratioBits(one, chosen.flat(), cause, rival)) >= LEAST_BITS;
}
