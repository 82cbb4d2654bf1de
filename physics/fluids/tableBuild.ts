import { exp, ln, pow } from '../math/elementary';
import { domeRows } from './blend/domeRows';
import { carriedOn } from './blend/equilibrium';
import type { FluidEos, Saturation } from './fluidEos';
import { EOS } from './helmholtz';
import { DOME_SIZE, NODE, NODE_SIZE, SAT, SAT_SIZE, TRANSPORT_SIZE } from './layout';
import type { RefrigerantData } from './refrigerantData';

/**
 * Columns of both single-phase sides: eta is 0 on the saturation line and 1 at the far temperature; the columns lie
 * evenly in (1 + k) eta/(1 + k eta), that is (1 + k)^2 times as dense beside the saturation line as at the far end.
 */
export interface TableSpec {
  readonly rows: number;
  readonly columns: number;
  readonly stretch: number;
}

/** Everything `FluidTable` looks things up in. */
export interface TableData {
  readonly data: RefrigerantData;
  readonly spec: TableSpec;
  readonly pMin: number;
  readonly pMax: number;
  /** Rows lie evenly in x = sqrt(ln pCritical - ln p), from xFirst downwards: dense where the dome closes. */
  readonly xFirst: number;
  readonly dx: number;
  readonly saturation: Float64Array;
  readonly transport: Float64Array;
  readonly vapour: Float64Array;
  readonly liquid: Float64Array;
  /** What a blend's dome adds to straight lines (tableDome.ts); empty for other fluids. */
  readonly dome: Float64Array;
  readonly tTop: number;
  /** Coldest liquid that look-ups accept, K. */
  readonly tBottom: number;
}

/**
 * Saturation temperature at which the tables begin, K. The equation of R-410A is published from 200 K; the last 7 K are
 * its smooth continuation, so that a pumped-down machine meets its own trip and not the end of a table.
 */
const T_FIRST = 193.15;
/** The far edge of the subcooled side lies this far below the tables' beginning, K. */
const BELOW_FIRST = 10;
/** Highest temperature of the vapour side, K, where the equation itself allows more. */
const T_HIGHEST = 650;
const TOP_OF_CRITICAL = 0.985;

export const STANDARD_SPEC: TableSpec = { rows: 56, columns: 27, stretch: 2 };

/** Position eta of a column, and the slope of eta along the column index. */
function columnEta({ columns, stretch }: TableSpec, j: number): { eta: number; slope: number } {
  const share = j / (columns - 1);
  const denominator = 1 + stretch * (1 - share);
  return { eta: share / denominator, slope: (1 + stretch) / (denominator * denominator * (columns - 1)) };
}

interface Row {
  p: number;
  /** dp along the row index */
  pSlope: number;
  sat: Saturation;
}

/** Builds the tables of a fluid from its equation of state. */
export function buildTable(fluid: FluidEos, spec: TableSpec = STANDARD_SPEC): TableData {
  const { data } = fluid;
  const tFirst = Math.max(T_FIRST, data.tTriple ?? 0);
  const tFar = tFirst - BELOW_FIRST;
  const pMin = fluid.saturationAtBubble(tFirst).p;
  const pMax = TOP_OF_CRITICAL * data.pCritical;
  const lnCritical = ln(data.pCritical);
  const xFirst = Math.sqrt(lnCritical - ln(pMin));
  const dx = (xFirst - Math.sqrt(lnCritical - ln(pMax))) / (spec.rows - 1);
  const rows = buildRows(fluid, spec.rows, lnCritical, xFirst, dx);

  const saturation = new Float64Array(spec.rows * SAT_SIZE);
  const tTop = Math.min(data.validRange.tMax, T_HIGHEST);
  rows.forEach((row, i) => {
    saturationRow(fluid, row, tTop, tFar, saturation.subarray(i * SAT_SIZE));
  });
  fillSlopes(saturation, spec.rows, SAT_SIZE, [SAT.INV_CP_L, SAT.INV_CP_V]);
  const vapour = buildSide(fluid, rows, saturation, spec, true);
  const liquid = buildSide(fluid, rows, saturation, spec, false);
  const transport = buildTransport(data, rows);
  const dome = buildDome(fluid, rows);
  return {
    data,
    spec,
    pMin,
    pMax,
    xFirst,
    dx,
    saturation,
    transport,
    vapour,
    liquid,
    dome,
    tTop,
    tBottom: data.tTriple ?? tFar,
  };
}

function buildRows(fluid: FluidEos, count: number, lnCritical: number, xFirst: number, dx: number): Row[] {
  const rows: Row[] = [];
  let near: Saturation | undefined;
  for (let i = 0; i < count; i++) {
    const x = xFirst - i * dx;
    const p = exp(lnCritical - x * x);
    const sat = fluid.saturationAtPressure(p, near);
    rows.push({ p, pSlope: 2 * x * dx * p, sat });
    near = extrapolate(rows);
  }
  return rows;
}

