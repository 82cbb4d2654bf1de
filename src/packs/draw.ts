/**
 * From a blueprint to a pack. For each callout the cause is drawn from the tally that its work order prints, and its
 * size from the prior that the examiner uses, so that both are true. Draws are independent: a cause may come twice and
 * another not at all, so that nothing is learned by elimination.
 */

import { FAULTS, type FaultFamily } from '../../physics';
import type { CauseId, Faults, OperatingMode, PlantId } from '../../physics/types';
import type { Callout, Pack } from '../attempt/pack/types';
import { USUAL_ROOT } from '../attempt/roots';
import { type Cell, cellsOf } from '../examiner/nodes';
import { type Stream, stream } from '../instruments/streams';
import type { Blueprint, Order } from './blueprint';
import { withLookAlikes } from './lookAlikes';

export interface Drawn {
  readonly cause: CauseId;
  readonly faults: Faults;
}

/** Decimal places of a severity: finer than anything that a reading tells. */
const PLACES: Readonly<Record<FaultFamily['unit'], number>> = { share: 3, K: 1, V: 1, m: 1, Pa: 0 };

/** Decimal places that leave a cell at least ten sizes. */
function placesIn(width: number): number {
  let places = 0;
  for (let step = 1; step > width / 10; step /= 10) places += 1;
  return places;
}

export function drawPack({ seed, wishes: _wishes, callouts, ...head }: Blueprint): Pack {
  return { ...head, callouts: withLookAlikes(callouts.map((order) => drawCallout(order, seed))) };
}

/** One callout from its order: its cause and size drawn, its machine seeded. */
export function drawCallout(order: Order, seed: string): Callout {
  const { faults, cause } = drawFault(order, seed);
  return {
    ...order,
    faults,
    rootCause: cause === 'no-fault' ? null : USUAL_ROOT[cause],
    machineSeed: `${seed}-${order.id}`,
  };
}

/** What is wrong with the machine of one callout. */
export function drawFault(order: Order, seed: string): Drawn {
  const cause = drawCause(order, seed);
  return {
    cause,
    faults: drawSize(cause, order.plant, order.conditions.mode, stream(`${seed}/draw/${order.id}/size`)),
  };
}

/** One of the last 100 calls like this. */
export function drawCause({ id, tally }: Order, seed: string): CauseId {
  const counts = Object.entries(tally) as [CauseId, number][];
  const total = counts.reduce((sum, [, count]) => sum + count, 0);
  return pick(counts, ([, count]) => count / total, stream(`${seed}/draw/${id}/cause`).uniform())[0];
}

/** Fault key and severity of a cause: a cell by its weight, then evenly within it. */
export function drawSize(cause: CauseId, plant: PlantId, mode: OperatingMode, { uniform }: Stream): Faults {
  const { key, from, to } = pick<Cell>(cellsFor(cause, plant, mode), ({ weight }) => weight, uniform());
  if (key === '') return {};
  const severity = from + (to - from) * uniform();
  return { [key]: Number(severity.toFixed(Math.max(PLACES[familyOf(cause).unit], placesIn(Math.abs(to - from))))) };
}

const known = new Map<string, readonly Cell[]>();

function cellsFor(cause: CauseId, plant: PlantId, mode: OperatingMode): readonly Cell[] {
  const name = `${cause} ${plant} ${mode}`;
  const cells = known.get(name) ?? cellsOf(plant, mode, FAULTS).filter((cell) => cell.cause === cause);
  known.set(name, cells);
  return cells;
}

/** True where the drawn fault is neither barely visible nor beyond severe: a case to learn on. */
export function isClear({ cause, faults }: Drawn): boolean {
  if (cause === 'no-fault') return true;
  const { slight, clear, severe } = familyOf(cause);
  return Object.values(faults).every((each) => Math.abs(each) >= (slight + clear) / 2 && Math.abs(each) <= severe);
}

function familyOf(cause: CauseId): FaultFamily {
  return FAULTS.find(({ id }) => id === cause)!;
}

/** `at` in [0, 1) lies in the share of the one returned; shares sum to 1. */
function pick<T>(list: readonly T[], share: (each: T) => number, at: number): T {
  let end = 0;
  for (const each of list) {
    end += share(each);
    if (at < end) return each;
  }
  return list[list.length - 1];
}
