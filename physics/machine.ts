/**
 * One machine, compiled once: steady states, time steps, snapshots. The only door of the physics besides the fluids.
 */
import { PhysicsError } from './errors';
import { NetworkMachine } from './network/machine';
import { WALL_FIELDS } from './parts/coil';
import { isNetwork, plantDescription } from './plants';
import { flowSnapshot } from './snapshot';
import { advance, restore } from './solve/advance';
import { freshColdStore, STREAM } from './solve/coldStore';
import { compile, compileFor, designPoint, type Rig, runningControls } from './solve/compile';
import { bulbTruth, sensorTruth } from './solve/control';
import type { Direction } from './solve/effective';
import { withCyclingFan } from './solve/fanCycling';
import { pipeTemps } from './solve/flowStep';
import { demandOf, type Rigs, rigOf } from './solve/reversal';
import { reversible, standingState } from './solve/standing';
import type { CircuitState } from './solve/state';
import { type Setting, type SteadySolution, solveSteady } from './solve/steady';
import { stillSnapshot } from './stillSnapshot';
import type {
  ControllerState,
  Controls,
  Faults,
  Machine,
  MachineSetup,
  MachineState,
  PlantDescription,
  Snapshot,
} from './types';

/** K/s below which nothing that an instrument can show moves any more. */
const SETTLED_RATE = 1e-4;
/** kg of hoar on a segment of a coil that freezes in normal service, some minutes after a defrost */
const HOAR = 0.03;
/** A repair that opens the circuit or changes the charge by more than this share finds the machine standing. */
const SMALL_CHARGE = 0.06;

class CompiledMachine implements Machine, Rigs {
  readonly plant: PlantDescription;
  readonly defaultControls: Controls;
  private readonly rig: Rig;
  private readonly charge: number;
  readonly called: Direction;
  /** rigs of the other mode, or with the slide moved home; made when they are first needed */
  private readonly others = new Map<string, Rig>();

  constructor(readonly setup: MachineSetup) {
    this.plant = plantDescription(setup.plant, setup.conditions.mode);
    this.defaultControls = runningControls(this.plant);
    this.rig = compile(setup);
    this.charge = this.rig.effective.charge;
    this.called = setup.conditions.mode === 'heating' ? 'heating' : 'cooling';
  }

  of(direction: Direction, slideMoved: boolean): Rig {
    if (direction === this.called && !slideMoved) return this.rig;
    const name = `${direction} ${slideMoved}`;
    const rig = this.others.get(name) ?? compileFor(this.setup, direction, slideMoved);
    this.others.set(name, rig);
    return rig;
  }

  steady(controls?: Partial<Controls>): Snapshot {
    const all = { ...this.defaultControls, ...controls };
    const rig = this.of(demandOf(this, all), false);
    this.solve(rig, all);
    return flowSnapshot(rig, all, 0, runningState(rig, all), iceOf(rig, 1));
  }

