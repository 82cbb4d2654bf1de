/**
 * A round: so many callouts, these causes, this hard, drawn from a word. Work orders come from blueprints; what is
 * wrong with each machine is drawn from its tally, cut down to the causes that were asked for, so that the printed tally
 * stays true of the draw. A draw that fails its proof or is not as hard as asked is drawn again before anyone sees it;
 * that choice by difficulty is the one thing the tally does not tell.
 */
import type { CauseId, PlantId } from '../../physics/types';
import type { Callout, Localized, Pack, Weights } from '../attempt/pack/types';
import type { Differential } from '../examiner/types';
import { stream } from '../instruments/streams';
import type { Order } from './blueprint';
import { drawCallout } from './draw';
import { withLookAlikes } from './lookAlikes';
import { type CalloutProof, inWords, type PackProof, togetherOf } from './proof';
import { proveCallout } from './proof/callout';
import { open } from './proof/opened';

export interface RoundRequest {
  /** 1 to 100 */
  readonly count: number;
  /** what may be wrong; all causes where it is empty */
  readonly causes: readonly CauseId[];
  /** on which machines; all where it is empty */
  readonly plants: readonly PlantId[];
  /** least and most difficulty (`Difficulty.level`) */
  readonly levels: readonly [number, number];
  /** makes the round: the same word, the same round */
  readonly word: string;
}

/** Work orders to draw from; the differential of an order serves every machine drawn from it. */
export interface Shelf {
  readonly orders: readonly Order[];
  readonly differentialOf: (order: Order) => Differential;
}

export interface Round {
  readonly pack: Pack;
  readonly proof: PackProof;
  /** draws that were thrown away, and why */
  readonly thrown: Readonly<Record<'proof' | 'level' | 'together', number>>;
}

/** No round can be drawn as asked; the message says what stood in the way. */
export class NoRound extends Error {
  override readonly name = 'NoRound';
}

const TITLE: Localized = { en: 'A drawn round', es: 'Una ronda sorteada' };
const WEIGHTS: Weights = { cause: 20, belief: 15, evidence: 20, working: 15, repair: 20, economy: 10 };
/** Draws from one order before the next is tried; whole rounds before it is given up. */
const TRIES = 12;
const ROUNDS = 8;

/** Throws `NoRound` where the orders and causes do not give as many callouts as asked. */
export function drawRound(request: RoundRequest, shelf: Shelf): Round {
  const orders = shelf.orders.flatMap((order) => narrowed(order, request) ?? []);
  if (orders.length === 0) throw new NoRound('no work order names two of these causes on these machines');
  const thrown = { proof: 0, level: 0, together: 0 };
  let last = '';
  for (let n = 0; n < ROUNDS; n++) {
    const seed = `${request.word}-${n}`;
    const proofs = drawAll(request, shuffled(orders, seed), seed, shelf, thrown);
    const pack = packOf(request, proofs);
    const proof = togetherOf(pack, proofs);
    if (proof.holds) return { pack, proof, thrown };
    thrown.together += 1;
    last = proof.findings.filter(({ weight }) => weight === 'refused').map(inWords)[0];
  }
  throw new NoRound(`${ROUNDS} rounds drawn, none passes its proof; the last one: ${last}`);
}

/** The order with only those causes that were asked for, its tally scaled to 100; null where fewer than two are left. */
function narrowed(order: Order, { causes, plants }: RoundRequest): Order | null {
  if (plants.length > 0 && !plants.includes(order.plant)) return null;
  const kept = (Object.entries(order.tally) as [CauseId, number][]).filter(
    ([cause, count]) => count > 0 && (causes.length === 0 || causes.includes(cause)),
  );
  if (kept.length < 2) return null;
  return { ...order, tally: toHundred(kept) };
}

/** Whole counts in the same proportions that sum to 100, none of them 0. */
function toHundred(counts: readonly (readonly [CauseId, number])[]): Order['tally'] {
  const total = counts.reduce((sum, [, count]) => sum + count, 0);
  const whole = counts.map(([cause, count]) => [cause, Math.max(1, Math.floor((100 * count) / total))] as const);
  const rest = 100 - whole.reduce((sum, [, count]) => sum + count, 0);
  const largest = whole.reduce((a, b) => (b[1] > a[1] ? b : a))[0];
  return Object.fromEntries(whole.map(([cause, count]) => [cause, cause === largest ? count + rest : count]));
}

function drawAll(
  { count, levels: [least, most] }: RoundRequest,
  orders: readonly Order[],
  seed: string,
  { differentialOf }: Shelf,
  thrown: { proof: number; level: number },
): CalloutProof[] {
  const proofs: CalloutProof[] = [];
  // Each order once; then again with another draw, where there are fewer orders than callouts.
  for (let turn = 0; turn < count && proofs.length < count; turn++) {
    const before = proofs.length;
    for (const order of orders) {
      if (proofs.length === count) break;
      const id = turn === 0 ? order.id : `${order.id}-${turn + 1}`;
      for (let n = 0; n < TRIES; n++) {
        const callout = drawCallout({ ...order, id }, `${seed}-${n}`);
        const proof = proveCallout(open(callout, differentialOf(order)));
        const level = proof.telling?.difficulty.level ?? Number.NaN;
        if (proof.findings.length > 0) thrown.proof += 1;
        else if (!(level >= least && level <= most)) thrown.level += 1;
        else {
          proofs.push(proof);
          break;
        }
      }
    }
    if (proofs.length === before) break;
  }
  if (proofs.length < count) {
    const found = `only ${proofs.length} of ${count} callouts came out between ${least} and ${most}`;
    throw new NoRound(`${found} (${thrown.level} draws were harder or easier, ${thrown.proof} failed their proof)`);
  }
  return proofs;
}

function packOf({ word, causes, levels }: RoundRequest, proofs: readonly CalloutProof[]): Pack {
  const named = causes.length > 0 ? causes.join(', ') : '–';
  return {
    format: 1,
    id: `round-${word}`,
    version: 1,
    title: TITLE,
    about: {
      en: `${proofs.length} callouts, difficulty ${levels.join(' to ')}, drawn from the word “${word}”. Causes asked for: ${named}.`,
      es: `${proofs.length} avisos, dificultad de ${levels.join(' a ')}, sorteados con la palabra «${word}». Causas pedidas: ${named}.`,
    },
    weights: WEIGHTS,
    callouts: withLookAlikes(proofs.map(({ opened }) => opened.callout)),
  };
}

function shuffled(orders: readonly Order[], seed: string): Order[] {
  const { uniform } = stream(`${seed}/orders`);
  return orders
    .map((order) => ({ order, at: uniform() }))
    .sort((a, b) => a.at - b.at)
    .map(({ order }) => order);
}

/** Every callout of these packs as an order that can be drawn again. */
export function ordersOf(callouts: readonly Callout[]): Order[] {
  return callouts.map(({ faults: _f, rootCause: _r, lookAlike: _l, machineSeed: _m, ...order }) => order);
}
