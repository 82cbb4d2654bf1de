import { exp, ln } from '../math/elementary';
import { hermite, invertHermite } from './hermite';
import * as L from './layout';
import type { RefrigerantId } from './refrigerantData';
import type { TableData } from './tableBuild';
import { bend, wetEnthalpy } from './tableDome';
import { beyondSaturation, beyondSide, frozen, notANumber, outOfRange, tableEnd, wrongSide } from './tableErrors';

// Local copies of the places: a test runner's module wrapper makes every imported name a function call, which would
// cost more than the look-up itself.
const {
  P,
  LNP,
  T_BUB,
  T_DEW,
  H_L,
  H_V,
  RHO_L,
  RHO_V,
  S_L,
  S_V,
  CP_L,
  CP_V,
  MU_L,
  MU_V,
  K_L,
  K_V,
  SIGMA,
  ROW,
  W0,
  W1,
  W2,
  W3,
  INV_LATENT,
  INV_SPAN_V,
  INV_SPAN_L,
  OUT_T,
  OUT_RHO,
  OUT_Q,
  OUT_DTDH,
  OUT_S,
} = L;
const { NODE_SIZE, SAT_SIZE, TRANSPORT_SIZE } = L;
const { T: NODE_T, S: NODE_S } = L.NODE;
const { T_BUB: SAT_T_BUB, T_DEW: SAT_T_DEW } = L.SAT;

/** Places of the table's own constants (one array, so that a second fluid does not change any field's kind). */
const C_P_MIN = 0;
const C_P_MAX = 1;
const C_LN_CRITICAL = 2;
const C_X_FIRST = 3;
const C_INV_DX = 4;
const C_LAST_ROW = 5;
const C_COLUMNS = 6;
const C_LAST_COLUMN = 7;
const C_STRETCH = 8;
/** (1 + stretch) (columns - 1) */
const C_COLUMN_RATE = 9;
/** Liquid colder than this is refused, K: a triple point inside the table's own reach; else nothing. */
const C_FLOOR = 10;
const C_SIZE = 11;

/** A temperature this far over the saturation line still counts as saturated, K: another route to it rounds otherwise. */
const EDGE = 1e-6;

/**
 * Fast properties of one refrigerant: Hermite splines on the saturation line, bicubic Hermite in (pressure, normalised
 * enthalpy) beside it, all with exact slopes at the nodes. Everything is Float64Array in and out, no allocation.
 *
 * Reach: saturation temperature -80 °C (or the triple point) to 0.985 of the critical pressure; liquid down to -90 °C (or
 * the triple point), vapour up to the equation's upper temperature or 650 K.
 * Errors against the equation of state: see tests/unit/fluids/table.test.ts (targets hold from -45 °C to 0.9 of the
 * critical pressure; above that they grow).
 */
export class FluidTable {
  readonly id: RefrigerantId;
  /** kg/mol */
  readonly molarMass: number;
  /** Pa */
  readonly pCritical: number;
  /** K */
  readonly tCritical: number;
  /** Ends of the tables, Pa. */
  readonly pMin: number;
  readonly pMax: number;
  /** Temperature limits of the single-phase sides, K. */
  readonly tMin: number;
  readonly tMax: number;
  private readonly c: Float64Array;
  private readonly sat: Float64Array;
  private readonly transport: Float64Array;
  private readonly vapour: Float64Array;
  private readonly liquid: Float64Array;
  private readonly dome: Float64Array;

