/**
 * The circuit as one residual. Given discharge pressure, suction pressure and the enthalpy at the cylinder inlet it marches
 * compressor → condenser → liquid path → evaporator → suction line and says by how much flow, enthalpy and charge miss.
 * Both coils carry the compressor's through-flow; the metering device's flow enters only through the high side's mass.
 * Steady state and implicit time step differ only in `dt` (0 = steady).
 */
import type { FluidTable } from '../fluids/fluid';
import * as layout from '../fluids/layout';
import type { AirStream } from '../parts/airStream';
import { CoilMarch } from '../parts/coil';
import { Compressor, nozzleFlux } from '../parts/compressor';
import { tubeFlowBy } from '../parts/correlations';
import { limited } from '../parts/line';
import { LiquidPath } from '../parts/metering';
import { motorLossFactor, slipPerWatt } from '../parts/motor';
import { faceOfOwnAir } from '../parts/ownAir';
import { exchanged } from '../parts/reversingValve';
import type { TubeFlow } from '../parts/tubeFlow';
import { book } from './books';
import { meteringOpening } from './coldStore';
import { type Effective, type MachineData, motorVoltage } from './effective';
import type { Surroundings } from './surroundings';

const { BLOCK_SIZE, OUT_RHO, OUT_T, RHO_V, T_DEW } = layout;

/** Nitrogen gathers in the condenser while the machine runs: partial pressure there over the standing one (field review 9). */
const GATHERED = 2.5;
/** Condensing coefficient over its pure value falls with the gas share y as 1/(1 + k·y) (from memory, order of magnitude). */
const GAS_FILM = 3;
/** K within which the face of a recirculating condenser is found, and marches spent on it at most. */
const RECIRCULATION_CLOSE = 1e-9;
const RECIRCULATION_TRIES = 12;
const GRAVITY = 9.80665;

/** K of a hot thing that a badly laid liquid line touches: a heating pipe, sheet metal in the sun (ours). */
export const HOT_BESIDE = 333.15;

export class Circuit {
  readonly compressor: Compressor;
  readonly condenser: CoilMarch;
  readonly evaporator: CoilMarch;
  readonly path: LiquidPath;
  readonly low = new Float64Array(BLOCK_SIZE);
  readonly high = new Float64Array(BLOCK_SIZE);
  readonly condensing = new Float64Array(BLOCK_SIZE);
  readonly port = new Float64Array(BLOCK_SIZE);
  readonly evaporating = new Float64Array(BLOCK_SIZE);
  readonly outlet = new Float64Array(BLOCK_SIZE);
  readonly out = new Float64Array(8);
  private readonly tube: TubeFlow;

  pDischarge = 0.5;
  pSuction = 0.5;
  pCondenserIn = 0.5;
  pCondenserOut = 0.5;
  pLiquid = 0.5;
  pNitrogen = 0.5;
  pServiceSuction = 0.5;
  pEvaporatorOut = 0.5;
  pEvaporatorIn = 0.5;
  hLiquid = 0.5;
  hMetering = 0.5;
  tLiquidPort = 0.5;
  tEvaporatorOut = 0.5;
  hServiceSuction = 0.5;
  hCompressorIn = 0.5;
  /** in the suction pipe, kg/m3 */
  rhoSuction = 0.5;
  /** gas that enters the condenser; differs from the compressor's where a reversing valve or a long line lies between */
  hCondenserIn = 0.5;
  /** kg/s that leak through the reversing valve; enthalpy and pressure where the suction gas enters it */
  valveLeak = 0;
  hValveIn = 0.5;
  pValveIn = 0.5;
  /** discharge gas as it leaves the reversing valve */
  pValveOut = 0.5;
  hValveOut = 0.5;
  massFlow = 0.5;
  massHigh = 0.5;
  massLow = 0.5;
  energyHigh = 0.5;
  energyLow = 0.5;
  /** share of the receiver that liquid fills; 0 without one */
  receiverLevel = 0;
  /** W, positive out of the liquid line before its port / into it behind the drier / into the suction line */
  liquidLoss = 0.5;
  lineGain = 0.5;
  suctionGain = 0.5;
  dischargeLoss = 0;
  /** the streams by what their coil does, and whether the machine heats the room */
  readonly heating: boolean;
  readonly condenserAir: AirStream;
  readonly evaporatorAir: AirStream;

