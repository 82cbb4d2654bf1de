/**
 * Fin-and-tube coil, marched along the refrigerant in equal wall segments that are split exactly at phase boundaries.
 *
 * Steady zone: with sink (k, t) of the air side the refrigerant approaches t with U = 1/(1/U_ref + 1/k).
 * Time step: a segment's wall departs from its steady wall by D, uniform over the segment, which follows implicitly from
 * the wall a step ago. D is zero at rest, so the time step rests exactly at the steady state. What the wall stores is air
 * heat minus refrigerant heat.
 *
 * Assumptions: every segment meets entering air (one row deep); no axial conduction; pressure of the whole coil at its
 * mean (drops are taken outside); saturation temperature linear in quality. Mass by Zivi's void fraction.
 */
import type { FluidTable } from '../fluids/fluid';
import * as L from '../fluids/layout';
import { exp, ln } from '../math/elementary';
import type { AirStream } from './airStream';
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
}

const { H_L, H_V, T_BUB, T_DEW, RHO_L, RHO_V, CP_L, CP_V, P, OUT_T, OUT_RHO, OUT_DTDH } = L;

/** Heat of evaporation of water at 0 °C, J/kg (ASHRAE Fundamentals): the latent share of the air's heat. */
const WATER = 2.501e6;
/** K of departure below which a second pass changes nothing */
const AT_REST = 1e-10;

export class CoilMarch {
  /** mean wall temperature of each segment after the step, K */
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
  /** per coil: latent heat, Zivi ratio, dh/dT of glide, tube area, air conductance and volume of a segment */
  private latent = 0.5;
  private zivi = 0.5;
  private glideCp = 0.5;
  private area = 0.5;
  private conductance = 0.5;
  private volume = 0.5;
  private gasPenalty = 0.5;
  /** per segment pass: end enthalpy, heats, water, wall, conductances around the wall, mass */
  private hEnd = 0.5;
  private segmentHeat = 0.5;
  private segmentAir = 0.5;
  private segmentWater = 0.5;
  private segmentWall = 0.5;
  private around = 0.5;
  private segmentMass = 0.5;
  private massEnthalpy = 0.5;

  constructor(readonly data: CoilData) {
    const n = data.segments;
    this.walls = new Float64Array(n);
    this.temperature = new Float64Array(n);
    this.quality = new Float64Array(n);
    this.water = new Float64Array(n);
  }

  /**
   * March `massFlow` (kg/s) entering at `hIn` (J/kg) through the coil.
   * @param before walls a step ago, K, or null for the steady state
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
    this.zivi = exp((2 / 3) * ln(block[RHO_V] / block[RHO_L]));
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
      this.segment(fluid, block, tube, air, massFlow, h, 0);
      this.walls[i] = this.segmentWall;
      if (before) {
        const departure = (before[i] - this.segmentWall) / (1 + this.around / stored);
        if (departure > AT_REST || departure < -AT_REST) this.segment(fluid, block, tube, air, massFlow, h, departure);
        this.walls[i] = before[i] + (this.segmentAir - this.segmentHeat) / stored;
      }
      h = this.hEnd;
      heat += this.segmentHeat;
      airHeat += this.segmentAir;
      this.water[i] = this.segmentWater;
      water += this.segmentWater;
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

  /** One pass over a segment whose walls stand `departure` kelvin above their steady temperatures. */
  private segment(
    fluid: FluidTable,
    block: Float64Array,
    tube: TubeFlow,
    air: AirStream,
    massFlow: number,
    hIn: number,
    departure: number,
  ): void {
    const { out, sink, latent } = this;
    const hL = block[H_L];
    const hV = block[H_V];
    const condensing = this.data.role === 'condenser';
    let h = hIn;
    let heat = 0;
    let airHeat = 0;
    let waterSum = 0;
    let wallSum = 0;
    let around = 0;
    let mass = 0;
    let massEnthalpy = 0;
    let covered = 0;
    let dried = false;
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
      const u = 1 / (1 / inner + 1 / sink.k);
      const airShare = sink.k / (sink.k + inner);
      const sinkT = sink.t + departure / airShare;
      const drive = sinkT - t;

      let cp = this.glideCp;
      if (single) {
        // heat capacity: local first, then the secant over the zone (it changes fast near saturation)
        cp = x === 0 ? block[CP_L] : x === 1 ? block[CP_V] : 1 / out[OUT_DTDH];
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

      // A phase boundary, or the end of the dew, inside the zone: end the zone exactly there.
      let boundary = -1;
      if (sink.wet) {
        const dryH = h + cp * (sink.tDry - t);
        if (dryH < hEnd && dryH >= h) {
          boundary = dryH;
          dried = true;
        }
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

      if (length > 0) {
        const meanT = sinkT - q / (u * length);
        const wall = airShare * sink.t + (1 - airShare) * meanT + departure;
        airHeat += sink.k * (sink.t - wall) * length;
        waterSum += sink.water(air, wall) * length;
        wallSum += wall * length;
        around += (sink.k + inner) * length;
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
        const voidShare = meanVoid(x, (hEnd - hL) / latent, this.zivi);
        const gas = volume * voidShare * block[RHO_V];
        const liquid = volume * (1 - voidShare) * block[RHO_L];
        mass += gas + liquid;
        massEnthalpy += gas * hV + liquid * hL;
      }
      h = hEnd;
      covered += length;
      if (boundary < 0) break;
    }
    this.hEnd = h;
    this.segmentHeat = heat;
    this.segmentAir = airHeat;
    this.segmentWater = waterSum;
    this.segmentWall = wallSum / covered;
    this.around = around / covered;
    this.segmentMass = mass;
    this.massEnthalpy = massEnthalpy;
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