  constructor(table: TableData) {
    const { data, spec } = table;
    this.id = data.id;
    this.molarMass = data.molarMass;
    this.pCritical = data.pCritical;
    this.tCritical = data.tCritical;
    this.pMin = table.pMin;
    this.pMax = table.pMax;
    this.tMin = table.tBottom;
    this.tMax = table.tTop;
    this.sat = table.saturation;
    this.transport = table.transport;
    this.vapour = table.vapour;
    this.liquid = table.liquid;
    this.dome = table.dome;
    this.c = new Float64Array(C_SIZE);
    this.c[C_P_MIN] = table.pMin;
    this.c[C_P_MAX] = table.pMax;
    this.c[C_LN_CRITICAL] = ln(data.pCritical);
    this.c[C_X_FIRST] = table.xFirst;
    this.c[C_INV_DX] = 1 / table.dx;
    this.c[C_LAST_ROW] = spec.rows - 2;
    this.c[C_COLUMNS] = spec.columns;
    this.c[C_LAST_COLUMN] = spec.columns - 2;
    this.c[C_STRETCH] = spec.stretch;
    this.c[C_COLUMN_RATE] = (1 + spec.stretch) * (spec.columns - 1);
    this.c[C_FLOOR] = data.tTriple === undefined ? -Infinity : data.tTriple - EDGE;
  }

  /**
   * Fills P ... CP_V and the private places of a block. The transport places are left alone.
   * Throws `table-end` outside [pMin, pMax].
   */
  setPressure(p: number, block: Float64Array): void {
    const c = this.c;
    if (!(p >= c[C_P_MIN] && p <= c[C_P_MAX])) throw tableEnd(this, p);
    const lnP = ln(p);
    const u = (c[C_X_FIRST] - Math.sqrt(c[C_LN_CRITICAL] - lnP)) * c[C_INV_DX];
    const last = c[C_LAST_ROW] | 0;
    let row = u | 0;
    if (row > last) row = last;
    const t = u - row;
    const t2 = t * t;
    const w3 = t2 * (t - 1);
    const w1 = w3 - t2 + t;
    const w2 = t2 * (3 - 2 * t);
    const w0 = 1 - w2;
    const sat = this.sat;
    const a = (row * SAT_SIZE) | 0;
    const b = (a + SAT_SIZE) | 0;
    const hl = w0 * sat[a + 4] + w1 * sat[a + 5] + w2 * sat[b + 4] + w3 * sat[b + 5];
    const hv = w0 * sat[a + 6] + w1 * sat[a + 7] + w2 * sat[b + 6] + w3 * sat[b + 7];
    block[P] = p;
    block[LNP] = lnP;
    block[T_BUB] = w0 * sat[a] + w1 * sat[a + 1] + w2 * sat[b] + w3 * sat[b + 1];
    block[T_DEW] = w0 * sat[a + 2] + w1 * sat[a + 3] + w2 * sat[b + 2] + w3 * sat[b + 3];
    block[H_L] = hl;
    block[H_V] = hv;
    block[RHO_L] = p / (w0 * sat[a + 8] + w1 * sat[a + 9] + w2 * sat[b + 8] + w3 * sat[b + 9]);
    block[RHO_V] = p / (w0 * sat[a + 10] + w1 * sat[a + 11] + w2 * sat[b + 10] + w3 * sat[b + 11]);
    block[S_L] = w0 * sat[a + 12] + w1 * sat[a + 13] + w2 * sat[b + 12] + w3 * sat[b + 13];
    block[S_V] = w0 * sat[a + 14] + w1 * sat[a + 15] + w2 * sat[b + 14] + w3 * sat[b + 15];
    block[CP_L] = 1 / (w0 * sat[a + 16] + w1 * sat[a + 17] + w2 * sat[b + 16] + w3 * sat[b + 17]);
    block[CP_V] = 1 / (w0 * sat[a + 18] + w1 * sat[a + 19] + w2 * sat[b + 18] + w3 * sat[b + 19]);
    block[ROW] = row;
    block[W0] = w0;
    block[W1] = w1;
    block[W2] = w2;
    block[W3] = w3;
    block[INV_LATENT] = 1 / (hv - hl);
    block[INV_SPAN_V] = w0 * sat[a + 20] + w1 * sat[a + 21] + w2 * sat[b + 20] + w3 * sat[b + 21];
    block[INV_SPAN_L] = w0 * sat[a + 22] + w1 * sat[a + 23] + w2 * sat[b + 22] + w3 * sat[b + 23];
  }

