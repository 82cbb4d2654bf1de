/**
 * Fin-and-tube coil, marched along the refrigerant in equal wall segments that are split exactly at phase boundaries.
 *
 * Steady zone: with sink (k, t) of the air side the refrigerant approaches t with U = 1/(1/U_ref + 1/k).
 * Time step: what the wall stores joins the sink (conductance C/dt toward the zone's wall a step ago), shifted by the
 * small difference that a uniform old wall makes against the steady profile; so the time step rests exactly at the steady
 * state. A segment's energy is its mean wall, which changes by air heat minus refrigerant heat; the zones' walls are a
 * pattern around that mean.
 *
 * Assumptions: every segment meets entering air (one row deep); no axial conduction; pressure of the whole coil at its
 * mean (drops are taken outside); saturation temperature linear in quality. Mass by Zivi's void fraction.
 */
import type { FluidTable } from '../fluids/fluid';
import * as L from '../fluids/layout';
import { exp, ln } from '../math/elementary';
import type { AirStream } from './airStream';
import { type Correlations, slipRatio } from './correlations';
import { Sink } from './sink';
import type { TubeFlow } from './tubeFlow';
import { meanVoid } from './voidFraction';

export interface CoilData {
  readonly role: 'condenser' | 'evaporator';
  readonly segments: number;
  /** internal volume, m3 */
  readonly volume: number;
  /** inside diameter of a tube, m; number of parallel circuits; inside area, m2 */
  readonly diameter: number;
  readonly circuits: number;
  readonly innerArea: number;
  readonly enhancement: number;
  /** air side conductance (fins included) at `airFlow`, W/K; grows with flow to the power `airExponent` */
  readonly airUa: number;
  /** design air volume flow, m3/s */
  readonly airFlow: number;
  readonly airExponent: number;
  /** metal, J/K */
  readonly wallCapacity: number;
  /** pressure drop = coefficient * m^2 * v_vapour, Pa/(kg^2/s^2 * m3/kg) */
  readonly pressureDrop: number;
  /** left out = ours */
  readonly correlations?: Correlations;
}

const { H_L, H_V, T_BUB, T_DEW, RHO_L, RHO_V, CP_L, CP_V, P, OUT_T, OUT_RHO, OUT_DTDH } = L;

/** Heat of evaporation of water at 0 °C, J/kg (ASHRAE Fundamentals): the latent share of the air's heat. */
const WATER = 2.501e6;
/** Walls of a coil: per segment its mean, then the walls of its dry vapour, wet vapour, two-phase and liquid zone, K. */
export const WALL_FIELDS = 5;
const DRY_VAPOUR = 1;
const WET_VAPOUR = 2;
const TWO_PHASE = 3;
const LIQUID = 4;

/** s over which energy that moved with a zone's boundary is given back to the zones (numerical, ours) */
const GIVE_BACK = 20;

export class CoilMarch {
  /** walls after the step, `WALL_FIELDS` a segment, K */
  readonly walls: Float64Array;
  readonly temperature: Float64Array;
  readonly quality: Float64Array;
  /** water taken out of the air per segment, kg/s */
  readonly water: Float64Array;
  hOut = 0.5;
  /** heat into the refrigerant, W */
  heat = 0.5;
  /** heat out of the air, W (differs from `heat` by what the wall stores) */
  airHeat = 0.5;
  waterTotal = 0.5;
  /** refrigerant held, kg, and its internal energy, J */
  mass = 0.5;
  energy = 0.5;
  private readonly sink = new Sink();
  private readonly out = new Float64Array(8);
  /** per coil: latent heat, slip ratio, dh/dT of glide, tube area, air conductance and volume of a segment */
  private latent = 0.5;
  private slip = 0.5;
  private glideCp = 0.5;
  private area = 0.5;
  private conductance = 0.5;
  private volume = 0.5;
  private gasPenalty = 0.5;
  /** per segment: end enthalpy, heats, water, mass and its enthalpy; lengths and walls of the zones */
  private hEnd = 0.5;
  private segmentHeat = 0.5;
  private segmentAir = 0.5;
  private segmentMass = 0.5;
  private massEnthalpy = 0.5;
  private readonly lengths = new Float64Array(WALL_FIELDS);
  private readonly zoneWalls = new Float64Array(WALL_FIELDS);
  /** per zone: heat, length, end enthalpy, whether it ended at a boundary inside the segment */
  private zoneHeat = 0.5;
  private zoneCp = 0.5;
  private zoneLength = 0.5;
  private zoneEnd = 0.5;
  private bounded = false;

