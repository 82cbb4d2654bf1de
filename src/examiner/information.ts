/**
 * Expected gain of a reading about the cause: mutual information between the cause and what the display would show,
 * in bits. Measured values on a grid as fine as the sharpest expectation, classes by summing. The chance of a slip is
 * left out: it takes a few hundredths of a bit from every reading alike.
 */
import { exp, ln } from '../../physics/math/elementary';
import { LN2 } from './numeric';

/** One way in which the reading may come out: under this cause, with this chance, as mean ± sd. */
export interface Outcome {
  /** number of the cause */
  readonly cause: number;
  readonly weight: number;
  readonly mean: number;
  readonly sd: number;
}

const MOST_BINS = 400;
const REACH = 4;
/** Grid step in units of the sharpest spread that counts. */
const FINENESS = 0.8;

/** `silent`: by cause, the chance that the machine has no such state (it trips), which tells something too. */
export function informationOfMeasured(outcomes: readonly Outcome[], silent: readonly number[]): number {
  const causes = silent.length;
  let low = Infinity;
  let high = -Infinity;
  let sharpest = Infinity;
  for (const { weight, mean, sd } of outcomes) {
    if (weight < 1e-6) continue;
    low = Math.min(low, mean - REACH * sd);
    high = Math.max(high, mean + REACH * sd);
    if (weight > 1e-3) sharpest = Math.min(sharpest, sd);
  }
  if (!(high > low)) return informationOfTable([silent]);
  const step = Math.max(FINENESS * Math.min(sharpest, high - low), (high - low) / MOST_BINS);
  const bins = Math.ceil((high - low) / step) + 1;
  const table = new Float64Array(bins * causes);
  const kernel = new Float64Array(bins);
  for (const { cause, weight, mean, sd } of outcomes) {
    if (weight < 1e-6) continue;
    const first = Math.max(0, Math.floor((mean - REACH * sd - low) / step));
    const last = Math.min(bins - 1, Math.ceil((mean + REACH * sd - low) / step));
    let total = 0;
    for (let bin = first; bin <= last; bin++) {
      const z = (low + bin * step - mean) / sd;
      kernel[bin] = exp(-0.5 * z * z);
      total += kernel[bin];
    }
    // A spread finer than the grid may miss every bin's middle: it falls whole into the nearest.
    if (total < 1e-3) {
      table[Math.round((mean - low) / step) * causes + cause] += weight;
      continue;
    }
    for (let bin = first; bin <= last; bin++) table[bin * causes + cause] += (weight * kernel[bin]) / total;
  }
  const rows: ArrayLike<number>[] = [silent];
  for (let bin = 0; bin < bins; bin++) rows.push(table.subarray(bin * causes, (bin + 1) * causes));
  return informationOfTable(rows);
}

/** Rows: what is noted; columns: causes; entries: joint chances. */
export function informationOfTable(rows: readonly ArrayLike<number>[]): number {
  const causes = rows[0].length;
  const byCause = new Float64Array(causes);
  let total = 0;
  for (const row of rows) for (let c = 0; c < causes; c++) byCause[c] += row[c];
  for (let c = 0; c < causes; c++) total += byCause[c];
  if (total <= 0) return 0;
  let sum = 0;
  for (const row of rows) {
    let noted = 0;
    for (let c = 0; c < causes; c++) noted += row[c];
    if (noted < 1e-9) continue;
    for (let c = 0; c < causes; c++) {
      if (row[c] > 1e-12) sum += row[c] * ln((row[c] * total) / (noted * byCause[c]));
    }
  }
  return Math.max(0, sum / total / LN2);
}