  /** Fills MU_L ... SIGMA of a block whose pressure is set. */
  setTransport(block: Float64Array): void {
    const table = this.transport;
    const a = (block[ROW] * TRANSPORT_SIZE) | 0;
    const b = (a + TRANSPORT_SIZE) | 0;
    const w0 = block[W0];
    const w1 = block[W1];
    const w2 = block[W2];
    const w3 = block[W3];
    block[MU_L] = w0 * table[a] + w1 * table[a + 1] + w2 * table[b] + w3 * table[b + 1];
    block[MU_V] = w0 * table[a + 2] + w1 * table[a + 3] + w2 * table[b + 2] + w3 * table[b + 3];
    block[K_L] = w0 * table[a + 4] + w1 * table[a + 5] + w2 * table[b + 4] + w3 * table[b + 5];
    block[K_V] = w0 * table[a + 6] + w1 * table[a + 7] + w2 * table[b + 6] + w3 * table[b + 7];
    block[SIGMA] = w0 * table[a + 8] + w1 * table[a + 9] + w2 * table[b + 8] + w3 * table[b + 9];
  }

  /**
   * T, rho, q, (dT/dh)_p and s at the block's pressure and h (J/kg); see OUT_T ... OUT_S.
   * In the dome: homogeneous density; temperature linear in q between bubble and dew, but for a blend by its components,
   * which is in phase equilibrium (its q is the share of enthalpy; the quality by mass differs by up to 0.03).
   * Throws `range` beyond the temperature limits, `bad-input` for NaN.
   */
  state(block: Float64Array, h: number, out: Float64Array): void {
    const hl = block[H_L];
    const hv = block[H_V];
    const q = (h - hl) * block[INV_LATENT];
    out[OUT_Q] = q;
    let grid: Float64Array;
    let invSpan: number;
    let eta: number;
    if (h > hv) {
      grid = this.vapour;
      invSpan = block[INV_SPAN_V];
      eta = (h - hv) * invSpan;
    } else if (h < hl) {
      grid = this.liquid;
      invSpan = block[INV_SPAN_L];
      eta = (h - hl) * invSpan;
    } else {
      if (Number.isNaN(q)) throw notANumber(this.id, 'enthalpy', h);
      const glide = block[T_DEW] - block[T_BUB];
      out[OUT_T] = block[T_BUB] + q * glide;
      out[OUT_RHO] = 1 / ((1 - q) / block[RHO_L] + q / block[RHO_V]);
      out[OUT_DTDH] = glide * block[INV_LATENT];
      out[OUT_S] = block[S_L] + q * (block[S_V] - block[S_L]);
      if (this.dome.length > 0) bend(this.dome, block, q, out);
      return;
    }
    if (eta > 1) throw outOfRange(this, block, h);

    const c = this.c;
    const columns = c[C_COLUMNS] | 0;
    const squeeze = 1 / (1 + c[C_STRETCH] * eta);
    const index = c[C_COLUMN_RATE] * eta * squeeze;
    let column = index | 0;
    const last = c[C_LAST_COLUMN] | 0;
    if (column > last) column = last;
    const t = index - column;
    const t2 = t * t;
    const v3 = t2 * (t - 1);
    const v1 = v3 - t2 + t;
    const v2 = t2 * (3 - 2 * t);
    const v0 = 1 - v2;
    const d2 = 6 * (t - t2);
    const d3 = 3 * t2 - 2 * t;
    const d1 = 1 - 2 * t + d3;

    const w0 = block[W0];
    const w1 = block[W1];
    const w2 = block[W2];
    const w3 = block[W3];
    const a = (((block[ROW] | 0) * columns + column) * NODE_SIZE) | 0;
    const b = (a + columns * NODE_SIZE) | 0;

    // Along the pressure first: value and column slope of each field at both ends of the cell.
    const tA = w0 * grid[a] + w1 * grid[a + 1] + w2 * grid[b] + w3 * grid[b + 1];
    const tA1 = w0 * grid[a + 2] + w1 * grid[a + 3] + w2 * grid[b + 2] + w3 * grid[b + 3];
    const pvA = w0 * grid[a + 4] + w1 * grid[a + 5] + w2 * grid[b + 4] + w3 * grid[b + 5];
    const pvA1 = w0 * grid[a + 6] + w1 * grid[a + 7] + w2 * grid[b + 6] + w3 * grid[b + 7];
    const sA = w0 * grid[a + 8] + w1 * grid[a + 9] + w2 * grid[b + 8] + w3 * grid[b + 9];
    const sA1 = w0 * grid[a + 10] + w1 * grid[a + 11] + w2 * grid[b + 10] + w3 * grid[b + 11];
    const tB = w0 * grid[a + 12] + w1 * grid[a + 13] + w2 * grid[b + 12] + w3 * grid[b + 13];
    const tB1 = w0 * grid[a + 14] + w1 * grid[a + 15] + w2 * grid[b + 14] + w3 * grid[b + 15];
    const pvB = w0 * grid[a + 16] + w1 * grid[a + 17] + w2 * grid[b + 16] + w3 * grid[b + 17];
    const pvB1 = w0 * grid[a + 18] + w1 * grid[a + 19] + w2 * grid[b + 18] + w3 * grid[b + 19];
    const sB = w0 * grid[a + 20] + w1 * grid[a + 21] + w2 * grid[b + 20] + w3 * grid[b + 21];
    const sB1 = w0 * grid[a + 22] + w1 * grid[a + 23] + w2 * grid[b + 22] + w3 * grid[b + 23];

    const temperature = v0 * tA + v1 * tA1 + v2 * tB + v3 * tB1;
    if (temperature < c[C_FLOOR]) throw frozen(this, block, temperature);
    out[OUT_T] = temperature;
    out[OUT_RHO] = block[P] / (v0 * pvA + v1 * pvA1 + v2 * pvB + v3 * pvB1);
    out[OUT_DTDH] = (d2 * (tB - tA) + d1 * tA1 + d3 * tB1) * c[C_COLUMN_RATE] * squeeze * squeeze * invSpan;
    out[OUT_S] = v0 * sA + v1 * sA1 + v2 * sB + v3 * sB1;
  }

