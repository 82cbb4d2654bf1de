/** A machine with several indoor units, compiled once: steady states, time steps, snapshots. */
import { PhysicsError } from '../errors';
import { WALL_FIELDS } from '../parts/coil';
import { plantDescription } from '../plants';
import { runningControls } from '../solve/compile';
import type {
  ControllerState,
  Controls,
  Faults,
  Machine,
  MachineSetup,
  MachineState,
  PlantDescription,
  Snapshot,
  UnitDemand,
} from '../types';
import { advance, pipesNow, restore, runningWord } from './advance';
import { unitStatesOf } from './bus';
import { blowsAlone, compileNetwork, demandsOf, searchStart } from './design';
import { fanShare } from './exchange';
import { heldNetwork } from './held';
import { isSlow } from './oilReturn';
import { type Found, findSteady } from './outdoors';
import type { NetworkRig } from './rig';
import { networkSnapshot } from './snapshot';
import { frostFound, standingNetwork } from './standing';
import type { NetworkState, Room } from './state';
import { stillSnapshot } from './stillSnapshot';
import { heldBy } from './supply';

/** K/s below which nothing that an instrument can show moves any more. */
const SETTLED_RATE = 1e-4;
/** A repair that changes the charge by more than this share finds the machine standing. */
const SMALL_CHARGE = 0.06;
const WATER = 2.501e6;

function unloaded(rooms: readonly Room[]): Room[] {
  return rooms.map((room) => ({ ...room, load: 0, waterLoad: 0 }));
}

export class NetworkMachine implements Machine {
  readonly plant: PlantDescription;
  readonly defaultControls: Controls;
  private readonly rig: NetworkRig;
  private readonly charge: number;
  /**
   * Rooms with the loads of the steady states solved so far, by controls: a machine started from standing need not have
   * its own solved again. They are what solving again would give, to the last bit.
   */
  private readonly kept = new Map<string, Room[]>();

  constructor(readonly setup: MachineSetup) {
    this.plant = plantDescription(setup.plant);
    this.defaultControls = runningControls(this.plant);
    this.rig = compileNetwork(setup);
    this.charge = this.rig.effective.machine.charge;
  }

  steady(controls?: Partial<Controls>): Snapshot {
    const all = { ...this.defaultControls, ...controls };
    const held = all.running ? heldBy(this.rig) : null;
    if (held) {
      const { rooms } = standingNetwork(this.rig, all, this.charge);
      return stillSnapshot(this.rig, heldNetwork(this.rig, all, held, this.charge, rooms));
    }
    const { found, demands } = this.solve(all);
    return networkSnapshot(this.rig, {
      time: 0,
      controller: this.steadyWord(all, found, demands),
      demands,
      unitStates: unitStatesOf(this.rig, demands),
      frost: frostFound(this.rig),
      outdoorFan: found.outdoors.count > 0 ? fanShare(found.outdoors.role, found.exchange) : 0,
    });
  }

  start(from: 'settled' | 'standing', controls?: Partial<Controls>): NetworkState {
    const all = { ...this.defaultControls, ...controls };
    const { rig } = this;
    if (from === 'standing') return { ...standingNetwork(rig, all, this.charge), ...this.roomsKeptUp(all) };
    const held = all.running ? heldBy(rig) : null;
    if (held) return heldNetwork(rig, all, held, this.charge, this.roomsKeptUp(all).rooms);
    const { x, found, demands } = this.solve(all);
    const { network } = rig;
    const { branches, compressor } = network;
    const walls = branches.map((b) =>
      b.role === 'idle'
        ? new Array<number>(b.data.coil.segments * WALL_FIELDS).fill(b.air.temperature)
        : Array.from(b.march.walls),
    );
    const openings = branches.map((b) => b.opening);
    const flows = branches.map((b) => b.flow);
    const rooms = this.roomsNow();
    const frost = frostFound(rig);
    const { exchange, outdoors } = found;
    return {
      time: 0,
      regime: 'flow',
      turning: true,
      x: Array.from(x.subarray(0, 4)),
      jacobian: null,
      walls,
      openings,
      flows,
      shell: compressor.shell,
      inputs: {
        dt: 0,
        walls,
        shell: compressor.shell,
        massHigh: network.massHigh,
        pool: 0,
        openings,
        flows,
        speed: rig.drive.speed,
        exchange,
        rooms,
        frost,
        controls: all,
        fans: true,
      },
      charge: this.charge,
      massHigh: network.massHigh,
      pool: 0,
      energyHigh: network.energyHigh,
      energyLow: network.energyLow,
      debtHigh: 0,
      debtLow: 0,
      speed: rig.drive.speed,
      speedError: 0,
      exchange,
      outdoors,
      outdoorsFor: 0,
      valveErrors: branches.map(() => 0),
      gasSensed: branches.map((b) => b.tGas),
      liquidSensed: branches.map((b) => b.tLiquid),
      dischargeSensed: compressor.tDischarge,
      pipes: pipesNow(rig),
      rooms,
      frost,
      freezingFor: 0,
      meltingFor: null,
      slowFor: 0,
      sweepingFor: null,
      turnedFrom: null,
      demands,
      routing: demands,
      unitStates: unitStatesOf(rig, demands),
      controller: this.steadyWord(all, found, demands),
      restartIn: 0,
      runningFor: 3600,
      limitFor: 0,
      trips: 0,
      handOver: 0,
      rate: 0,
    };
  }

