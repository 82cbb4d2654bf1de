/**
 * Subcooling exchanger: a little of the liquid is let down to suction pressure and boils away against the rest. Its valve
 * keeps what leaves the bypass a few kelvin over dew (taken as ideal); NTU on the liquid's side, the boiling side stays at
 * one temperature.
 */
import type { FluidTable } from '../fluids/fluid';
import * as L from '../fluids/layout';
import { exp } from '../math/elementary';

/** K over dew at which the bypass leaves */
const BYPASS_SUPERHEAT = 5;

export class Subcooler {
  hOut = 2.5e5;
  hBypass = 4.2e5;
  bypassFlow = 0;
  heat = 0;
  private readonly out = new Float64Array(L.OUT_SIZE);

  constructor(readonly data: { readonly ua: number; readonly largestShare: number }) {}

  stop(): void {
    this.bypassFlow = 0;
    this.heat = 0;
  }

  /** @param port block at the liquid's pressure, `h` its enthalpy, `m` kg/s; `low` block at the suction */
  run(fluid: FluidTable, port: Float64Array, h: number, m: number, low: Float64Array): void {
    fluid.state(port, h, this.out);
    this.hBypass = low[L.H_V] + BYPASS_SUPERHEAT * low[L.CP_V];
    const warm = this.out[L.OUT_T] - low[L.T_BUB];
    const ntu = this.data.ua / (m * port[L.CP_L]);
    const sensible = m * port[L.CP_L] * (1 - exp(-ntu)) * (warm > 0 ? warm : 0);
    // gas in the liquid condenses first and keeps the exchanger warm all along
    const wet = (h - port[L.H_L]) / (0.02 * (port[L.H_V] - port[L.H_L]));
    const share = wet <= 0 ? 0 : wet >= 1 ? 1 : wet * wet * (3 - 2 * wet);
    let heat = sensible + share * (this.data.ua * (warm > 0 ? warm : 0) - sensible);
    const most = this.data.largestShare * m * (this.hBypass - h);
    // near its largest share the valve is wide open: rounded off, so that a solver meets no kink
    heat = heat / (1 + heat / most);
    this.heat = heat;
    this.hOut = h - heat / m;
    this.bypassFlow = heat / (this.hBypass - this.hOut);
  }
}
