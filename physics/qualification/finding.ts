/** One line of the qualification: what a source expects, what the model gives, whether it lies inside. */
export interface Finding {
  /** stable: section/machine/case/reading */
  readonly id: string;
  readonly source: string;
  readonly what: string;
  readonly unit: string;
  readonly ours: number;
  /** what the source allows, both ends included; an open end is infinite */
  readonly low: number;
  readonly high: number;
  readonly holds: boolean;
}

export function finding(
  id: string,
  source: string,
  what: string,
  unit: string,
  ours: number,
  low: number,
  high: number,
): Finding {
  return { id, source, what, unit, ours, low, high, holds: ours >= low && ours <= high };
}

/** The same, for a statement that is true or not. */
export function statement(id: string, source: string, what: string, holds: boolean): Finding {
  return { id, source, what, unit: '-', ours: holds ? 1 : 0, low: 1, high: 1, holds };
}