  constructor(
    readonly fluid: FluidTable,
    readonly data: MachineData,
    readonly effective: Effective,
    readonly outdoorAir: AirStream,
    readonly indoorAir: AirStream,
    private readonly standardPressure: number,
  ) {
    this.compressor = new Compressor(data.compressor);
    this.tube = tubeFlowBy(data.condenser.correlations);
    this.condenser = new CoilMarch(data.condenser);
    this.evaporator = new CoilMarch(data.evaporator);
    this.path = new LiquidPath(BLOCK_SIZE);
    this.heating = data.mode === 'heating';
    this.condenserAir = this.heating ? indoorAir : outdoorAir;
    this.evaporatorAir = this.heating ? outdoorAir : indoorAir;
  }

  /** The coils by where they stand. */
  get outdoorCoil(): CoilMarch {
    return this.heating ? this.evaporator : this.condenser;
  }

  get indoorCoil(): CoilMarch {
    return this.heating ? this.condenser : this.evaporator;
  }

  /**
   * @param residual receives: flow defect (share of flow), enthalpy defect (/1e5 J/kg), charge defect (share of charge)
   * Throws PhysicsError when a pressure or temperature leaves the tables.
   */
  evaluate(pHigh: number, pLow: number, hCylinder: number, env: Surroundings, residual: Float64Array): void {
    const { fluid, data, effective, compressor, condenser, evaporator, path, out } = this;
    const lines = data.lines;
    const steady = env.dt <= 0;

    fluid.setPressure(pLow, this.low);
    fluid.setPressure(pHigh, this.high);
    const motor = data.motor;
    const weak = effective.weakCapacitor;
    compressor.run(
      fluid,
      this.low,
      this.high,
      hCylinder,
      data.compressor.ratedSpeed * env.speed,
      effective.leakArea,
      effective.friction * motorLossFactor(motor, weak, motorVoltage(effective)),
      slipPerWatt(motor, weak, motorVoltage(effective)),
      env.outdoor,
      steady ? Number.NaN : env.shell,
      env.dt,
      effective.displacement,
    );
    // what leaks through the reversing valve never reaches the coils
    const throughCompressor = compressor.massFlow;
    this.valveLeak =
      effective.reversingLeak > 0
        ? Math.min(effective.reversingLeak * nozzleFlux(pHigh, compressor.rhoDischarge, pLow), 0.9 * throughCompressor)
        : 0;
    const m = throughCompressor - this.valveLeak;
    const mm = m * m;
    this.massFlow = m;
    this.pDischarge = pHigh;
    this.pSuction = pLow;

    const valve = data.reversingValve;
    const valveHigh = valve ? valve.dischargeDrop * effective.reversingDrop : 0;
    const valveLow = valve ? valve.suctionDrop * effective.reversingDrop : 0;
    // the vapour line's service valve: in heating the hot gas passes it
    const throttled = this.heating ? effective.suctionValve - lines.inletDrop : 0;
    this.pCondenserIn = pHigh - ((lines.dischargeDrop + valveHigh + throttled) * mm) / compressor.rhoDischarge;
    const dropHigh = data.condenser.pressureDrop * mm * (0.5 / this.high[RHO_V]);
    const pCondenserOut = this.pCondenserIn - dropHigh;
    fluid.state(this.low, compressor.hSuction, out);
    const rhoSuction = out[OUT_RHO];
    let hBeforeValve = compressor.hSuction;
    this.hCondenserIn = compressor.hDischarge;
    if (valve) {
      const across = exchanged(valve, m, compressor.tDischarge - out[OUT_T]);
      hBeforeValve = (throughCompressor * compressor.hSuction - this.valveLeak * compressor.hDischarge - across) / m;
      this.hCondenserIn -= across / m;
    }
    // where the vapour line begins, behind its service valve
    this.pValveOut = pHigh - ((valveHigh + throttled) * mm) / compressor.rhoDischarge;
    this.hValveOut = this.hCondenserIn;
    this.dischargeLoss = effective.dischargeUa
      ? limited(effective.dischargeUa, m) * (compressor.tDischarge - env.outdoor)
      : 0;
    this.hCondenserIn -= this.dischargeLoss / m;
    this.pNitrogen = effective.nitrogen * GATHERED * this.standardPressure * (this.high[T_DEW] / 298.15);
    const pCondensing = this.pCondenserIn - 0.5 * dropHigh - this.pNitrogen;
    fluid.setPressure(pCondensing, this.condensing);
    fluid.setTransport(this.condensing);
    const condenserTube = data.condenser;
    this.tube.prepare(
      this.condensing,
      m / (condenserTube.circuits * tubeArea(condenserTube.diameter)),
      condenserTube.diameter,
      condenserTube.enhancement,
      pCondensing / fluid.pCritical,
    );
    const gasShare = this.pNitrogen / pHigh;
    this.condense(env, 1 / (1 + GAS_FILM * gasShare));

    this.pLiquid = pCondenserOut;
    if (lines.beforePort) {
      fluid.setPressure(pCondenserOut, this.port);
      fluid.state(this.port, condenser.hOut, out);
      const rho = out[OUT_RHO];
      this.pLiquid -= (effective.line * mm) / rho + rho * GRAVITY * lines.beforePort.lift;
    }
    this.pCondenserOut = pCondenserOut;
    fluid.setPressure(this.pLiquid, this.port);
    fluid.state(this.port, condenser.hOut, out);
    this.tLiquidPort = out[OUT_T];
    this.liquidLoss = limited(lines.liquidUa, m) * (out[OUT_T] - env.outdoor);
    this.lineGain = limited(effective.liquidLineUa, m) * (HOT_BESIDE - out[OUT_T]);
    this.hLiquid = condenser.hOut - (lines.beforePort ? this.liquidLoss - this.lineGain : this.liquidLoss) / m;
    this.hMetering = lines.beforePort ? this.hLiquid : this.hLiquid + this.lineGain / m;

    this.rhoSuction = rhoSuction;
    this.pValveIn = pLow + (valveLow * mm) / rhoSuction;
    const serviceValve = this.heating ? lines.inletDrop : effective.suctionValve;
    this.pServiceSuction = this.pValveIn + (serviceValve * mm) / rhoSuction;
    this.pEvaporatorOut = this.pServiceSuction + (effective.suctionLine * mm) / rhoSuction;
    const dropLow = data.evaporator.pressureDrop * mm * (0.5 / this.low[RHO_V]);
    this.pEvaporatorIn = this.pEvaporatorOut + dropLow;
    const pEvaporating = this.pEvaporatorOut + 0.5 * dropLow;
    fluid.setPressure(pEvaporating, this.evaporating);
    fluid.setTransport(this.evaporating);
    const evaporatorTube = data.evaporator;
    this.tube.prepare(
      this.evaporating,
      m / (evaporatorTube.circuits * tubeArea(evaporatorTube.diameter)),
      evaporatorTube.diameter,
      evaporatorTube.enhancement,
      pEvaporating / fluid.pCritical,
    );
    this.evaporate(env);

    fluid.setPressure(this.pEvaporatorOut, this.outlet);
    fluid.state(this.outlet, evaporator.hOut, out);
    this.tEvaporatorOut = out[OUT_T];
    this.suctionGain = limited(effective.suctionUa, m) * (env.outdoor - out[OUT_T]);
    this.hServiceSuction = evaporator.hOut + (lines.suctionShare * this.suctionGain) / m;
    this.hCompressorIn = evaporator.hOut + this.suctionGain / m;
    this.hValveIn = hBeforeValve;

    path.solve(
      fluid,
      data.liquid,
      this.port,
      this.hLiquid,
      this.hMetering,
      this.pEvaporatorIn,
      effective.drier,
      lines.beforePort ? lines.beforePort.behind : effective.line,
      meteringOpening(effective, env.opening, env.passing),
      m,
    );

    book(this, rhoSuction, hCylinder, env.pool);
    const reference = m > 1e-4 ? m : 1e-4;
    residual[0] = steady
      ? (m - path.flow) / reference
      : (m - path.flow - (this.massHigh - env.massHigh) / env.dt) / reference;
    residual[1] = (this.hCompressorIn - hBeforeValve) / 1e5;
    residual[2] = (this.massHigh + this.massLow + env.pool - effective.charge) / effective.charge;
  }

