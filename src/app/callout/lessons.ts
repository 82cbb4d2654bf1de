/** What the guided callout teaches: the very sums that its score will ask for, each with the readings it is made of. */
import { type AttemptState, snapshotAt } from '../../attempt';
import { benchOf, candidatesOf, decodeDifferential, type PackedDifferential, readerOf } from '../../examiner';
import { inputsOf, neededSums } from '../../examiner/needed';
import type { Lesson } from '../../panels/session';

/** `state` as on arrival: the sums are those that still tell after a look at the machine as it was found. */
export function lessonsOf(state: AttemptState, packed: PackedDifferential): Lesson[] {
  const bench = benchOf(state);
  const read = readerOf({ running: snapshotAt(state, 0) });
  const candidates = candidatesOf(bench);
  return neededSums(decodeDifferential(packed), state.site.callout.tally, bench, read).map((sum) => ({
    sum,
    readings: inputsOf([sum], candidates).map(({ instrument, place }) => ({ instrument, place })),
  }));
}
