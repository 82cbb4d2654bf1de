/**
 * Whole numbers of which most equal those of another list, as a short text: the differences, five bits a character, and
 * runs of equal ones as one mark and their length.
 */

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const VALUE = new Map([...DIGITS].map((digit, value) => [digit, value]));
const MORE = 32;

/** @param base of the same length, or null for zeros */
export function packSparse(list: readonly number[], base: readonly number[] | null): string {
  let text = '';
  let equal = 0;
  const endRun = () => {
    if (equal > 0) text += `A${digits(equal)}`;
    equal = 0;
  };
  list.forEach((value, i) => {
    const apart = value - (base?.[i] ?? 0);
    if (apart === 0) {
      equal += 1;
      return;
    }
    endRun();
    // Sign in the lowest bit; never 0, which is the mark of a run.
    text += digits(apart > 0 ? 2 * apart : -2 * apart + 1);
  });
  endRun();
  return text;
}

/** Throws TypeError for a text that is not of this form or not of this length. */
export function unpackSparse(text: string, base: readonly number[] | null, length: number): number[] {
  const list: number[] = [];
  let at = 0;
  const next = (): number => {
    let value = 0;
    let place = 1;
    for (;;) {
      const digit = VALUE.get(text[at] ?? '');
      if (digit === undefined) throw new TypeError(`packed list: "${text[at] ?? 'end'}" found at ${at}`);
      at += 1;
      value += (digit % MORE) * place;
      if (digit < MORE) return value;
      place *= MORE;
    }
  };
  const from = () => base?.[list.length] ?? 0;
  while (at < text.length) {
    const code = next();
    if (code !== 0) {
      list.push(from() + (code % 2 === 0 ? code / 2 : -(code - 1) / 2));
      continue;
    }
    for (let left = next(); left > 0; left--) list.push(from());
  }
  if (list.length !== length) throw new TypeError(`packed list: ${list.length} numbers found, ${length} expected`);
  return list;
}

/** Five bits a character, the lowest first; numbers up to 2^53. */
function digits(value: number): string {
  let text = '';
  let left = value;
  while (left >= MORE) {
    text += DIGITS[MORE + (left % MORE)];
    left = Math.floor(left / MORE);
  }
  return text + DIGITS[left];
}
