/**
 * Many exchangers on one circuit, as one residual: compressor → hot gas → whatever condenses → liquid header → whatever
 * boils → suction. Four unknowns whatever the number of units: discharge, suction and liquid header pressure and the
 * enthalpy at the cylinder. Every branch solves its own valve against its own coil inside.
 *
 * In a time step the compressor's flow goes through the boiling coils in the proportion of their valves' flows; what the
 * valves really pass enters through the high side's mass only. In the steady state both are the same.
 */
import type { FluidTable } from '../fluids/fluid';
import * as L from '../fluids/layout';
import { ln } from '../math/elementary';
import { Compressor, short } from '../parts/compressor';
import { slipRatio } from '../parts/correlations';
import { motorLossFactor, slipPerWatt } from '../parts/motor';
import { liquidHeld } from '../parts/suctionVessel';
import { meanVoid } from '../parts/voidFraction';
import type { Effective } from '../solve/effective';
import type { Branch, Walls } from './branch';
import type { NetworkData } from './data';
import { Subcooler } from './subcooler';

const { BLOCK_SIZE, H_L, H_V, OUT_Q, OUT_RHO, OUT_T, P, RHO_L, RHO_V, T_DEW } = L;
const GRAVITY = 9.80665;
/** Nitrogen gathers in the condensers while the machine runs: partial pressure there over the standing one (field review 9). */
const GATHERED = 2.5;

/** K below which the superheat that the modules' valves hold is never lowered for the sake of the discharge */
const WETTEST = 12;

/** Which module a shut module valve stands in. */
export const SHUT_MODULE = 1;

/** What a branch is asked to do in one evaluation. */
export interface Task {
  readonly role: 'evaporator' | 'condenser' | 'idle';
  /** opening held, or null where steady control finds it (superheat of an evaporator, subcooling of a condenser) */
  readonly opening: number | null;
  /** K that its sensors add to the superheat they show */
  readonly adrift: number;
  readonly superheat: number;
}

export class Drive {
  outdoor = 308.5;
  speed = 1.01;
  /** 0 = steady */
  dt = 0.5;
  shell = Number.NaN;
  massHigh = 0.5;
  pool = 0;
  /** share of their opening by subcooling that draining modules have */
  throttle = 1;
  tasks: readonly Task[] = [];
  walls: readonly (Walls | null)[] = [];
}

export class Network {
  readonly compressor: Compressor;
  readonly subcooler: Subcooler;
  readonly branches: readonly Branch[];
  readonly low = new Float64Array(BLOCK_SIZE);
  readonly high = new Float64Array(BLOCK_SIZE);
  /** suction service port, suction and hot header at the branching point, liquid port outdoors, liquid header */
  readonly service = new Float64Array(BLOCK_SIZE);
  readonly suction = new Float64Array(BLOCK_SIZE);
  readonly hot = new Float64Array(BLOCK_SIZE);
  readonly port = new Float64Array(BLOCK_SIZE);
  readonly liquid = new Float64Array(BLOCK_SIZE);
  private readonly out = new Float64Array(L.OUT_SIZE);

  massFlow = 0.5;
  /** in the suction pipe, kg/m3 */
  rhoSuction = 0.5;
  /** what the valves pass from the liquid header to the low side, and what condenses, kg/s */
  valveFlow = 0.5;
  condensed = 0.5;
  bypassFlow = 0;
  hLiquid = 2.5e5;
  hPort = 2.5e5;
  hCompressorIn = 4.2e5;
  hSuctionPort = 4.2e5;
  suctionGain = 0;
  nitrogen = 0;
  massHigh = 0.5;
  massLow = 0.5;
  energyHigh = 0.5;
  energyLow = 0.5;
  /** kg and J (before p·V) in a m3 of liquid pipe */
  private liquidHeld = 0.5;
  private liquidEnergy = 0.5;

  constructor(
    readonly fluid: FluidTable,
    readonly data: NetworkData,
    readonly effective: Effective,
    readonly modules: readonly Branch[],
    readonly units: readonly Branch[],
    private readonly standardPressure: number,
  ) {
    this.compressor = new Compressor(data.compressor);
    this.subcooler = new Subcooler(data.subcooler);
    this.branches = [...modules, ...units];
  }

  /** Whether all that condenses are the outdoor modules: their own compressors feed them, their valves are wide open. */
  get plainCooling(): boolean {
    return this.modules.some((b) => b.role === 'condenser') && this.units.every((b) => b.role !== 'condenser');
  }

