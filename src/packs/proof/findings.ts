/** What the proof of a pack objects to: which callout, why, and what would mend it. */

export interface Finding {
  /** id of the callout; null where it is about the pack as a whole */
  readonly callout: string | null;
  /** stable word for the rule */
  readonly rule: ProofRule;
  /** `refused`: nobody should get this; `doubtful`: its author should look again */
  readonly weight: 'refused' | 'doubtful';
  readonly why: string;
  readonly mend: string;
}

export type ProofRule =
  /** the machine has no settled state in which it runs */
  | 'runs'
  /** the fault shows too little to be told from none */
  | 'seen'
  /** with every allowed reading, free of error, the examiner's first choice is another cause */
  | 'first-choice'
  /** no allowed reading tells a rival from the truth by three to one */
  | 'told-apart'
  /** the best readings, one after the other, end at another cause or at none */
  | 'path'
  | 'budget'
  /** two languages that say the very same, or nothing */
  | 'texts'
  | 'first-reading'
  | 'routine'
  | 'tally-true';

/** One English sentence with all of it. */
export function inWords({ callout, why, mend }: Finding): string {
  return `${callout === null ? 'the pack' : `callout ${callout}`}: ${why}; to mend it: ${mend}`;
}
