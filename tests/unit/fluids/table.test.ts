import { describe, expect, test } from 'vitest';
import { PhysicsError } from '../../../physics/errors';
import * as F from '../../../physics/fluids/fluid';
import type { FluidEos } from '../../../physics/fluids/fluidEos';
import { fluidPoint } from '../../../physics/fluids/point';
import { BLENDS, FLUIDS, reference, SINGLE, saturated as saturatedRows, stream, Worst } from './reference';

const block = new Float64Array(F.BLOCK_SIZE);
const out = new Float64Array(F.OUT_SIZE);

describe.each(FLUIDS)('%s', (id) => {
  const table = F.fluidTable(id);
  const fluid = F.fluidEos(id);

  test('tables reach from -80 °C or the triple point to 0.985 of the critical pressure, up to the equation or 650 K', () => {
    expect(table.tBubble(table.pMin)).toBeCloseTo(id === 'R-744' ? 216.592 : 193.15, 6);
    expect(table.pMax / table.pCritical).toBeCloseTo(0.985, 9);
    expect(table.tMax).toBe(Math.min(fluid.data.validRange.tMax, 650));
  });

  // Targets of the design: 0.05 % on p, 0.1 % on rho, 0.1 K, 150 J/kg. Held here a hundred times tighter, since that is
  // what the tables do; worst seen 1e-8, 2e-4 %, 8e-4 K, 0.05 J/kg; entropy 0.03 J/(kg K) (cold thin R-290).
  test('agrees with the equation of state from -45 °C to 0.9 of the critical pressure', () => {
    const worst = compare(fluid, table, table.pBubble(228.15), 0.9 * table.pCritical, 300, 11);
    expect(worst.over({ pSat: 1e-7, rhoSat: 1e-5, hSat: 0.5, sSat: 1e-3, t: 1e-3, rho: 2e-5, s: 0.05 })).toEqual([]);
    expect(worst.over({ hOfT: 5, hOfS: 10, dTdh: 1e-3, cpSat: 1e-4 })).toEqual([]);
  });

  test('stays close to the equation of state between there and the ends of the tables', () => {
    const top = compare(fluid, table, 0.9 * table.pCritical, table.pMax, 100, 12);
    expect(top.over({ pSat: 1e-6, rhoSat: 1e-4, hSat: 5, t: 0.02, rho: 1e-3, dTdh: 0.05, cpSat: 0.01 })).toEqual([]);
    const first = Math.max(table.pMin, fluid.ancillaryBubble(fluid.data.validRange.tMin) * 1.001);
    const bottom = compare(fluid, table, first, table.pBubble(228.15), 100, 13);
    expect(bottom.over({ pSat: 1e-7, rhoSat: 1e-4, hSat: 0.5, t: 5e-3, rho: 1e-3, dTdh: 5e-3 })).toEqual([]);
  });

  test('every row of the reference tables comes out within the design tolerances', () => {
    const worst = new Worst();
    const rows = reference(id);
    const { bubble, dew } = saturatedRows(id);
    for (const row of bubble) {
      worst.note('p', table.pBubble(row.T) / row.p_bubble - 1);
      table.setPressure(row.p_bubble, block);
      worst.note('t', block[F.T_BUB] - row.T);
      worst.note('rho', block[F.RHO_L] / row.rho_liq - 1);
      worst.note('h', block[F.H_L] - row.h_liq);
      worst.note('s', block[F.S_L] - row.s_liq);
      worst.note('cp', block[F.CP_L] / row.cp_liq - 1);
    }
    for (const row of dew) {
      worst.note('p', table.pDew(row.T) / row.p_dew - 1);
      table.setPressure(row.p_dew, block);
      worst.note('t', block[F.T_DEW] - row.T);
      worst.note('rho', block[F.RHO_V] / row.rho_vap - 1);
      worst.note('h', block[F.H_V] - row.h_vap);
      worst.note('s', block[F.S_V] - row.s_vap);
      worst.note('cp', block[F.CP_V] / row.cp_vap - 1);
    }
    for (const row of [...rows.superheated, ...rows.subcooled]) {
      table.setPressure(row.p, block);
      table.state(block, row.h, out);
      worst.note('t', out[F.OUT_T] - row.T);
      worst.note('rho', out[F.OUT_RHO] / row.rho - 1);
      worst.note('s', out[F.OUT_S] - row.s);
      worst.note('cp', 1 / out[F.OUT_DTDH] / row.cp - 1);
      const h = row.T > block[F.T_DEW] ? table.hVapour(block, row.T) : table.hLiquid(block, row.T);
      worst.note('h', h - row.h);
    }
    expect(worst.over({ p: 5e-4, t: 0.1, rho: 1e-3, h: 150, s: 0.5, cp: 0.01 })).toEqual([]);
  });

  test('transport stays sensible out to the ends of the tables', () => {
    const at = (p: number) => {
      table.setPressure(p, block);
      table.setTransport(block);
      return [...block.slice(F.MU_L, F.SIGMA + 1)];
    };
    let before = at(table.pMin);
    for (let i = 1; i <= 100; i++) {
      const now = at(Math.min(table.pMax, table.pMin * (table.pMax / table.pMin) ** (i / 100)));
      const [muL, muV, kL, kV, sigma] = now;
      expect(muL).toBeLessThan(before[0]);
      expect(muV).toBeGreaterThan(before[1]);
      expect(sigma).toBeLessThan(before[4]);
      expect(muL).toBeGreaterThan(muV);
      expect(Math.min(kL, kV, sigma)).toBeGreaterThan(0);
      before = now;
    }
  });

  test('temperature, density and entropy are continuous across both edges of the dome', () => {
    const random = stream(14);
    for (let i = 0; i < 200; i++) {
      table.setPressure(table.pMin + (table.pMax - table.pMin) * random() ** 3, block);
      for (const edge of [block[F.H_L], block[F.H_V]]) {
        const step = edge * 1e-12;
        table.state(block, edge - step, out);
        const below = [...out];
        table.state(block, edge + step, out);
        expect(Math.abs(out[F.OUT_T] - below[F.OUT_T])).toBeLessThan(1e-9);
        // Steep at the bubble line of a thin vapour: 2e-2 of the density per J/kg.
        expect(Math.abs(out[F.OUT_RHO] / below[F.OUT_RHO] - 1)).toBeLessThan(1e-7);
        expect(Math.abs(out[F.OUT_S] - below[F.OUT_S])).toBeLessThan(1e-7);
      }
    }
  });

  test('the slope dT/dh is that of the temperature itself, everywhere', () => {
    const random = stream(15);
    for (let i = 0; i < 500; i++) {
      table.setPressure(table.pMin * (table.pMax / table.pMin) ** random(), block);
      const low = 0.99 * table.hLiquid(block, table.tMin) + 0.01 * block[F.H_L];
      const high = block[F.H_V] + 0.99 / block[F.INV_SPAN_V];
      const h = low + (high - low) * random();
      table.state(block, h, out);
      const slope = out[F.OUT_DTDH];
      const at = (x: number) => {
        table.state(block, x, out);
        return out[F.OUT_T];
      };
      // A kink (edge of the dome) inside the stencil is not a slope.
      if (Math.min(Math.abs(h - block[F.H_L]), Math.abs(h - block[F.H_V])) < 20) continue;
      const difference = (at(h + 5) - at(h - 5)) / 10;
      expect(Math.abs(slope - difference)).toBeLessThan(1e-9 + 1e-4 * Math.abs(difference));
    }
  });

  test('quality tells the side: below 0 subcooled, above 1 superheated', () => {
    table.setPressure(1e6, block);
    table.state(block, table.hLiquid(block, block[F.T_BUB] - 10), out);
    expect(out[F.OUT_Q]).toBeLessThan(0);
    table.state(block, table.hVapour(block, block[F.T_DEW] + 10), out);
    expect(out[F.OUT_Q]).toBeGreaterThan(1);
    expect(out[F.OUT_T]).toBeCloseTo(block[F.T_DEW] + 10, 9);
  });

  test('inverse look-ups return to where they came from', () => {
    const random = stream(16);
    for (let i = 0; i < 300; i++) {
      const p = table.pMin * (table.pMax / table.pMin) ** random();
      expect(table.pDew(table.tDew(p)) / p).toBeCloseTo(1, 11);
      expect(table.pBubble(table.tBubble(p)) / p).toBeCloseTo(1, 11);
      table.setPressure(p, block);
      expect(table.tDew(p)).toBeCloseTo(block[F.T_DEW], 10);
      const vapour = block[F.T_DEW] + (table.tMax - block[F.T_DEW]) * random();
      table.state(block, table.hVapour(block, vapour), out);
      expect(out[F.OUT_T]).toBeCloseTo(vapour, 9);
      const liquid = block[F.T_BUB] - (block[F.T_BUB] - table.tMin) * random();
      table.state(block, table.hLiquid(block, liquid), out);
      expect(out[F.OUT_T]).toBeCloseTo(liquid, 9);
      table.state(block, 0.9 * table.hLiquid(block, table.tMin) + 0.1 * block[F.H_L], out);
      const [lowest] = [out[F.OUT_S]];
      table.state(block, block[F.H_V] + 0.9 / block[F.INV_SPAN_V], out);
      const s = lowest + (out[F.OUT_S] - lowest) * random();
      table.state(block, table.hOfS(block, s), out);
      expect(out[F.OUT_S]).toBeCloseTo(s, 6);
    }
  });

  test('saturated temperatures count as either side, also when another route rounded them', () => {
    table.setPressure(1e6, block);
    expect(table.hVapour(block, block[F.T_DEW] - 1e-9)).toBeCloseTo(block[F.H_V], 6);
    expect(table.hLiquid(block, block[F.T_BUB] + 1e-9)).toBeCloseTo(block[F.H_L], 6);
    expect(table.hVapour(block, table.tMax)).toBeGreaterThan(block[F.H_V]);
    expect(table.hLiquid(block, table.tMin)).toBeLessThan(block[F.H_L]);
  });

  test('what lies outside is refused with its figures', () => {
    const code = (run: () => unknown): string => {
      try {
        run();
      } catch (error) {
        if (error instanceof PhysicsError && error.message.startsWith(id)) return error.code;
      }
      return 'not refused';
    };
    expect(code(() => table.setPressure(table.pMin * 0.999, block))).toBe('table-end');
    expect(code(() => table.setPressure(table.pMax * 1.001, block))).toBe('table-end');
    expect(code(() => table.setPressure(Number.NaN, block))).toBe('bad-input');
    expect(code(() => table.tDew(0))).toBe('table-end');
    expect(code(() => table.pDew(150))).toBe('table-end');
    expect(code(() => table.pBubble(table.tCritical))).toBe('table-end');
    expect(code(() => table.pBubble(Number.NaN))).toBe('bad-input');
    table.setPressure(1e6, block);
    expect(code(() => table.state(block, 2e6, out))).toBe('range');
    expect(code(() => table.state(block, -1e6, out))).toBe('range');
    expect(code(() => table.state(block, Number.NaN, out))).toBe('bad-input');
    expect(code(() => table.hVapour(block, table.tMax + 0.1))).toBe('range');
    expect(code(() => table.hVapour(block, block[F.T_DEW] - 0.1))).toBe('range');
    expect(code(() => table.hLiquid(block, block[F.T_BUB] + 0.1))).toBe('range');
    expect(code(() => table.hLiquid(block, table.tMin - 0.1))).toBe('range');
    expect(code(() => table.hOfS(block, 9e3))).toBe('range');
    expect(code(() => table.hOfS(block, -9e3))).toBe('range');
    expect(code(() => table.hOfS(block, Number.NaN))).toBe('bad-input');
  });
});