  /**
   * @param r receives the defects: flow through the low side, enthalpy, charge, flow through the high side
   * Throws PhysicsError when a pressure or temperature leaves the tables.
   */
  evaluate(pHigh: number, pLow: number, hCylinder: number, pLiquid: number, drive: Drive, r: Float64Array): void {
    const { fluid, data, effective, compressor } = this;
    const steady = drive.dt <= 0;
    fluid.setPressure(pLow, this.low);
    fluid.setPressure(pHigh, this.high);
    const { motor } = data;
    compressor.run(
      fluid,
      this.low,
      this.high,
      hCylinder,
      data.compressor.ratedSpeed * drive.speed,
      effective.leakArea,
      motorLossFactor(motor, 0, effective.voltage),
      slipPerWatt(motor, 0, effective.voltage),
      drive.outdoor,
      steady ? Number.NaN : drive.shell,
      drive.dt,
      effective.displacement,
    );
    const m = compressor.massFlow;
    this.massFlow = m;
    this.nitrogen = effective.nitrogen * GATHERED * this.standardPressure * (this.high[T_DEW] / 298.15);
    for (let i = 0; i < this.branches.length; i++) this.branches[i].role = drive.tasks[i].role;
    const plain = this.plainCooling;

    this.gasHeaders(m, plain);
    r[3] = plain ? this.condenseOutdoors(m, pLiquid, drive) : this.condenseByValves(m, pLiquid, drive);
    fluid.setPressure(pLiquid, this.liquid);
    this.boil(m - this.bypassFlow, drive, plain);
    this.bookMass(hCylinder, drive.pool);

    const through = m - this.valveFlow - this.bypassFlow;
    const reference = m > 1e-4 ? m : 1e-4;
    r[0] = (steady ? through : through - (this.massHigh - drive.massHigh) / drive.dt) / reference;
    r[1] = (this.hCompressorIn - compressor.hSuction) / 1e5;
    r[2] = (this.massHigh + this.massLow + drive.pool - effective.charge) / effective.charge;
  }

  /** Pressures where the pipes branch: the long gas pipe carries suction in cooling, hot gas in heating. */
  private gasHeaders(m: number, plain: boolean): void {
    const { fluid, data } = this;
    const { gasDrop } = data.pipes;
    const boilsIndoors = this.units.some((b) => b.role === 'evaporator');
    fluid.state(this.low, this.compressor.hSuction, this.out);
    this.rhoSuction = this.out[OUT_RHO];
    fluid.setPressure(this.low[P] + (this.effective.suctionValve * m * m) / this.rhoSuction, this.service);
    const drop = (gasDrop * m * m) / this.service[RHO_V];
    fluid.setPressure(this.service[P] + (boilsIndoors ? drop : 0), this.suction);
    const hotDrop = plain ? 0 : (gasDrop * m * m) / this.high[RHO_V];
    fluid.setPressure(this.high[P] - hotDrop, this.hot);
  }

  /** Each module condenses its share; liquid port, exchanger and long pipe follow. Returns the header's defect. */
  private condenseOutdoors(m: number, pLiquid: number, drive: Drive): number {
    const { fluid, modules, compressor, data, effective } = this;
    let active = 0;
    for (const b of modules) if (b.role === 'condenser') active++;
    let h = 0;
    let p = 0;
    for (let i = 0; i < modules.length; i++) {
      const b = modules[i];
      if (b.role !== 'condenser') {
        if (effective.moduleShut > 0 && i === SHUT_MODULE) b.flood(this.high);
        else b.rest(this.low);
        continue;
      }
      b.condense(m / active, compressor.hDischarge, this.high, this.nitrogen, drive.walls[i], drive.dt);
      b.valveFlow = b.flow;
      b.opening = 1;
      h += b.hOut / active;
      p += b.pOut / active;
    }
    this.condensed = m;
    this.hPort = h;
    fluid.setPressure(p, this.port);
    this.subcooler.run(fluid, this.port, h, m, this.service);
    this.bypassFlow = this.subcooler.bypassFlow;
    this.hLiquid = this.subcooler.hOut;
    fluid.state(this.port, this.hLiquid, this.out);
    const rho = this.out[OUT_RHO];
    const rest = m - this.bypassFlow;
    const arrives = p - ((effective.line + effective.drier) * rest * rest) / rho - rho * GRAVITY * data.pipes.lift;
    return ln(pLiquid / (arrives > 1e3 ? arrives : 1e3));
  }

