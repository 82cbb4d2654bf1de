/**
 * Standing still: each side of the machine is one vessel in equilibrium (mass M, internal energy U, volume V), joined by
 * the metering device, the leak and, while it starts, the compressor. Mass and energy are conserved exactly by
 * construction; heat comes and goes through the coils' walls.
 */
import { PhysicsError } from '../errors';
import type { FluidTable } from '../fluids/fluid';
import * as layout from '../fluids/layout';
import { ln } from '../math/elementary';

const { BLOCK_SIZE, H_L, H_V, OUT_Q, OUT_RHO, OUT_SIZE, OUT_T, RHO_L, RHO_V, T_DEW } = layout;

/** Tube-side coefficients without flow, W/(m2 K): pool boiling and filmwise condensing, and vapour at rest (from memory). */
const TWO_PHASE = 450;
const VAPOUR = 12;
/** The same while the compressor draws and pushes gas through. */
const TWO_PHASE_DRIVEN = 2200;
const VAPOUR_DRIVEN = 60;
/** ln of density by which a vessel may miss its mass where rounding ends the search */
const FITS = 1e-6;

export class Vessel {
  pressure = 1e6;
  enthalpy = 4e5;
  temperature = 300.5;
  quality = 0.5;
  density = 50.5;
  readonly block = new Float64Array(BLOCK_SIZE);
  private readonly out = new Float64Array(OUT_SIZE);

  /**
   * Pressure and enthalpy at which mass and energy fit the volume. One root in ln p: density(p, u + p/rho) = rho.
   * @param guess Pa. Throws PhysicsError `table-end` / `range` where no state within the tables fits.
   */
  settle(fluid: FluidTable, mass: number, energy: number, volume: number, guess: number): void {
    const rho = mass / volume;
    const u = energy / mass;
    let low = fluid.pMin * 1.0001;
    let high = fluid.pMax * 0.9999;
    let p = guess > low && guess < high ? guess : 1e6;
    const miss = (at: number): number => {
      fluid.setPressure(at, this.block);
      const h = u + at / rho;
      fluid.state(this.block, h, this.out);
      return ln(this.out[OUT_RHO] / rho);
    };
    let f = miss(p);
    for (let k = 0; k < 80 && (f > 1e-11 || f < -1e-11); k++) {
      if (f > 0) high = p;
      else low = p;
      const d = p * 1e-5;
      const slope = (miss(p + d) - f) / d;
      let next = p - f / slope;
      if (!(next > low && next < high)) next = 0.5 * (low + high);
      if (next === p) break;
      p = next;
      f = miss(p);
    }
    const missed = miss(p);
    if (missed > FITS || missed < -FITS) {
      throw new PhysicsError('table-end', 'a vessel holds more or less than fits at any pressure within the tables', {
        pressure: p,
        density: rho,
        energy: u,
      });
    }
    this.pressure = p;
    this.enthalpy = u + p / rho;
    this.temperature = this.out[OUT_T];
    this.quality = this.out[OUT_Q];
    this.density = this.out[OUT_RHO];
  }

  /** Share of the volume that liquid fills, 0…1. */
  get liquidShare(): number {
    if (this.quality >= 1) return 0;
    if (this.quality <= 0) return 1;
    return ((1 - this.quality) * this.density) / this.block[RHO_L];
  }

  /** Enthalpy of what leaves through the bottom (liquid while there is some) and through the top. */
  get bottomEnthalpy(): number {
    if (this.quality >= 1 || this.quality <= 0) return this.enthalpy;
    const share = this.liquidShare / 0.02;
    const weight = share < 1 ? share : 1;
    return this.block[H_V] + weight * (this.block[H_L] - this.block[H_V]);
  }

  get topEnthalpy(): number {
    return this.quality >= 1 || this.quality <= 0 ? this.enthalpy : this.block[H_V];
  }

  /** J/K at constant volume and mass: sensible heat of both phases and, while there is liquid, what evaporates to follow. */
  heatCapacity(mass: number): number {
    const liquid = this.quality < 1 ? mass * (1 - (this.quality > 0 ? this.quality : 0)) : 0;
    let capacity = liquid * 1800 + (mass - liquid) * 800;
    if (liquid > 0) {
      const latent = this.block[H_V] - this.block[H_L];
      const rhoV = this.block[RHO_V];
      const gas = (mass / this.density) * (1 - this.liquidShare);
      // Clausius–Clapeyron for the vapour's density
      capacity += (gas * rhoV * rhoV * latent * latent) / (this.pressure * this.temperature);
    }
    return capacity;
  }

  /** W/(m2 K) between wall and refrigerant. */
  coefficient(wall: number, driven: boolean): number {
    const twoPhase = driven ? TWO_PHASE_DRIVEN : TWO_PHASE;
    const vapour = driven ? VAPOUR_DRIVEN : VAPOUR;
    if (this.quality >= 1) return wall < this.block[T_DEW] ? twoPhase : vapour;
    if (wall < this.temperature) return twoPhase;
    const wetted = this.liquidShare / 0.02;
    return vapour + (twoPhase - vapour) * (wetted < 1 ? wetted : 1);
  }
}