describe.each(SINGLE)('%s', (id) => {
  const table = F.fluidTable(id);

  test('viscosity, conductivity and surface tension of both phases follow the reference within 0.2 %', () => {
    const worst = new Worst();
    for (const row of reference(id).saturation) {
      const note = (name: string, place: number, value: number | null) => {
        if (value !== null) worst.note(name, block[place] / value - 1);
      };
      table.setPressure(row.p_bubble as number, block);
      table.setTransport(block);
      note('muLiquid', F.MU_L, row.mu_liq);
      note('kLiquid', F.K_L, row.k_liq);
      note('sigma', F.SIGMA, row.sigma);
      table.setPressure(row.p_dew as number, block);
      table.setTransport(block);
      note('muVapour', F.MU_V, row.mu_vap);
      note('kVapour', F.K_V, row.k_vap);
    }
    expect(worst.over({ muLiquid: 2e-3, muVapour: 2e-3, kLiquid: 2e-3, kVapour: 2e-3, sigma: 2e-3 })).toEqual([]);
  });

  test('in the dome, quality mixes enthalpy, volume and entropy, and temperature runs from bubble to dew', () => {
    for (const p of [table.pMin, 1e6, 2e6, table.pMax]) {
      table.setPressure(p, block);
      for (const q of [0, 0.25, 0.9, 1]) {
        table.state(block, block[F.H_L] + q * (block[F.H_V] - block[F.H_L]), out);
        expect(out[F.OUT_Q]).toBeCloseTo(q, 10);
        expect(out[F.OUT_T]).toBeCloseTo(block[F.T_BUB] + q * (block[F.T_DEW] - block[F.T_BUB]), 9);
        expect(1 / out[F.OUT_RHO]).toBeCloseTo((1 - q) / block[F.RHO_L] + q / block[F.RHO_V], 9);
        expect(out[F.OUT_S]).toBeCloseTo(block[F.S_L] + q * (block[F.S_V] - block[F.S_L]), 7);
      }
    }
  });
});

