/** What a hint says: one idea, from the belief of that moment. */
import type { HintLevel } from '../../attempt/types';
import type { Candidate } from './belief';
import type { Message } from './message';

export interface Hint {
  readonly level: HintLevel;
  /** short sentences, in their order */
  readonly lines: readonly Message[];
  /** the reading that it is about, so that its place can be shown; null where none is left */
  readonly reading: Candidate | null;
}