  step(state: MachineState, controls: Controls, dt: number): NetworkState {
    return advance(this.rig, state as NetworkState, controls, dt);
  }

  snapshot(state: MachineState): Snapshot {
    const s = state as NetworkState;
    if (s.regime === 'still') return stillSnapshot(this.rig, s);
    restore(this.rig, s);
    return networkSnapshot(this.rig, {
      time: s.time,
      controller: s.controller,
      demands: s.demands,
      unitStates: s.unitStates,
      frost: s.frost,
      outdoorFan: s.outdoors.count > 0 ? fanShare(s.outdoors.role, s.inputs.exchange) : 0,
    });
  }

  settled(state: MachineState): boolean {
    const s = state as NetworkState;
    const waits = s.controller === 'room-satisfied' || s.unitStates.includes('room-satisfied');
    // a machine at low speed is on its way to fetching its oil
    if (isSlow(s)) return false;
    return s.rate < SETTLED_RATE && (s.regime === 'flow' ? !waits : !s.turning && s.restartIn === 0 && !waits);
  }

  repaired(state: MachineState, faults: Faults): { machine: Machine; state: NetworkState } {
    const s = state as NetworkState;
    const machine = new NetworkMachine({ ...this.setup, faults });
    const before = this.rig.effective.machine;
    const after = machine.rig.effective.machine;
    const change = machine.charge - this.charge;
    const opened =
      before.drier !== after.drier ||
      before.line !== after.line ||
      before.leakArea !== after.leakArea ||
      before.nitrogen !== after.nitrogen ||
      before.moduleShut !== after.moduleShut ||
      this.rig.effective.units.some((unit, i) => {
        const mended = machine.rig.effective.units[i];
        return !Object.is(unit.stuckOpening, mended.stuckOpening) || unit.portsCrossed !== mended.portsCrossed;
      }) ||
      Math.abs(change) > SMALL_CHARGE * this.charge;
    if (opened) {
      const standing = standingNetwork(machine.rig, this.defaultControls, machine.charge);
      return { machine, state: { ...standing, time: s.time, rooms: s.rooms, frost: s.frost } };
    }
    if (change === 0) return { machine, state: s };
    // gas goes in or out at the suction port and carries its enthalpy
    const enthalpy = this.snapshot(s).stations['suction-port'].enthalpy;
    return {
      machine,
      state: { ...s, charge: s.charge + change, energyLow: s.energyLow + change * enthalpy, rate: 1 },
    };
  }

  /** The rooms as found, with the loads that the machine keeps up with where its network stands. */
  private roomsNow(): Room[] {
    return this.rig.network.units.map((b) => {
      const { temperature, humidity } = b.air;
      const idle = b.role === 'idle';
      const heat = idle ? 0 : b.march.airHeat;
      const water = idle ? 0 : b.march.waterTotal;
      const load = heat - water * WATER - b.fan.power;
      return { temperature, humidity, load, waterLoad: water, temperatureFound: temperature, humidityFound: humidity };
    });
  }

  /** The same for a machine found standing; rooms without a load where it has no steady state. */
  private roomsKeptUp(all: Controls): { rooms: Room[] } {
    const running = { ...all, running: true };
    const known = this.kept.get(JSON.stringify(running));
    if (known) return { rooms: known };
    try {
      this.solve(running);
      return { rooms: this.roomsNow() };
    } catch (error) {
      if (!(error instanceof PhysicsError)) throw error;
      return { rooms: unloaded(this.roomsNow()) };
    }
  }

  /** Solve the steady state; the rig's network is left at the solution. */
  private solve(all: Controls): { x: Float64Array; found: Found; demands: UnitDemand[] } {
    const { rig, setup } = this;
    if (!all.running) {
      throw new PhysicsError('bad-input', 'running: a machine that is off has no steady flow; start it standing');
    }
    rig.effective.machine.charge = this.charge;
    rig.ice = rig.iceFound();
    const demands = demandsOf(rig, setup.conditions.mode, all.units);
    const room = rig.roomFound();
    demands.forEach((demand, i) => {
      const blows = demand !== 'off' || blowsAlone(rig, i, all.units);
      rig.setUnitAir(i, room, all.indoorFan === 'low', blows && all.indoorFanRunning);
    });
    const warm = searchStart(setup, all.fixedSpeed);
    try {
      const found = findSteady(rig, demands, all.valveHold, all.fixedSpeed, warm);
      this.kept.set(JSON.stringify(all), this.roomsNow());
      return { x: found.x, found, demands };
    } catch (error) {
      if (error instanceof PhysicsError) this.kept.set(JSON.stringify(all), unloaded(this.roomsNow()));
      throw error;
    }
  }

  /** What the controller would say of itself in this steady state (a limit that it would stop on included). */
  private steadyWord(all: Controls, found: Found, demands: readonly UnitDemand[]): ControllerState {
    const { network, data, drive } = this.rig;
    const { limits } = data;
    if (network.high[0] > limits.highPressure) return 'stopped-on-high-pressure';
    if (network.low[0] < limits.lowPressure) return 'stopped-on-low-pressure';
    if (network.compressor.tDischarge > limits.dischargeTemp) return 'stopped-on-discharge-heat';
    return runningWord(
      this.rig,
      { demands, outdoors: found.outdoors, speed: drive.speed, meltingFor: null, sweepingFor: null },
      all,
    );
  }
}
