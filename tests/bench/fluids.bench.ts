/**
 * Look-ups beside the equation of state, with every fluid loaded (a second one is what slows polymorphic code down).
 * Targets: 70 ns with the pressure block at hand, 150 ns for pressure and state, 30 ms to build a fluid, 60 ms a blend.
 */
import { bench, describe } from 'vitest';
import * as F from '../../physics/fluids/fluid';
import { fluidPoint } from '../../physics/fluids/point';
import { buildTable } from '../../physics/fluids/tableBuild';
import { stream } from '../unit/fluids/reference';

// Few enough that a slice ends before the scheduler takes the core away.
const COUNT = 4_000;
const LEVELS = 16;
// Local copies, as in the table itself: the runner's module wrapper would otherwise be what is measured.
const { OUT_T, OUT_RHO } = F;

interface Load {
  readonly id: string;
  readonly table: F.FluidTable;
  readonly blocks: readonly Float64Array[];
  readonly p: Float64Array;
  readonly h: Float64Array;
  readonly level: Int32Array;
  readonly levelH: Float64Array;
}

/** States as a solver meets them: 40 % vapour, 30 % liquid, 30 % in the dome; scattered, and in runs on few pressures. */
function load(id: string): Load {
  const table = F.fluidTable(id);
  const random = stream(31);
  const enthalpy = (block: Float64Array): number => {
    const kind = random();
    if (kind < 0.4) return block[F.H_V] + 80e3 * random();
    if (kind < 0.7) return block[F.H_L] - 50e3 * random();
    return block[F.H_L] + (block[F.H_V] - block[F.H_L]) * random();
  };
  const block = new Float64Array(F.BLOCK_SIZE);
  const p = Float64Array.from({ length: COUNT }, () => 2e5 * 16 ** random());
  const h = p.map((each) => {
    table.setPressure(each, block);
    return enthalpy(block);
  });
  const blocks = Array.from({ length: LEVELS }, (_, i) => {
    const each = new Float64Array(F.BLOCK_SIZE);
    table.setPressure(3e5 * 10 ** (i / LEVELS), each);
    return each;
  });
  const level = Int32Array.from({ length: COUNT }, (_, i) => (i >> 4) % LEVELS);
  const levelH = Float64Array.from(level, (i) => enthalpy(blocks[i]));
  return { id, table, blocks, p, h, level, levelH };
}

for (const id of F.REFRIGERANTS) F.fluidTable(id);
const loads = ['R-32', 'R-410A', 'R-1234yf', 'R-448A'].map(load);
const out = new Float64Array(F.OUT_SIZE);
const scratch = new Float64Array(F.BLOCK_SIZE);

function cached({ table, blocks, level, levelH }: Load): number {
  let sum = 0;
  for (let i = 0; i < COUNT; i++) {
    table.state(blocks[level[i]], levelH[i], out);
    sum += out[OUT_T] + out[OUT_RHO];
  }
  return sum;
}

function scattered({ table, p, h }: Load): number {
  let sum = 0;
  for (let i = 0; i < COUNT; i++) {
    table.setPressure(p[i], scratch);
    table.state(scratch, h[i], out);
    sum += out[OUT_T] + out[OUT_RHO];
  }
  return sum;
}

/** One evaluation at given T and rho: the floor of any method that uses the equation itself. */
function evaluation({ id }: Load): number {
  const { eos } = F.fluidEos(id);
  let sum = 0;
  for (let i = 0; i < COUNT; i++) sum += eos.evaluate(300 + i * 1e-3, 20)[0];
  return sum;
}

/** The same question put to the equation: state from p and h. */
function direct({ id, p, h }: Load): number {
  const fluid = F.fluidEos(id);
  let sum = 0;
  for (let i = 0; i < COUNT / 100; i++) sum += fluidPoint(fluid, { p: p[i], h: h[i] }).t;
  return sum;
}

/** Nanoseconds each, best of a few rounds: the machine's other work only ever adds. */
function nanoseconds(run: (load: Load) => number, load: Load, count: number): number {
  let best = Infinity;
  for (let round = 0; round < 150; round++) {
    const start = performance.now();
    if (!Number.isFinite(run(load))) throw new Error('a look-up failed');
    best = Math.min(best, ((performance.now() - start) / count) * 1e6);
  }
  return best;
}

for (const each of loads) for (const run of [cached, scattered]) nanoseconds(run, each, COUNT);
for (const each of loads) {
  const ns = {
    cached: nanoseconds(cached, each, COUNT),
    scattered: nanoseconds(scattered, each, COUNT),
    evaluation: nanoseconds(evaluation, each, COUNT),
    direct: nanoseconds(direct, each, COUNT / 100),
  };
  const times = (slow: number) => `${(slow / ns.scattered).toFixed(1)} x scattered`;
  console.log(
    [
      `${each.id}, ns each, every fluid loaded`,
      `  state, pressure block cached   ${ns.cached.toFixed(0)}  (target 70)`,
      `  pressure and state, scattered  ${ns.scattered.toFixed(0)}  (target 150)`,
      `  equation, one evaluation       ${ns.evaluation.toFixed(0)}  ${times(ns.evaluation)}`,
      `  equation, state from p and h   ${ns.direct.toFixed(0)}  ${times(ns.direct)}`,
    ].join('\n'),
  );
}

describe.each(loads)('$id, 4,000 look-ups', (each) => {
  bench('state, pressure block cached', () => void cached(each));
  bench('pressure and state, scattered', () => void scattered(each));
  bench('equation, one evaluation', () => void evaluation(each));
});

describe('building tables, one fluid', () => {
  for (const id of F.REFRIGERANTS) bench(id, () => void buildTable(F.fluidEos(id)), { iterations: 5 });
});