  /** Enthalpy of vapour at the block's pressure and T >= T_dew. Throws `range` outside [T_dew, tMax]. */
  hVapour(block: Float64Array, temperature: number): number {
    if (!(temperature >= block[T_DEW] - EDGE && temperature <= this.tMax))
      throw wrongSide(this, block, temperature, 'vapour');
    return block[H_V] + this.etaOf(this.vapour, block, NODE_T, temperature) / block[INV_SPAN_V];
  }

  /** Enthalpy of liquid at the block's pressure and T <= T_bubble. Throws `range` outside [tMin, T_bubble]. */
  hLiquid(block: Float64Array, temperature: number): number {
    if (!(temperature <= block[T_BUB] + EDGE && temperature >= this.tMin))
      throw wrongSide(this, block, temperature, 'liquid');
    return block[H_L] + this.etaOf(this.liquid, block, NODE_T, temperature) / block[INV_SPAN_L];
  }

  /** Enthalpy at the block's pressure and entropy s, J/(kg K). Throws `range` beyond the temperature limits. */
  hOfS(block: Float64Array, s: number): number {
    const sl = block[S_L];
    const sv = block[S_V];
    if (s > sv) return block[H_V] + this.etaOf(this.vapour, block, NODE_S, s) / block[INV_SPAN_V];
    if (s < sl) {
      const h = block[H_L] + this.etaOf(this.liquid, block, NODE_S, s) / block[INV_SPAN_L];
      if (h < this.coldest(block)) throw frozen(this, block, this.tMin);
      return h;
    }
    if (Number.isNaN(s)) throw notANumber(this.id, 'entropy', s);
    if (this.dome.length > 0) return wetEnthalpy(this.dome, block, s);
    return block[H_L] + ((s - sl) / (sv - sl)) * (block[H_V] - block[H_L]);
  }

  /** Dew temperature, K. Throws `table-end`. */
  tDew(p: number): number {
    return this.saturated(p, SAT_T_DEW);
  }

