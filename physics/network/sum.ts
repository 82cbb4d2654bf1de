/** Sum of a figure over a list. */
export function sum<T>(list: readonly T[], of: (each: T) => number): number {
  let total = 0;
  for (const each of list) total += of(each);
  return total;
}
