/**
 * Fin-and-tube coil, marched along the refrigerant in equal wall segments that are split exactly at phase boundaries.
 *
 * Per zone: the wall is eliminated in closed form. With sink conductance K (air side plus wall capacity over the time
 * step) and sink temperature S, the refrigerant approaches S with U = 1/(1/U_ref + 1/K). dt -> infinity gives the
 * steady coil without a new unknown. Every segment meets entering air (one row deep in air). A wall below the dew point
 * is wet: enthalpy potential, linearised at the wall temperature that balances the zone.
 *
 * Assumptions: no axial conduction; pressure of the whole coil at its mean (drops are taken outside); saturation
 * temperature linear in quality. Mass by Zivi's void fraction.
 */
import type { FluidTable } from '../fluids/fluid';
import * as BLOCK from '../fluids/layout';
import { exp, ln } from '../math/elementary';
import type { AirStream } from './airStream';
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

/** Heat of evaporation and sensible offset of water at 0 °C used for the latent share, J/kg (ASHRAE Fundamentals). */
const WATER = 2.501e6;

export class CoilMarch {
  readonly wall: Float64Array;
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
  /** share of the inner surface with single-phase vapour / liquid */
  vapourShare = 0.5;
  liquidShare = 0.5;
  private readonly out = new Float64Array(8);

  constructor(readonly data: CoilData) {
    const n = data.segments;
    this.wall = new Float64Array(n);
    this.temperature = new Float64Array(n);
    this.quality = new Float64Array(n);
    this.water = new Float64Array(n);
  }