// Worst seen 0.006 K, 3e-5 and 0.008 J/(kg K); straight lines would be off by 0.3 K (R-454B) and 0.5 K (R-448A).
test.each(BLENDS)('the dome of %s is the phase equilibrium itself', (id) => {
  const table = F.fluidTable(id);
  const fluid = F.fluidEos(id);
  const random = stream(17);
  const worst = new Worst();
  for (let i = 0; i < 60; i++) {
    const p = table.pBubble(228.15) * (table.pMax / table.pBubble(228.15)) ** random();
    table.setPressure(p, block);
    const h = block[F.H_L] + (block[F.H_V] - block[F.H_L]) * random();
    const point = fluidPoint(fluid, { p, h });
    table.state(block, h, out);
    worst.note('t', out[F.OUT_T] - point.t);
    worst.note('rho', out[F.OUT_RHO] / point.rho - 1);
    worst.note('s', out[F.OUT_S] - point.s);
    worst.note('q', out[F.OUT_Q] - (point.q as number));
    worst.note('hOfS', table.hOfS(block, point.s) - h);
  }
  expect(worst.over({ t: 0.01, rho: 1e-4, s: 0.01, q: 0.05, hOfS: 3 })).toEqual([]);
});

test('a table is built once; an unknown name is refused', () => {
  expect(F.fluidTable('R-32')).toBe(F.fluidTable('R-32'));
  expect(() => F.fluidTable('R-999')).toThrow('unknown refrigerant "R-999"');
});