/** Start value for the next row: each quantity carried on along the last two rows. */
function extrapolate(rows: readonly Row[]): Saturation | undefined {
  if (rows.length < 2) return undefined;
  const a = rows[rows.length - 2].sat;
  const b = rows[rows.length - 1].sat;
  return {
    ...b,
    tBubble: 2 * b.tBubble - a.tBubble,
    tDew: 2 * b.tDew - a.tDew,
    rhoLiquid: 2 * b.rhoLiquid - a.rhoLiquid,
    rhoVapour: (b.rhoVapour * b.rhoVapour) / a.rhoVapour,
    pairs:
      a.pairs && b.pairs
        ? { bubble: carriedOn(a.pairs.bubble, b.pairs.bubble), dew: carriedOn(a.pairs.dew, b.pairs.dew) }
        : undefined,
  };
}

/** Writes value and slope of every saturation field of one row. */
function saturationRow(fluid: FluidEos, row: Row, tTop: number, tFar: number, out: Float64Array): void {
  const { p, pSlope, sat } = row;
  const o = fluid.eos.out;
  const edge = (side: 0 | 1, t: number, rho: number, tSlope: number): void => {
    fluid.eos.evaluate(t, rho);
    const rhoT = -o[EOS.P_T] / o[EOS.P_RHO];
    const hP = 1 / rho + (t * rhoT) / (rho * rho);
    const rhoSlope = rhoT * tSlope + 1 / o[EOS.P_RHO];
    const hSlope = o[EOS.CP] * tSlope + hP;
    put(out, SAT.T_BUB + 2 * side, t, tSlope * pSlope);
    put(out, SAT.H_L + 2 * side, o[EOS.H] + fluid.hOffset, hSlope * pSlope);
    put(out, SAT.PV_L + 2 * side, p / rho, (1 / rho - (p * rhoSlope) / (rho * rho)) * pSlope);
    put(out, SAT.S_L + 2 * side, o[EOS.S] + fluid.sOffset, ((hSlope - 1 / rho) / t) * pSlope);
    put(out, SAT.INV_CP_L + 2 * side, 1 / o[EOS.CP], 0);
  };
  edge(0, sat.tBubble, sat.rhoLiquid, sat.tBubbleSlope);
  edge(1, sat.tDew, sat.rhoVapour, sat.tDewSlope);

  // Far edges of the two sides: what is kept is 1/(h_far - h_near), which the look-ups multiply with.
  const far = (field: number, near: number, t: number, start: number): void => {
    const rho = fluid.density(t, p, start);
    fluid.eos.evaluate(t, rho);
    const rhoT = -o[EOS.P_T] / o[EOS.P_RHO];
    const inverse = 1 / (o[EOS.H] + fluid.hOffset - out[near]);
    const slope = (1 / rho + (t * rhoT) / (rho * rho)) * pSlope - out[near + 1];
    put(out, field, inverse, -slope * inverse * inverse);
  };
  const gas = (p * fluid.data.molarMass) / (fluid.data.gasConstant * tTop);
  far(SAT.INV_SPAN_V, SAT.H_V, tTop, gas);
  far(SAT.INV_SPAN_L, SAT.H_L, tFar, fluid.massDensity(fluid.data.ancillaries.rhoL, tFar));
}

function put(out: Float64Array, field: number, value: number, slope: number): void {
  out[field] = value;
  out[field + 1] = slope;
}

/**
 * Nodes of one single-phase side, marched outwards from the saturation line. First derivatives are exact (from the
 * equation of state), the mixed one is a fourth-order difference along the rows.
 */
function buildSide(fluid: FluidEos, rows: readonly Row[], sat: Float64Array, spec: TableSpec, vapour: boolean) {
  const stride = spec.columns * NODE_SIZE;
  const grid = new Float64Array(rows.length * stride);
  const o = fluid.eos.out;
  const state = { temperature: 0, rho: 0 };
  const columns = Array.from({ length: spec.columns }, (_, j) => columnEta(spec, j));
  const nearField = vapour ? SAT.H_V : SAT.H_L;
  const spanField = vapour ? SAT.INV_SPAN_V : SAT.INV_SPAN_L;
  rows.forEach(({ p, pSlope, sat: edge }, i) => {
    const s = i * SAT_SIZE;
    const h0 = sat[s + nearField];
    const h0Slope = sat[s + nearField + 1];
    const span = 1 / sat[s + spanField];
    const spanSlope = -sat[s + spanField + 1] * span * span;
    columns.forEach(({ eta, slope }, j) => {
      const k = i * stride + j * NODE_SIZE;
      if (j === 0) {
        state.temperature = vapour ? edge.tDew : edge.tBubble;
        state.rho = vapour ? edge.rhoVapour : edge.rhoLiquid;
      } else {
        predict(grid, k, stride, i, p, span * (eta - columns[j - 1].eta), state, o);
        fluid.solvePressureEnthalpy(p, h0 + eta * span, state);
      }
      const { temperature: t, rho } = state;
      fluid.eos.evaluate(t, rho);
      const rhoT = -o[EOS.P_T] / o[EOS.P_RHO];
      const tH = 1 / o[EOS.CP];
      const tP = -(1 / rho + (t * rhoT) / (rho * rho)) * tH;
      const rhoP = 1 / o[EOS.P_RHO] + rhoT * tP;
      const pvH = (-p / (rho * rho)) * rhoT * tH;
      const pvP = 1 / rho - (p * rhoP) / (rho * rho);
      const alongRow = h0Slope + eta * spanSlope;
      const alongColumn = span * slope;
      node(grid, k + NODE.T, t, tP * pSlope + tH * alongRow, tH * alongColumn);
      node(grid, k + NODE.PV, p / rho, pvP * pSlope + pvH * alongRow, pvH * alongColumn);
      node(grid, k + NODE.S, o[EOS.S] + fluid.sOffset, (-pSlope / rho + alongRow) / t, alongColumn / t);
    });
  });
  for (let k = 0; k < stride; k += 4) difference(grid, rows.length, stride, k + 2, k + 3);
  return grid;
}