  constructor(readonly data: CoilData) {
    const n = data.segments;
    this.walls = new Float64Array(n * WALL_FIELDS);
    this.temperature = new Float64Array(n);
    this.quality = new Float64Array(n);
    this.water = new Float64Array(n);
  }

  /**
   * March `massFlow` (kg/s) entering at `hIn` (J/kg) through the coil.
   * @param before walls a step ago (layout of `walls`), or null for the steady state
   * @param dt time step, s (ignored when `before` is null)
   * @param gasPenalty multiplies the condensing coefficient (non-condensable gas), 1 = none
   */
  march(
    fluid: FluidTable,
    block: Float64Array,
    tube: TubeFlow,
    air: AirStream,
    massFlow: number,
    hIn: number,
    before: Float64Array | readonly number[] | null,
    dt: number,
    gasPenalty: number,
  ): void {
    const { data, out } = this;
    const n = data.segments;
    this.latent = block[H_V] - block[H_L];
    this.slip = slipRatio(block, data.correlations);
    this.glideCp = this.latent / (block[T_DEW] - block[T_BUB] + 1e-7);
    this.area = data.innerArea / n;
    this.volume = data.volume / n;
    this.gasPenalty = gasPenalty;
    const airRate = (air.massFlow * air.cp) / n;
    this.conductance = airRate * (1 - exp(-air.ua / n / airRate));
    const stored = before ? data.wallCapacity / n / dt : 0;

    let h = hIn;
    let heat = 0;
    let airHeat = 0;
    let water = 0;
    let mass = 0;
    let massEnthalpy = 0;
    for (let i = 0; i < n; i++) {
      this.segment(fluid, block, tube, air, massFlow, h, i, before, stored);
      this.closeWalls(i * WALL_FIELDS, before, stored, before ? dt : 1);
      h = this.hEnd;
      heat += this.segmentHeat;
      airHeat += this.segmentAir;
      water += this.water[i];
      mass += this.segmentMass;
      massEnthalpy += this.massEnthalpy;
      fluid.state(block, h, out);
      this.temperature[i] = out[OUT_T];
      this.quality[i] = (h - block[H_L]) / this.latent;
    }
    this.hOut = h;
    this.heat = heat;
    this.airHeat = airHeat;
    this.waterTotal = water;
    this.mass = mass;
    this.energy = massEnthalpy - block[P] * data.volume;
  }