  /** Bubble temperature, K. Throws `table-end`. */
  tBubble(p: number): number {
    return this.saturated(p, SAT_T_BUB);
  }

  /** Dew pressure, Pa: the exact inverse of `tDew`. Throws `table-end`. */
  pDew(temperature: number): number {
    return this.pressureAt(temperature, SAT_T_DEW);
  }

  /** Bubble pressure, Pa: the exact inverse of `tBubble`. Throws `table-end`. */
  pBubble(temperature: number): number {
    return this.pressureAt(temperature, SAT_T_BUB);
  }

  private saturated(p: number, field: number): number {
    const c = this.c;
    if (!(p >= c[C_P_MIN] && p <= c[C_P_MAX])) throw tableEnd(this, p);
    const u = (c[C_X_FIRST] - Math.sqrt(c[C_LN_CRITICAL] - ln(p))) * c[C_INV_DX];
    const row = Math.min(u | 0, c[C_LAST_ROW] | 0);
    const k = row * SAT_SIZE + field;
    const sat = this.sat;
    return hermite(sat[k], sat[k + 1], sat[k + SAT_SIZE], sat[k + SAT_SIZE + 1], u - row);
  }

  private pressureAt(temperature: number, field: number): number {
    const { c, sat } = this;
    const last = c[C_LAST_ROW] | 0;
    const place = field;
    if (!(temperature >= sat[place] && temperature <= sat[(last + 1) * SAT_SIZE + place])) {
      throw beyondSaturation(this.id, temperature, sat[place], sat[(last + 1) * SAT_SIZE + place]);
    }
    let low = 0;
    let high = last;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (sat[middle * SAT_SIZE + place] <= temperature) low = middle;
      else high = middle - 1;
    }
    const k = low * SAT_SIZE + place;
    const t = invertHermite(sat[k], sat[k + 1], sat[k + SAT_SIZE], sat[k + SAT_SIZE + 1], temperature);
    const x = c[C_X_FIRST] - (low + t) / c[C_INV_DX];
    const p = exp(c[C_LN_CRITICAL] - x * x);
    return p < c[C_P_MIN] ? c[C_P_MIN] : Math.min(p, c[C_P_MAX]);
  }

  /** Enthalpy of the coldest liquid at the block's pressure, where that is not simply the end of the grid. */
  private coldest(block: Float64Array): number {
    return this.c[C_FLOOR] > 0 ? this.hLiquid(block, this.tMin) : -Infinity;
  }

  /** Normalised enthalpy at which a field (monotonic along an isobar) takes a value. */
  private etaOf(grid: Float64Array, block: Float64Array, field: number, value: number): number {
    const c = this.c;
    const sign = grid === this.vapour ? 1 : -1;
    const last = c[C_LAST_COLUMN] | 0;
    const end = cornerValue(grid, c, block, last + 1, field);
    if (!(sign * (value - end) <= 1e-12 * Math.abs(end)))
      throw beyondSide(this.id, block[P], field === NODE_S ? 'entropy' : 'temperature', value, end);
    let low = 0;
    let high = last;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (sign * (value - cornerValue(grid, c, block, middle, field)) >= 0) low = middle;
      else high = middle - 1;
    }
    const t = invertHermite(
      cornerValue(grid, c, block, low, field),
      cornerValue(grid, c, block, low, field + 2),
      cornerValue(grid, c, block, low + 1, field),
      cornerValue(grid, c, block, low + 1, field + 2),
      value,
    );
    const index = low + t;
    return index / (c[C_COLUMN_RATE] - c[C_STRETCH] * index);
  }
}

/** A field at a column, on the block's isobar. */
function cornerValue(grid: Float64Array, c: Float64Array, block: Float64Array, column: number, field: number): number {
  const a = (block[ROW] * c[C_COLUMNS] + column) * NODE_SIZE + field;
  const b = a + c[C_COLUMNS] * NODE_SIZE;
  return block[W0] * grid[a] + block[W1] * grid[a + 1] + block[W2] * grid[b] + block[W3] * grid[b + 1];
}