function node(grid: Float64Array, k: number, value: number, rowSlope: number, columnSlope: number): void {
  grid[k] = value;
  grid[k + 1] = rowSlope;
  grid[k + 2] = columnSlope;
}

/**
 * Start value of a node: the row below carried on along its slope, and corrected by how well that did one column
 * nearer; in the first row, a step along the isobar from that column.
 */
function predict(
  grid: Float64Array,
  k: number,
  stride: number,
  row: number,
  p: number,
  dh: number,
  state: { temperature: number; rho: number },
  o: Float64Array,
): void {
  if (row === 0) {
    const rhoT = -o[EOS.P_T] / o[EOS.P_RHO];
    const dt = dh / o[EOS.CP];
    state.temperature += dt;
    state.rho = Math.max(state.rho + rhoT * dt, 0.7 * state.rho);
    return;
  }
  const carried = (place: number): number => {
    const below = place - stride;
    const near = place - NODE_SIZE;
    return grid[below] + grid[below + 1] + grid[near] - grid[near - stride] - grid[near - stride + 1];
  };
  state.temperature = carried(k + NODE.T);
  const pv = carried(k + NODE.PV);
  state.rho = p / pv;
}

function fillSlopes(table: Float64Array, rows: number, stride: number, places: readonly number[]): void {
  for (const place of places) difference(table, rows, stride, place, place + 1);
}

/** Fourth-order difference along the rows, one-sided at the ends. */
function difference(table: Float64Array, rows: number, stride: number, from: number, to: number): void {
  const f = (i: number): number => table[i * stride + from];
  for (let i = 0; i < rows; i++) {
    let slope: number;
    if (i >= 2 && i < rows - 2) slope = (f(i - 2) - f(i + 2) + 8 * (f(i + 1) - f(i - 1))) / 12;
    else if (i === 0) slope = (-25 * f(0) + 48 * f(1) - 36 * f(2) + 16 * f(3) - 3 * f(4)) / 12;
    else if (i === 1) slope = (-3 * f(0) - 10 * f(1) + 18 * f(2) - 6 * f(3) + f(4)) / 12;
    else {
      const n = rows - 1;
      slope =
        i === n
          ? (25 * f(n) - 48 * f(n - 1) + 36 * f(n - 2) - 16 * f(n - 3) + 3 * f(n - 4)) / 12
          : (3 * f(n) + 10 * f(n - 1) - 18 * f(n - 2) + 6 * f(n - 3) - f(n - 4)) / 12;
    }
    table[i * stride + to] = slope;
  }
}

function buildDome({ blend }: FluidEos, rows: readonly Row[]): Float64Array {
  if (blend === null) return new Float64Array(0);
  const dome = domeRows(
    blend,
    rows.map(({ sat }) => sat),
  );
  fillSlopes(
    dome,
    rows.length,
    DOME_SIZE,
    Array.from({ length: DOME_SIZE / 2 }, (_, i) => 2 * i),
  );
  return dome;
}

function buildTransport(data: RefrigerantData, rows: readonly Row[]): Float64Array {
  const stride = TRANSPORT_SIZE;
  const table = new Float64Array(rows.length * stride);
  const { muLiquid, muVapour, kLiquid, kVapour, sigma } = data.transport;
  rows.forEach(({ sat }, i) => {
    const k = i * stride;
    const liquid = Math.sqrt(1 - sat.tBubble / data.tCritical);
    const vapour = Math.sqrt(1 - sat.tDew / data.tCritical);
    table[k] = exp(polynomial(muLiquid, liquid));
    table[k + 2] = exp(polynomial(muVapour, vapour));
    table[k + 4] = exp(polynomial(kLiquid, liquid));
    table[k + 6] = exp(polynomial(kVapour, vapour));
    for (const [a, n] of sigma.terms) table[k + 8] += a * pow(1 - sat.tBubble / sigma.tCritical, n);
  });
  fillSlopes(table, rows.length, stride, [0, 2, 4, 6, 8]);
  return table;
}

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) sum = sum * x + coefficients[i];
  return sum;
}
