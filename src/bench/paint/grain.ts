/** Scattered grains that stay where they are from one repaint to the next: position and size by hash, never by chance. */

/** 0…1, the same for the same two whole numbers (integer mixing as in xorshift-type hashes). */
export function grain(i: number, salt: number): number {
  let h = Math.imul(i + 1, 0x9e3779b1) ^ Math.imul(salt + 1, 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
  return ((h ^ (h >>> 15)) >>> 0) / 4294967296;
}