  /** One segment, zone by zone. */
  private segment(
    fluid: FluidTable,
    block: Float64Array,
    tube: TubeFlow,
    air: AirStream,
    massFlow: number,
    hIn: number,
    index: number,
    before: Float64Array | readonly number[] | null,
    stored: number,
  ): void {
    const { out, sink, latent, lengths, zoneWalls } = this;
    const hL = block[H_L];
    const hV = block[H_V];
    const condensing = this.data.role === 'condenser';
    let h = hIn;
    let heat = 0;
    let airHeat = 0;
    let waterSum = 0;
    let mass = 0;
    let massEnthalpy = 0;
    let covered = 0;
    let dried = false;
    lengths.fill(0);
    zoneWalls.fill(0);
    for (let part = 0; part < 6 && covered < 1 - 1e-10; part++) {
      const left = 1 - covered;
      fluid.state(block, h, out);
      const t = out[OUT_T];
      let x = (h - hL) / latent;
      if (x > 1 - 1e-9 && x < 1 + 1e-9) x = 1;
      if (x < 1e-9 && x > -1e-9) x = 0;
      const heating = air.temperature > t;
      const isVapour = x > 1 || (x === 1 && heating);
      const isLiquid = x < 0 || (x === 0 && !heating);
      const single = isVapour || isLiquid;
      const coefficient = isVapour
        ? tube.vapour
        : isLiquid
          ? tube.liquid
          : condensing
            ? tube.condensing(x) * this.gasPenalty
            : tube.evaporating(x);
      const inner = coefficient * this.area;
      sink.prepare(air, this.conductance, inner, t, single && heating, dried);
      const zone = isVapour ? (sink.wet ? WET_VAPOUR : DRY_VAPOUR) : isLiquid ? LIQUID : TWO_PHASE;
      const cp = single ? (x === 0 ? block[CP_L] : x === 1 ? block[CP_V] : 1 / out[OUT_DTDH]) : this.glideCp;
      const resistance = 1 / inner;
      const u = 1 / (resistance + 1 / sink.k);

      this.zone(fluid, block, massFlow, h, t, zone, u, sink.t, cp, false, left);
      let k = sink.k;
      let sinkT = sink.t;
      let correction = 0;
      if (before && this.zoneLength > 0) {
        const steadyMean = sink.t - this.zoneHeat / (u * this.zoneLength);
        const steadyWall = (sink.k * sink.t + inner * steadyMean) / (sink.k + inner);
        k += stored;
        const withStore = 1 / (resistance + 1 / k);
        const reach = withStore * this.zoneLength * approach((withStore * this.zoneLength) / (massFlow * this.zoneCp));
        // the old wall that would give exactly the steady heat, less the steady wall
        const restT = t + this.zoneHeat / reach;
        const shift = (k * restT - sink.k * sink.t) / stored - steadyWall;
        // the profile differs a little in shape too, and with it the mean wall
        const restMean = restT - (this.zoneHeat / this.zoneLength) * (resistance + 1 / k);
        correction = steadyWall - (inner * restMean + k * restT) / (inner + k);
        sinkT = (sink.k * sink.t + stored * (before[index * WALL_FIELDS + zone] + shift)) / k;
        this.zone(fluid, block, massFlow, h, t, zone, withStore, sinkT, this.zoneCp, true, left);
      }
      const length = this.zoneLength;
      const hEnd = this.zoneEnd;
      const q = this.zoneHeat;
      if (this.bounded && zone === WET_VAPOUR && hEnd !== hV) dried = true;

      if (length > 0) {
        const meanT = sinkT - (q / length) * (resistance + 1 / k);
        const wall = (inner * meanT + k * sinkT) / (inner + k) + correction;
        airHeat += sink.k * (sink.t - wall) * length;
        waterSum += sink.water(air, wall) * length;
        zoneWalls[zone] += wall * length;
        lengths[zone] += length;
      }
      heat += q;

      const volume = this.volume * length;
      if (single) {
        const hMean = 0.5 * (h + hEnd);
        fluid.state(block, hMean, out);
        const held = volume * out[OUT_RHO];
        mass += held;
        massEnthalpy += held * hMean;
      } else {
        const voidShare = meanVoid(x, (hEnd - hL) / latent, this.slip);
        const gas = volume * voidShare * block[RHO_V];
        const liquid = volume * (1 - voidShare) * block[RHO_L];
        mass += gas + liquid;
        massEnthalpy += gas * hV + liquid * hL;
      }
      h = hEnd;
      covered += length;
      if (!this.bounded) break;
    }
    this.hEnd = h;
    this.segmentHeat = heat;
    this.segmentAir = airHeat;
    this.water[index] = waterSum;
    this.segmentMass = mass;
    this.massEnthalpy = massEnthalpy;
  }

