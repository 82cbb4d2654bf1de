/**
 * Where the model and a source differ and why. Every miss of the qualification stands here with its reason; one that is not
 * here fails the tests, and so does one that no longer misses.
 */

/** Findings by the start of their id. */
export const MISSES: readonly (readonly [id: string, reason: string])[] = [];

export function reasonFor(id: string): string | null {
  return MISSES.find(([start]) => id.startsWith(start))?.[1] ?? null;
}