  /** Units, and outdoor modules of a three-pipe machine, drain through their valves into the liquid header. */
  private condenseByValves(m: number, pLiquid: number, drive: Drive): number {
    const { compressor, modules, branches } = this;
    let sum = 0;
    let heat = 0;
    for (let i = 0; i < branches.length; i++) {
      const b = branches[i];
      if (b.role !== 'condenser') continue;
      const { opening } = drive.tasks[i];
      const header = i >= modules.length ? this.hot : this.high;
      const { stroke } = b.effective;
      const share = i < modules.length ? drive.throttle : stroke;
      const law = opening === null ? (sub: number) => share * this.drainLaw(sub) : () => opening;
      b.drain(compressor.hDischarge, header, this.nitrogen, pLiquid, law, drive.walls[i], drive.dt);
      sum += b.flow;
      heat += b.flow * b.hOut;
    }
    this.condensed = sum;
    this.bypassFlow = 0;
    this.subcooler.stop();
    this.hLiquid = sum > 0 ? heat / sum : this.high[H_L];
    this.hPort = this.hLiquid;
    return (m - sum) / (m > 1e-4 ? m : 1e-4);
  }

  /** K that the discharge's pressure sensor adds to what the controller takes for subcooling. */
  private misread(): number {
    const offset = this.effective.drift.dischargePressure;
    return offset === 0 ? 0 : this.fluid.tBubble(this.high[P] + offset) - this.fluid.tBubble(this.high[P]);
  }

  /** Opening of a draining valve over subcooling: proportional, so that charge stays the one thing that decides it. */
  readonly drainLaw = (subcooling: number): number => {
    const { subcoolingTarget, subcoolingOpening, subcoolingGain, minOpening } = this.data.control;
    const opening = subcoolingOpening + subcoolingGain * (subcooling + this.misread() - subcoolingTarget);
    return opening < minOpening ? minOpening : opening > 1 ? 1 : opening;
  };

  /** Superheat that a boiling branch's valve is to hold: outdoors less where the discharge gets hot, into wet gas, K. */
  superheatWanted(index: number, target: number): number {
    if (index >= this.modules.length) return target;
    const over = this.compressor.tDischarge - this.data.control.wetFrom;
    // rounded off over a few kelvin, so that a solver meets no kink; the valve never asks for more than rather wet gas
    const wet = 0.5 * (over + Math.sqrt(over * over + 4));
    return target - (WETTEST * wet) / (WETTEST + wet);
  }

  /** @param through kg/s that boil in all */
  private boil(through: number, drive: Drive, plain: boolean): void {
    const { fluid, branches, modules, data, effective, liquid, out } = this;
    const steady = drive.dt <= 0;
    const { minOpening } = data.control;
    const mains = effective.line + effective.drier;
    let areas = 0;
    for (let i = 0; i < branches.length; i++) {
      const b = branches[i];
      if (b.role !== 'evaporator') continue;
      const { opening } = drive.tasks[i];
      if (opening !== null) b.opening = opening;
      areas += b.opening * b.data.valve.area;
    }
    let valves = 0;
    for (let i = 0; i < branches.length; i++) {
      const b = branches[i];
      const indoors = i >= modules.length;
      const header = indoors ? this.suction : this.service;
      if (b.role === 'idle' && !(plain && !indoors)) b.rest(header);
      if (b.role !== 'evaporator') continue;
      const { opening, adrift, superheat } = drive.tasks[i];
      // outdoors the long liquid pipe lies before the valves, shared by all that boil there
      const drier = indoors ? 0 : mains * modules.length * modules.length;
      const wanted = this.superheatWanted(i, superheat);
      if (steady && opening === null) b.regulate(liquid, this.hLiquid, header, drier, wanted, adrift, minOpening);
      else if (opening !== null) {
        if (steady) b.hold(liquid, this.hLiquid, header, drier, opening);
        else b.meter(liquid, this.hLiquid, header, drier, (through * opening * b.data.valve.area) / areas);
      }
      valves += b.valveFlow;
    }
    let flow = 0;
    let heat = 0;
    for (let i = 0; i < branches.length; i++) {
      const b = branches[i];
      if (b.role !== 'evaporator') continue;
      const header = i >= modules.length ? this.suction : this.service;
      if (!steady) b.evaporate((through * b.valveFlow) / valves, this.hLiquid, header, drive.walls[i], drive.dt);
      flow += b.flow;
      heat += b.flow * b.hOut;
    }
    this.valveFlow = valves;
    const hGas = flow > 0 ? heat / flow : this.low[H_V];
    fluid.state(this.suction, hGas, out);
    const ua = data.pipes.gasUa / (1 + data.pipes.gasUa / (1000 * (flow > 1e-4 ? flow : 1e-4)));
    this.suctionGain = plain ? ua * (drive.outdoor - out[OUT_T]) : 0;
    const bypass = this.bypassFlow;
    this.hSuctionPort = hGas + this.suctionGain / (flow > 1e-4 ? flow : 1e-4);
    this.hCompressorIn = (heat + this.suctionGain + bypass * this.subcooler.hBypass) / (flow + bypass);
  }