  start(from: 'settled' | 'standing', controls?: Partial<Controls>): CircuitState {
    const all = { ...this.defaultControls, ...controls };
    const rig = this.of(demandOf(this, all), false);
    const { indoor, wetBulb } = this.setup.conditions;
    if (from === 'standing') {
      rig.circuit.indoorAir.setWetBulb(indoor, wetBulb);
      const humidity = rig.circuit.indoorAir.humidity;
      const standing = standingState(rig, all, indoor, humidity, this.charge);
      const segments = standing.frost.length;
      const frost = blocks(rig) ? standing.frost.map(() => rig.effective.ice / segments) : standing.frost;
      return { ...standing, frost, ...this.loadOf(rig, all) };
    }
    const { x } = this.solve(rig, all);
    const { circuit, env, data } = rig;
    const truth = sensorTruth(circuit);
    const room = rig.roomTemp;
    const roomHumidity = rig.roomHumidity;
    const frost = iceOf(rig, 0.03);
    const walls = { condenser: [...circuit.condenser.walls], evaporator: [...circuit.evaporator.walls] };
    return {
      time: 0,
      regime: 'flow',
      turning: true,
      x: [x[0], x[1], x[2]],
      jacobian: null,
      condenserWall: walls.condenser,
      evaporatorWall: walls.evaporator,
      shell: circuit.compressor.shell,
      pipes: pipeTemps(rig),
      inputs: {
        dt: 0,
        condenserWall: walls.condenser,
        evaporatorWall: walls.evaporator,
        shell: circuit.compressor.shell,
        massHigh: circuit.massHigh,
        pool: 0,
        opening: env.opening,
        speed: env.speed,
        room,
        roomHumidity,
        controls: all,
        ...(data.coldStore && { passing: env.passing, ice: rig.ice, fanDuty: rig.fanDuty }),
        ...(data.outdoorIce && { ice: rig.ice }),
      },
      charge: this.charge,
      massHigh: circuit.massHigh,
      pool: 0,
      energyHigh: circuit.energyHigh,
      energyLow: circuit.energyLow,
      debtHigh: 0,
      debtLow: 0,
      opening: env.opening,
      speed: env.speed,
      valveError: 0,
      speedError: 0,
      bulb: bulbTruth(circuit, circuit.tEvaporatorOut),
      sensed: truth,
      room,
      roomHumidity,
      ...loadNow(rig),
      roomFound: room,
      humidityFound: roomHumidity,
      frost,
      ...(data.coldStore && { cold: freshColdStore(true) }),
      ...reversible(rig, data.condenser.segments),
      controller:
        data.control.variableSpeed && env.speed > data.control.maxSpeed - 1e-6
          ? 'cooling-at-full-speed'
          : workWord(rig),
      restartIn: 0,
      runningFor: 3600,
      limitFor: 0,
      trips: 0,
      handOver: 0,
      rate: 0,
    };
  }

  step(state: MachineState, controls: Controls, dt: number): CircuitState {
    return advance(this, state as CircuitState, controls, dt);
  }

  snapshot(state: MachineState): Snapshot {
    const s = state as CircuitState;
    const shown = this.shown(rigOf(this, s), s);
    return s.direction === undefined || s.direction === this.called ? shown : { ...shown, turnedOver: true };
  }

  private shown(rig: Rig, s: CircuitState): Snapshot {
    if (s.regime === 'still') return stillSnapshot(rig, s);
    restore(rig, s);
    return flowSnapshot(rig, s.inputs.controls, s.time, s.controller, s.frost, s.condenserIce);
  }

  settled(state: MachineState): boolean {
    const s = state as CircuitState;
    return (
      // ice grows and a clock runs on a cold room that is switched on: it never quite rests
      (s.cold === undefined || s.controller === 'off') &&
      s.rate < SETTLED_RATE &&
      !isFreezing(s) &&
      (s.regime === 'flow' ||
        (!s.turning && s.restartIn === 0 && s.controller !== 'room-satisfied' && s.controller !== 'room-warm-enough'))
    );
  }