  /**
   * March `massFlow` (kg/s) entering at `hIn` (J/kg) through the coil.
   * @param wallOld wall temperatures a step ago, K, or null for the steady state
   * @param dt time step, s (ignored when wallOld is null)
   * @param gasPenalty multiplies the condensing coefficient (non-condensable gas), 1 = none
   */
  march(
    fluid: FluidTable,
    block: Float64Array,
    tube: TubeFlow,
    air: AirStream,
    massFlow: number,
    hIn: number,
    wallOld: Float64Array | readonly number[] | null,
    dt: number,
    gasPenalty: number,
  ): void {
    const data = this.data;
    const n = data.segments;
    const out = this.out;
    const hL = block[BLOCK.H_L];
    const hV = block[BLOCK.H_V];
    const latent = hV - hL;
    const tBub = block[BLOCK.T_BUB];
    const tDew = block[BLOCK.T_DEW];
    const rhoL = block[BLOCK.RHO_L];
    const rhoV = block[BLOCK.RHO_V];
    const densityRatio = rhoV / rhoL;
    const zivi = exp((2 / 3) * ln(densityRatio));
    const glideCp = latent / (tDew - tBub + 1e-7);
    const area = data.innerArea / n;
    const capacity = wallOld ? data.wallCapacity / n / dt : 0;
    const airRate = (air.massFlow * air.cp) / n;
    const airConductance = airRate * (1 - exp(-air.ua / n / airRate));
    const segmentVolume = data.volume / n;
    const condensing = data.role === 'condenser';
    const pressure = block[BLOCK.P];

    let h = hIn;
    let heat = 0;
    let airHeat = 0;
    let waterTotal = 0;
    let mass = 0;
    let massEnthalpy = 0;
    let vapourShare = 0;
    let liquidShare = 0;

    for (let i = 0; i < n; i++) {
      const wallBefore = wallOld ? wallOld[i] : 0;
      let left = 1;
      let wallSum = 0;
      let waterSum = 0;
      let dried = false;
      for (let part = 0; part < 6 && left > 1e-10; part++) {
        fluid.state(block, h, out);
        const t = out[BLOCK.OUT_T];
        let x = (h - hL) / latent;
        if (x > 1 - 1e-9 && x < 1 + 1e-9) x = 1;
        if (x < 1e-9 && x > -1e-9) x = 0;
        const heating = air.temperature > t;
        const isVapour = x > 1 || (x === 1 && heating);
        const isLiquid = x < 0 || (x === 0 && !heating);
        const coefficient = isVapour
          ? tube.vapour
          : isLiquid
            ? tube.liquid
            : condensing
              ? tube.condensing(x) * gasPenalty
              : tube.evaporating(x);
        const inner = coefficient * area;

        const single = isVapour || isLiquid;
        // refrigerant temperature at which the wall of a wet zone would reach the dew point
        let tDry = 1e9;

        // The zone's sink: dry first, wet if the wall would lie below the dew point.
        let sinkK = airConductance + capacity;
        let sinkT = (airConductance * air.temperature + capacity * wallBefore) / sinkK;
        let wet = false;
        let wetWall = (inner * t + sinkK * sinkT) / (inner + sinkK);
        let slope = 0;
        if (wetWall < air.dewPoint && !dried) {
          wet = true;
          const transfer = airConductance / air.cp;
          let satH = 0;
          for (let k = 0; k < 3; k++) {
            satH = air.saturated.enthalpy(wetWall);
            slope = air.saturated.slope(wetWall);
            const f = inner * (wetWall - t) - transfer * (air.enthalpy - satH) - capacity * (wallBefore - wetWall);
            const step = f / (inner + transfer * slope + capacity);
            wetWall -= step;
            if (wetWall > air.dewPoint) wetWall = air.dewPoint;
            if (step < 1e-4 && step > -1e-4) break;
          }
          satH = air.saturated.enthalpy(wetWall);
          // Single phase warms along the zone: linearise by the chord up to the dew point, so that the wet zone meets the
          // dry one without a jump. Two-phase stays where it is: tangent.
          if (single && heating && air.dewPoint - wetWall > 1e-3) {
            slope = (air.saturated.enthalpy(air.dewPoint) - satH) / (air.dewPoint - wetWall);
          }
          const wetK = transfer * slope;
          const wetT = wetWall + (air.enthalpy - satH) / slope;
          sinkK = wetK + capacity;
          sinkT = (wetK * wetT + capacity * wallBefore) / sinkK;
          if (single && heating) tDry = air.dewPoint + (sinkK * (air.dewPoint - sinkT)) / inner;
        }

        const u = 1 / (1 / inner + 1 / sinkK);
        const drive = sinkT - t;
        let cp = glideCp;
        if (single) {
          // heat capacity: local first, then the secant over the zone (it changes fast near saturation)
          cp = x === 0 ? block[BLOCK.CP_L] : x === 1 ? block[BLOCK.CP_V] : 1 / out[BLOCK.OUT_DTDH];
          const rough = cp * drive * (1 - exp((-u * left) / (massFlow * cp)));
          let hRough = h + rough;
          if (isVapour && hRough < hV) hRough = hV;
          if (isLiquid && hRough > hL) hRough = hL;
          fluid.state(block, hRough, out);
          const change = out[BLOCK.OUT_T] - t;
          if (change > 0.01 || change < -0.01) cp = (hRough - h) / change;
        }
        const rate = massFlow * cp;
        let length = left;
        let q = u * length * drive * approach((u * length) / rate);
        let hEnd = h + q / massFlow;

        // A phase boundary inside the zone: end the zone exactly there.
        let boundary = -1;
        const dryH = h + cp * (tDry - t);
        if (wet && dryH < hEnd && dryH >= h) {
          boundary = dryH;
          dried = true;
        }
        if (isVapour && hEnd < hV) boundary = hV;
        else if (isLiquid && hEnd > hL && !(boundary > 0 && boundary < hL)) boundary = hL;
        else if (!isVapour && !isLiquid) {
          if (hEnd > hV) boundary = hV;
          else if (hEnd < hL) boundary = hL;
        }
        if (boundary >= 0) {
          const fraction = lengthTo(rate, u, drive, (boundary - h) / cp);
          length = fraction < left ? (fraction > 0 ? fraction : 0) : left;
          q = massFlow * (boundary - h);
          hEnd = boundary;
        }

        const wallMean = length > 0 ? sinkT - q / (sinkK * length) : wetWall;
        wallSum += wallMean * length;
        let toAir = airConductance * (air.temperature - wallMean) * length;
        if (wet) {
          const transfer = airConductance / air.cp;
          toAir = transfer * (air.enthalpy - air.saturated.enthalpy(wetWall) - slope * (wallMean - wetWall)) * length;
          const water = transfer * (air.humidity - air.saturated.humidity(wallMean)) * length;
          if (water > 0) waterSum += water;
        }
        airHeat += toAir;
        heat += q;

        const volume = segmentVolume * length;
        if (single) {
          fluid.state(block, 0.5 * (h + hEnd), out);
          const held = volume * out[BLOCK.OUT_RHO];
          mass += held;
          massEnthalpy += held * 0.5 * (h + hEnd);
          if (isVapour) vapourShare += length / n;
          else liquidShare += length / n;
        } else {
          const voidShare = meanVoid(x, (hEnd - hL) / latent, zivi);
          const gas = volume * voidShare * rhoV;
          const liquid = volume * (1 - voidShare) * rhoL;
          mass += gas + liquid;
          massEnthalpy += gas * hV + liquid * hL;
        }
        h = hEnd;
        left -= length;
        if (boundary < 0) break;
      }
      this.wall[i] = wallSum / (left > 1e-10 && left < 1 ? 1 - left : 1);
      this.water[i] = waterSum;
      waterTotal += waterSum;
      fluid.state(block, h, out);
      this.temperature[i] = out[BLOCK.OUT_T];
      this.quality[i] = (h - hL) / latent;
    }
    this.hOut = h;
    this.heat = heat;
    this.airHeat = airHeat;
    this.waterTotal = waterTotal;
    this.mass = mass;
    this.energy = massEnthalpy - pressure * data.volume;
    this.vapourShare = vapourShare;
    this.liquidShare = liquidShare;
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
