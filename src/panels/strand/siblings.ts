/** How far each unit stands from its siblings in one quantity: those that do the same at that moment. */

export interface Sibling {
  readonly id: string;
  /** what it is doing: only its likes are its siblings */
  readonly state: string;
  readonly value: number;
}

/** Value less the median of the others that do the same; null for a unit that has no such sibling. */
export function deviations(all: readonly Sibling[]): ReadonlyMap<string, number | null> {
  return new Map(
    all.map(({ id, state, value }) => {
      const others = all.filter((other) => other.id !== id && other.state === state);
      return [id, others.length === 0 ? null : value - median(others.map((other) => other.value))];
    }),
  );
}

/** Ids, the furthest from its siblings first; who has none comes last. Equal ones keep their order. */
export function ranked(all: readonly Sibling[]): string[] {
  const off = deviations(all);
  const size = ({ id }: Sibling) => Math.abs(off.get(id) ?? -1);
  const alone = ({ id }: Sibling) => off.get(id) === null;
  return [...all].sort((a, b) => Number(alone(a)) - Number(alone(b)) || size(b) - size(a)).map(({ id }) => id);
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