  repaired(state: MachineState, faults: Faults): { machine: Machine; state: CircuitState } {
    const s = state as CircuitState;
    const machine = new CompiledMachine({ ...this.setup, faults });
    const before = this.rig.effective;
    const after = machine.rig.effective;
    const change = machine.charge - this.charge;
    const opened =
      before.drier !== after.drier ||
      before.line !== after.line ||
      before.leakArea !== after.leakArea ||
      before.friction !== after.friction ||
      before.metering !== after.metering ||
      before.nitrogen !== after.nitrogen ||
      before.weakCapacitor !== after.weakCapacitor ||
      before.weakFanCapacitor !== after.weakFanCapacitor ||
      before.contactDrop !== after.contactDrop ||
      before.solenoidLost !== after.solenoidLost ||
      before.solenoidPassing !== after.solenoidPassing ||
      // who mends a defrost clears the coil first
      before.ice !== after.ice ||
      !Object.is(before.stuckOpening, after.stuckOpening) ||
      Math.abs(change) > SMALL_CHARGE * this.charge;
    if (opened) {
      const standing = standingState(machine.rig, this.defaultControls, s.room, s.roomHumidity, machine.charge);
      const cold = standing.cold && s.cold ? { cold: { ...standing.cold, defrostIn: s.cold.defrostIn } } : {};
      const carried = s.direction === standing.direction ? s.frost : [...(s.condenserIce ?? [])].reverse();
      const frost = before.ice !== after.ice ? standing.frost : carried;
      return { machine, state: { ...standing, time: s.time, ...roomOf(s), frost, ...cold } };
    }
    if (change === 0) return { machine, state: s };
    // gas goes in or out at the suction port and carries its enthalpy
    const snapshot = this.snapshot(s);
    if (this.rig.data.receiver && change < 0) {
      // where a receiver keeps the charge the low side holds too little to lose it: liquid leaves at the liquid port
      const liquid = snapshot.stations['liquid-port'].enthalpy;
      return {
        machine,
        state: {
          ...s,
          charge: s.charge + change,
          massHigh: s.massHigh + change,
          energyHigh: s.energyHigh + change * liquid,
          rate: 1,
        },
      };
    }
    const enthalpy = snapshot.stations['suction-port'].enthalpy;
    return {
      machine,
      state: { ...s, charge: s.charge + change, energyLow: s.energyLow + change * enthalpy, rate: 1 },
    };
  }

  /** The building's load: what the machine would keep up with in these conditions; none where it has no steady state. */
  private loadOf(rig: Rig, controls: Controls): { load: number; waterLoad: number } {
    try {
      this.solve(rig, { ...controls, running: true });
      return loadNow(rig);
    } catch (error) {
      if (!(error instanceof PhysicsError)) throw error;
      return { load: 0, waterLoad: 0 };
    }
  }

  /** Solve the steady state; the rig's circuit is left at the solution. */
  private solve(rig: Rig, controls: Controls): SteadySolution {
    const { setup } = this;
    const { indoor, wetBulb } = setup.conditions;
    if (!controls.running)
      throw new PhysicsError('bad-input', 'running: a machine that is off has no steady flow; start it standing');
    rig.effective.charge = this.charge;
    rig.env.pool = 0;
    rig.env.passing = 1 - rig.effective.solenoidLost;
    rig.ice = rig.effective.ice;
    rig.fanDuty = 1;
    rig.circuit.indoorAir.setWetBulb(indoor, wetBulb);
    rig.setAir(controls, indoor, rig.circuit.indoorAir.humidity);
    if (rig.env.passing < STREAM) {
      throw new PhysicsError('protection', 'no steady running state: the solenoid valve passes nothing', {
        limit: 'low-pressure',
      });
    }
    const setting = settingOf(rig, controls);
    const design = designPoint(
      setup.plant,
      setup.refrigerant,
      rig.circuit.heating ? 'heating' : setup.conditions.mode,
      setup.correlations,
    );
    const solveNear = (x: Float64Array): SteadySolution => solveSteady(rig.circuit, rig.env, setting, x);
    const guess = nearby(design.x, setting);
    if (!rig.data.coldStore || !controls.outdoorFanRunning) return solveNear(guess);
    return withCyclingFan(rig, rig.data.coldStore, guess, (duty, x) => {
      rig.fanDuty = duty;
      rig.setAir(controls, indoor, rig.circuit.indoorAir.humidity);
      return solveNear(x);
    });
  }
}

/** Heat (W) and water (kg/s) that the machine takes out of the room with the circuit where it is. */
function loadNow(rig: Rig): { load: number; waterLoad: number } {
  const { airHeat, waterTotal } = rig.circuit.indoorCoil;
  const { sensible, water } = rig.roomLoss(airHeat, waterTotal);
  return { load: sensible, waterLoad: water };
}

/** A coil that was defrosted a moment ago. */
function noIce(rig: Rig): number[] {
  return new Array<number>(rig.data.evaporator.segments).fill(0);
}