  /**
   * One zone of at most `left` of the segment toward a sink at `sinkT`: heat, length and end enthalpy. It ends exactly at
   * a phase boundary, or where a wet wall comes out of the dew.
   */
  private zone(
    fluid: FluidTable,
    block: Float64Array,
    massFlow: number,
    h: number,
    t: number,
    zone: number,
    u: number,
    sinkT: number,
    knownCp: number,
    isSecant: boolean,
    left: number,
  ): void {
    const { out, sink } = this;
    const hL = block[H_L];
    const hV = block[H_V];
    const isVapour = zone === DRY_VAPOUR || zone === WET_VAPOUR;
    const isLiquid = zone === LIQUID;
    const drive = sinkT - t;
    let cp = knownCp;
    if (!isSecant && (isVapour || isLiquid)) {
      // heat capacity: the secant over the zone (it changes fast near saturation)
      let hRough = h + cp * drive * (1 - exp((-u * left) / (massFlow * cp)));
      if (isVapour && hRough < hV) hRough = hV;
      if (isLiquid && hRough > hL) hRough = hL;
      fluid.state(block, hRough, out);
      const change = out[OUT_T] - t;
      if (change > 0.01 || change < -0.01) cp = (hRough - h) / change;
    }
    const rate = massFlow * cp;
    let length = left;
    let q = u * length * drive * approach((u * length) / rate);
    let hEnd = h + q / massFlow;

    let boundary = -1;
    if (sink.wet) {
      const dryH = h + cp * (sink.tDry - t);
      if (dryH < hEnd && dryH >= h) boundary = dryH;
    }
    if (isVapour) {
      if (hEnd < hV) boundary = hV;
    } else if (isLiquid) {
      if (hEnd > hL && !(boundary > 0 && boundary < hL)) boundary = hL;
    } else if (hEnd > hV) boundary = hV;
    else if (hEnd < hL) boundary = hL;
    if (boundary >= 0) {
      const fraction = lengthTo(rate, u, drive, (boundary - h) / cp);
      length = fraction < left ? (fraction > 0 ? fraction : 0) : left;
      q = massFlow * (boundary - h);
      hEnd = boundary;
    }
    this.zoneCp = cp;
    this.zoneHeat = q;
    this.zoneLength = length;
    this.zoneEnd = hEnd;
    this.bounded = boundary >= 0;
  }

  /**
   * New walls of a segment: energy decides the mean, the solution the zones. When zones grow and shrink the two drift
   * apart; the difference goes back to the zones slowly, since a boiling wall stands less than a kelvin over its
   * refrigerant and a sudden shift would throw the boundary back and forth.
   */
  private closeWalls(base: number, before: Float64Array | readonly number[] | null, stored: number, dt: number): void {
    const { walls, lengths, zoneWalls } = this;
    let total = 0;
    let covered = 0;
    for (let z = DRY_VAPOUR; z <= LIQUID; z++) {
      total += zoneWalls[z];
      covered += lengths[z];
    }
    const pattern = total / covered;
    const mean = before ? before[base] + (this.segmentAir - this.segmentHeat) / stored : pattern;
    walls[base] = mean;
    const back = (mean - pattern) * (dt / (dt + GIVE_BACK));
    for (let z = DRY_VAPOUR; z <= LIQUID; z++) {
      walls[base + z] = lengths[z] > 0 ? zoneWalls[z] / lengths[z] + back : mean;
    }
  }

  /** Sensible part of the heat taken from the air, W. */
  get sensible(): number {
    return this.airHeat - this.waterTotal * WATER;
  }
}

/** (1 − e^−n)/n, smooth at 0. */
function approach(n: number): number {
  if (n < 1e-4) return 1 - 0.5 * n + (n * n) / 6;
  return (1 - exp(-n)) / n;
}

/** Length (share of a segment) after which the refrigerant has changed by `change` kelvin on its way to the sink. */
function lengthTo(rate: number, u: number, drive: number, change: number): number {
  const reached = change / drive;
  if (reached >= 1) return 2;
  if (reached < 1e-5) return (rate / u) * (reached + 0.5 * reached * reached);
  return (-rate / u) * ln(1 - reached);
}