  /** Mass and internal energy of both sides (m h − p V, part by part). */
  private bookMass(hCylinder: number, pool: number): void {
    const { fluid, data, compressor, branches, out } = this;
    const { pipes } = data;
    this.bookLiquid();
    fluid.state(this.suction, this.hSuctionPort, out);
    const rhoSuction = out[OUT_RHO];
    const rhoHot = compressor.rhoDischarge;
    const heatsIndoors = this.units.some((b) => b.role === 'condenser');
    let hotVolume = pipes.dischargeVolume + (data.threePipes ? pipes.hotVolume : 0);
    let coldVolume = pipes.suctionVolume;
    if (heatsIndoors && !data.threePipes) hotVolume += pipes.gasVolume;
    else coldVolume += pipes.gasVolume;
    let liquidVolume = pipes.liquidVolume;
    let massHigh = 0;
    let massLow = 0;
    let energyHigh = 0;
    let energyLow = 0;
    for (let i = 0; i < branches.length; i++) {
      const b = branches[i];
      liquidVolume += b.data.liquidVolume;
      if (b.role === 'condenser' || b.flooded) {
        hotVolume += b.data.gasVolume;
        massHigh += b.mass;
        energyHigh += b.energy;
      } else {
        coldVolume += b.data.gasVolume;
        massLow += b.mass;
        energyLow += b.energy;
      }
    }
    massHigh += hotVolume * rhoHot + liquidVolume * this.liquidHeld;
    energyHigh +=
      hotVolume * (rhoHot * compressor.hDischarge - this.high[P]) + liquidVolume * (this.liquidEnergy - this.liquid[P]);
    fluid.state(this.low, hCylinder, out);
    const shell = data.compressor.shellVolume * out[OUT_RHO];
    const wetness = short(this.low[H_V] - this.hCompressorIn) / (this.low[H_V] - this.low[H_L]);
    const held = liquidHeld(data.suctionVessel, wetness * this.massFlow);
    massLow += coldVolume * rhoSuction + shell + held;
    energyLow +=
      coldVolume * (rhoSuction * this.hSuctionPort - this.suction[P]) +
      shell * hCylinder -
      this.low[P] * data.compressor.shellVolume +
      (pool + held) * (this.low[H_L] - this.low[P] / this.low[RHO_L]);
    this.massHigh = massHigh;
    this.massLow = massLow;
    this.energyHigh = energyHigh;
    this.energyLow = energyLow;
  }

  /** What a m3 of liquid pipe holds: with gas in it the liquid lags behind, as in the coils. */
  private bookLiquid(): void {
    const { fluid, liquid, hLiquid, out } = this;
    fluid.state(liquid, hLiquid, out);
    const quality = out[OUT_Q];
    if (quality <= 0 || quality >= 1) {
      this.liquidHeld = out[OUT_RHO];
      this.liquidEnergy = out[OUT_RHO] * hLiquid;
      return;
    }
    const gas = meanVoid(quality, quality, slipRatio(liquid, this.modules[0].data.coil.correlations));
    this.liquidHeld = gas * liquid[RHO_V] + (1 - gas) * liquid[RHO_L];
    this.liquidEnergy = gas * liquid[RHO_V] * liquid[H_V] + (1 - gas) * liquid[RHO_L] * liquid[H_L];
  }

  /** Outlet temperature of the liquid at the outdoor port, K. */
  portTemperature(): number {
    this.fluid.state(this.port, this.hLiquid, this.out);
    return this.out[OUT_T];
  }
}
