import { solveLinear } from '../../math/linear';
import { hermite } from '../hermite';
import { DOME_SIZE } from '../layout';
import type { Saturation } from '../saturation';
import { wetState } from './blendDome';
import type { BlendLines } from './blendLines';

/** Coefficients of each correction, and the vapour shares at which it is exact. */
const ORDER = 3;
const SHARES = [0.067, 0.5, 0.933];
/** Only every so many rows are computed; what lies between is smooth enough to be filled in. */
const EVERY = 5;

/**
 * Corrections of a blend's dome (see tableDome.ts) along the rows of a table, values only: the slots beside them are for
 * their slopes. The number of rows less one must be a multiple of EVERY.
 */
export function domeRows(lines: BlendLines, rows: readonly Saturation[]): Float64Array {
  const dome = new Float64Array(rows.length * DOME_SIZE);
  const last = rows.length - 1;
  if (last % EVERY !== 0) throw new Error(`a table of ${rows.length} rows does not fit the dome's steps of ${EVERY}`);
  for (let row = 0; row <= last; row += EVERY) corrections(lines, rows[row], dome.subarray(row * DOME_SIZE));
  for (let field = 0; field < DOME_SIZE; field += 2) {
    const at = (row: number) => dome[row * DOME_SIZE + field];
    const slope = (row: number) => {
      if (row === 0) return (-3 * at(0) + 4 * at(EVERY) - at(2 * EVERY)) / 2;
      if (row === last) return (3 * at(last) - 4 * at(last - EVERY) + at(last - 2 * EVERY)) / 2;
      return (at(row + EVERY) - at(row - EVERY)) / 2;
    };
    for (let row = 0; row < last; row += EVERY) {
      for (let i = 1; i < EVERY; i++) {
        const value = hermite(at(row), slope(row), at(row + EVERY), slope(row + EVERY), i / EVERY);
        dome[(row + i) * DOME_SIZE + field] = value;
      }
    }
  }
  return dome;
}

function corrections(lines: BlendLines, { pairs }: Saturation, out: Float64Array): void {
  if (pairs === undefined) throw new Error('a blend needs its phases');
  const liquid = wetState(lines, pairs.bubble);
  const vapour = wetState(lines, pairs.dew);
  const states = SHARES.map((share) => wetState(lines, lines.inside(pairs, share)));
  const eta = states.map(({ h }) => (h - liquid.h) / (vapour.h - liquid.h));
  const volumes = 1 / vapour.rho - 1 / liquid.rho;
  const fields = [
    states.map(({ t }, i) => t - liquid.t - eta[i] * (vapour.t - liquid.t)),
    states.map(({ rho }, i) => (1 / rho - 1 / liquid.rho) / volumes - eta[i]),
    states.map(({ s }, i) => s - liquid.s - eta[i] * (vapour.s - liquid.s)),
  ];
  fields.forEach((deviations, place) => {
    const matrix = new Float64Array(ORDER * ORDER);
    const c = Float64Array.from(deviations, (deviation, i) => deviation / (eta[i] * (1 - eta[i])));
    eta.forEach((share, i) => {
      const xi = 2 * share - 1;
      matrix.set([1, xi, xi * xi], i * ORDER);
    });
    solveLinear(matrix, c, ORDER);
    for (let j = 0; j < ORDER; j++) out[place * 2 * ORDER + 2 * j] = c[j];
  });
}
