/** Who clicks: readings, stakes, sums, cause, citations and remedy at random, each one something that the bench allows. */
import type { CauseId } from '../../physics/types';
import { PROCEDURE_STEPS, REMEDIES, SIZE_WORDS } from '../attempt';
import { ROOT_CAUSES, STAKE_MOMENTS } from '../attempt/types';
import { stream } from '../instruments/streams';
import { INPUTS, TELLING_SUMS } from './quanta';
import type { Hand } from './traineeHand';
import type { Candidate } from './types';

const CLICKS = 24;
const CHIPS_AT_ONCE = 19;
/** K; a difference that somebody might write down without working it out */
const LIKELY = 20;

export function clickAtRandom(
  hand: Hand,
  candidates: readonly Candidate[],
  named: readonly CauseId[],
  seed: string,
): void {
  const { uniform } = stream(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(uniform() * list.length)];
  const acts = [
    () => {
      const { instrument, place, quantity, channel } = pick(candidates);
      const link = instrument === 'data-link' ? { channel } : {};
      if (instrument === 'eyes') hand.try({ kind: 'look', place });
      else hand.try({ kind: 'read', instrument, place, quantity, ...link });
    },
    () => hand.try({ kind: 'stake', moment: pick(STAKE_MOMENTS), chips: { [pick(named)]: CHIPS_AT_ONCE } }),
    () => {
      const sum = pick(TELLING_SUMS);
      const notes = INPUTS[sum].flatMap((channel) => hand.noteOf(channel, 'running')?.index ?? []);
      hand.try({ kind: 'sum', sum, notes, answer: LIKELY * uniform() });
    },
  ];
  // Readings come first among clicks as among people: two of three.
  for (let i = 0; i < CLICKS; i++) (uniform() < 2 / 3 ? acts[0] : pick(acts))();
  const cause = pick(named);
  const rival = pick(named.filter((each) => each !== cause));
  const cites = [...new Set([0, 1, 2].map(() => pick(hand.state.notes)?.index ?? -1))].filter((note) => note >= 0);
  hand.act({ kind: 'verdict', cause, size: pick(SIZE_WORDS), rival, cites });
  const steps = PROCEDURE_STEPS.filter(() => uniform() < 0.5);
  hand.act({ kind: 'repair', remedy: pick(REMEDIES), steps, root: pick(ROOT_CAUSES) });
}
