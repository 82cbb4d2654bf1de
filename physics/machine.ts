/**
 * One machine, compiled once: steady states, time steps, snapshots. The only door of the physics besides the fluids.
 */
import { PhysicsError } from './errors';
import { NetworkMachine } from './network/machine';
import { isNetwork, plantDescription } from './plants';
import { flowSnapshot } from './snapshot';
import { advance } from './solve/advance';
import { STREAM } from './solve/coldStore';
import { compile, compileFor, designPoint, type Rig, runningControls } from './solve/compile';
import { sensorTruth } from './solve/control';
import type { Direction } from './solve/effective';
import { withCyclingFan } from './solve/fanCycling';
import { blocks, heldState, iceOf, loadNow, runningState, settledState } from './solve/found';
import { feltAtRest, heldBy } from './solve/held';
import { restore } from './solve/regime';
import { demandOf, type Rigs, rigOf } from './solve/reversal';
import { standingState } from './solve/standing';
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
/** A repair that opens the circuit or changes the charge by more than this share finds the machine standing. */
const SMALL_CHARGE = 0.06;

type Found = { readonly held: ControllerState } | { readonly held: null; readonly x: Float64Array };

class CompiledMachine implements Machine, Rigs {
  readonly plant: PlantDescription;
  readonly defaultControls: Controls;
  private readonly rig: Rig;
  private readonly charge: number;
  readonly called: Direction;
  /** rigs of the other mode, or with the slide moved home; made when they are first needed */
  private readonly others = new Map<string, Rig>();

  constructor(readonly setup: MachineSetup) {
    this.plant = plantDescription(setup.plant, setup.conditions.mode, setup.refrigerant);
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
    const { held } = this.found(rig, all);
    if (held) return stillSnapshot(rig, heldState(rig, all, held, this.charge, { load: 0, waterLoad: 0 }));
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
    const found = this.found(rig, all);
    if (found.held) return heldState(rig, all, found.held, this.charge, this.loadOf(rig, all));
    return settledState(rig, all, found.x, this.charge);
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
      before.suctionLine !== after.suctionLine ||
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

  /**
   * The building's load: what the machine would keep up with in these conditions (one that is held: a sound one); none where
   * it has no steady state.
   */
  private loadOf(rig: Rig, controls: Controls): { load: number; waterLoad: number } {
    if (heldBy(rig, feltAtRest(rig))) {
      const sound = new CompiledMachine({ ...this.setup, faults: {} });
      return sound.loadOf(sound.of(demandOf(sound, controls), false), controls);
    }
    try {
      this.solve(rig, { ...controls, running: true });
      return loadNow(rig);
    } catch (error) {
      if (!(error instanceof PhysicsError)) throw error;
      return { load: 0, waterLoad: 0 };
    }
  }

  /** Held from the start, or by what its sensors would read once it ran, or running at this solution. */
  private found(rig: Rig, controls: Controls): Found {
    const held = controls.running ? heldBy(rig, feltAtRest(rig)) : null;
    if (held) return { held };
    const { x } = this.solve(rig, controls);
    const refused = heldBy(rig, sensorTruth(rig.circuit));
    return refused ? { held: refused } : { held: null, x };
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