/** Worst deviations of a table from its equation of state, half of the points crowded at the saturation lines. */
function compare(fluid: FluidEos, table: F.FluidTable, from: number, to: number, count: number, seed: number): Worst {
  const random = stream(seed);
  const worst = new Worst();
  for (let i = 0; i < count; i++) {
    const p = from * (to / from) ** random();
    table.setPressure(p, block);
    const liquid = saturated(fluid, p, 0);
    const vapour = saturated(fluid, p, 1);
    worst.note('pSat', table.pBubble(liquid.t) / p - 1);
    worst.note('pSat', table.pDew(vapour.t) / p - 1);
    worst.note('rhoSat', block[F.RHO_L] / liquid.rho - 1);
    worst.note('rhoSat', block[F.RHO_V] / vapour.rho - 1);
    worst.note('hSat', block[F.H_L] - liquid.h);
    worst.note('hSat', block[F.H_V] - vapour.h);
    worst.note('sSat', block[F.S_L] - liquid.s);
    worst.note('sSat', block[F.S_V] - vapour.s);
    worst.note('cpSat', block[F.CP_L] / liquid.cp - 1);
    worst.note('cpSat', block[F.CP_V] / vapour.cp - 1);
    for (let j = 0; j < 6; j++) {
      const share = j % 2 === 0 ? random() : random() ** 4;
      const far = j < 3 ? table.tMax : Math.max(table.tMin, fluid.data.validRange.tMin);
      const near = j < 3 ? vapour.t : liquid.t;
      const t = near + (far - near) * (1e-6 + (1 - 1e-6) * share);
      if (j >= 3 && t >= near) continue;
      const point = fluidPoint(fluid, { p, t });
      const cp = heatCapacity(fluid, t, point.rho);
      // Within the error of the saturation line a point may fall on its other side.
      if (j < 3 ? point.h <= block[F.H_V] : point.h >= block[F.H_L]) continue;
      table.state(block, point.h, out);
      worst.note('t', out[F.OUT_T] - t);
      worst.note('rho', out[F.OUT_RHO] / point.rho - 1);
      worst.note('s', out[F.OUT_S] - point.s);
      worst.note('dTdh', out[F.OUT_DTDH] * cp - 1);
      worst.note('hOfS', table.hOfS(block, point.s) - point.h);
      worst.note('hOfT', (j < 3 ? table.hVapour(block, t) : table.hLiquid(block, t)) - point.h);
    }
  }
  return worst;
}

/** Saturation straight from the equation of state; the blend's equation is carried on below its published limit. */
function saturated(fluid: FluidEos, p: number, q: 0 | 1): { t: number; rho: number; h: number; s: number; cp: number } {
  const sat = fluid.saturationAtPressure(p);
  const t = q === 0 ? sat.tBubble : sat.tDew;
  const rho = q === 0 ? sat.rhoLiquid : sat.rhoVapour;
  const cp = heatCapacity(fluid, t, rho);
  const [, h, s] = fluid.eos.out;
  return { t, rho, h: h + fluid.hOffset, s: s + fluid.sOffset, cp };
}

function heatCapacity(fluid: FluidEos, t: number, rho: number): number {
  return fluid.eos.evaluate(t, rho)[4];
}