  /**
   * The condenser in its air. Where it draws in a share r of its own outlet air, its face is warmer than outdoors by
   * r/(1−r) times the air's rise, which depends on the face: one root, nearly linear, by secants from outdoor air.
   */
  private condense(env: Surroundings, gasPenalty: number): void {
    const { outdoorAir } = this;
    const share = this.effective.recirculated;
    if (share === 0 || this.heating) {
      this.marchCondenser(env, gasPenalty);
      return;
    }
    const returned = share / ((1 - share) * outdoorAir.massFlow * outdoorAir.cp);
    const misses = (face: number): number => {
      outdoorAir.temperature = face;
      this.marchCondenser(env, gasPenalty);
      return env.outdoor - returned * this.condenser.airHeat - face;
    };
    let before = env.outdoor;
    let missedBefore = misses(before);
    let face = before + 0.7 * missedBefore;
    for (let k = 0; k < RECIRCULATION_TRIES; k++) {
      const missed = misses(face);
      const step = (missed * (face - before)) / (missedBefore - missed);
      if (!(step > RECIRCULATION_CLOSE || step < -RECIRCULATION_CLOSE)) return;
      before = face;
      missedBefore = missed;
      face += step;
    }
  }

  private marchCondenser(env: Surroundings, gasPenalty: number): void {
    this.condenser.march(
      this.fluid,
      this.condensing,
      this.tube,
      this.condenserAir,
      this.massFlow,
      this.hCondenserIn,
      env.dt <= 0 ? null : env.condenserWall,
      env.dt,
      gasPenalty,
    );
  }

  /** The evaporator in its air; outdoors it may draw in part of its own outlet air, colder and drier than the weather. */
  private evaporate(env: Surroundings): void {
    const { outdoorAir, evaporator } = this;
    const share = this.effective.recirculated;
    if (share === 0 || !this.heating) {
      this.marchEvaporator(env);
      return;
    }
    faceOfOwnAir(outdoorAir, env.outdoor, env.outdoorHumidity, share, () => {
      this.marchEvaporator(env);
      return { heat: evaporator.airHeat, water: evaporator.waterTotal };
    });
  }

  private marchEvaporator(env: Surroundings): void {
    this.evaporator.march(
      this.fluid,
      this.evaporating,
      this.tube,
      this.evaporatorAir,
      this.massFlow,
      this.hMetering,
      env.dt <= 0 ? null : env.evaporatorWall,
      env.dt,
      1,
    );
  }

  /** Saturated vapour density at a pressure, kg/m3. */
  fluidVapourDensity(pressure: number): number {
    this.fluid.setPressure(pressure, this.outlet);
    return this.outlet[RHO_V];
  }
}

function tubeArea(diameter: number): number {
  return 0.7853981633974483 * diameter * diameter;
}