/** A coil outdoors that evaporates below freezing ices, and a control may defrost it: such a machine never rests. */
function isFreezing({ direction, frost, evaporatorWall }: CircuitState): boolean {
  if (direction !== 'heating') return false;
  return frost.some((kg) => kg > 0) || evaporatorWall.some((wall) => wall < 273.15);
}

/** The design point's solution as a first guess, without the unknowns that are held. */
function nearby(design: Float64Array, setting: Setting): Float64Array {
  const [high, low, enthalpy, opening, speed] = design;
  const guess = [high, low, enthalpy];
  if (setting.opening === null) guess.push(opening);
  if (setting.speed === null) guess.push(speed);
  return Float64Array.from(guess);
}

/** The room's side of a state. */
function roomOf(
  s: CircuitState,
): Pick<CircuitState, 'room' | 'roomHumidity' | 'load' | 'waterLoad' | 'roomFound' | 'humidityFound'> {
  const { room, roomHumidity, load, waterLoad, roomFound, humidityFound } = s;
  return { room, roomHumidity, load, waterLoad, roomFound, humidityFound };
}

/** Throws PhysicsError `bad-input` naming what is wrong with the setup. */
export function createMachine(setup: MachineSetup): Machine {
  return isNetwork(setup.plant) ? new NetworkMachine(setup) : new CompiledMachine(setup);
}

function settingOf(rig: Rig, controls: Controls): Setting {
  const { control } = rig.data;
  const { stuckOpening } = rig.effective;
  const asked = control.metering === 'electronic' ? controls.valveHold : null;
  const held = Number.isNaN(stuckOpening) ? asked : stuckOpening;
  return {
    opening: control.metering === 'fixed' ? 1 : held,
    speed: control.variableSpeed && !controls.fixedSpeed ? null : 1,
  };
}

/** Ice on the coil that evaporates takes air away. */
function blocks({ circuit, data }: Rig): boolean {
  return (circuit.heating ? data.outdoorIce : data.ice) !== undefined;
}

/** kg of ice on each segment as found: where water freezes, as it came out of the air there. */
function foundIce(rig: Rig): number[] {
  const { evaporator } = rig.circuit;
  const { ice } = rig.effective;
  const taken = Array.from(evaporator.water, (water, i) => (evaporator.walls[i * WALL_FIELDS] < 273.15 ? water : 0));
  const total = taken.reduce((sum, water) => sum + water, 0);
  return taken.map((water) => (ice > 0 ? ice * (total > 0 ? water / total : 1 / taken.length) : water > 0 ? HOAR : 0));
}

/** Ice on the evaporator in this steady state, kg a segment: as found where it takes air away, else `kg` where walls freeze. */
function iceOf(rig: Rig, kg: number): number[] {
  if (blocks(rig)) return rig.circuit.heating && rig.effective.ice === 0 ? noIce(rig) : foundIce(rig);
  const { evaporator } = rig.circuit;
  return Array.from(evaporator.temperature, (_, i) => (evaporator.walls[i * WALL_FIELDS] < 273.15 ? kg : 0));
}

/** The controller's word for a machine that does what it is asked for. */
function workWord({ circuit }: Rig): ControllerState {
  return circuit.heating ? 'heating' : 'cooling';
}

/** What the controller would say of itself while it runs in this steady state (a limit that it would stop on included). */
function runningState(rig: Rig, controls: Controls): ControllerState {
  const { data, env, circuit } = rig;
  const { limits, control } = data;
  if (circuit.pDischarge > limits.highPressure) return 'stopped-on-high-pressure';
  if (circuit.pSuction < limits.lowPressure) return 'stopped-on-low-pressure';
  if (circuit.compressor.tDischarge > limits.dischargeTemp) return 'stopped-on-discharge-heat';
  if (!control.variableSpeed || controls.fixedSpeed) return workWord(rig);
  if (circuit.compressor.tDischarge > limits.slowDownTemp - 0.5 || circuit.pDischarge > limits.slowDownPressure - 1e4) {
    return 'slowed-by-discharge-heat';
  }
  return env.speed > control.maxSpeed - 1e-6 ? 'cooling-at-full-speed' : 'cooling';
}
