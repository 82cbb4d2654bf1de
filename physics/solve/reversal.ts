/**
 * A machine that can be turned over: which way its refrigerant runs, its defrost control, and what becomes of the refrigerant
 * when the reversing valve shifts. The shift regroups the parts between the two sides: what stood in a coil goes with it,
 * pipes keep their gas and liquid; mass and energy are conserved exactly, and the sides find their balance as still vessels.
 */
import * as L from '../fluids/layout';
import { exp } from '../math/elementary';
import { WALL_FIELDS } from '../parts/coil';
import type { Controls } from '../types';
import type { Rig } from './compile';
import type { Direction, MachineData } from './effective';
import { highVolume, lowVolume } from './standing';
import type { CircuitState, DefrostState } from './state';
import { Vessel } from './vessels';

/** The rigs of one machine: one for each way, with the slide of its reversing valve as found or moved home since. */
export interface Rigs {
  /** what the machine was called to do */
  readonly called: Direction;
  of(direction: Direction, slideMoved: boolean): Rig;
}

export function rigOf(rigs: Rigs, state: CircuitState): Rig {
  return rigs.of(state.direction ?? rigs.called, state.slideMoved ?? false);
}

/** What the thermostat asks for. */
export function demandOf(rigs: Rigs, controls: Controls): Direction {
  return controls.mode ?? rigs.called;
}

/** Defrost by time and temperature of the outdoor coil's sensor (common practice, no source). */
const FREEZING = 273.15;
const FREEZING_TIME = 3000;
const ICED = 270.65;
const CLEARED = 285.15;
const LONGEST = 600;
/** s of the sensor behind its coil */
const SENSOR_LAG = 8;

export const NO_DEFROST: DefrostState = { freezing: 0, running: 0, sensor: Number.NaN };

/** The control's clock and sensor after a step. The sensor sits at the liquid end of the outdoor coil. */
export function followDefrost(rig: Rig, state: CircuitState, demand: Direction, dt: number): DefrostState | undefined {
  const { defrost } = state;
  if (defrost === undefined) return undefined;
  const { circuit, effective } = rig;
  const walls = circuit.heating ? state.evaporatorWall : state.condenserWall;
  const at = circuit.heating ? 0 : walls.length - WALL_FIELDS;
  // ice ties a sensor that has come loose to its coil; only once it has melted it reads too low
  const felt = walls[at] - (walls[at] < FREEZING ? 0 : effective.defrostNotEnding);
  const sensor = Number.isNaN(defrost.sensor)
    ? felt
    : defrost.sensor + ((felt - defrost.sensor) * dt) / (dt + SENSOR_LAG);
  if (demand === 'cooling' || !state.turning)
    return { freezing: demand === 'cooling' ? 0 : defrost.freezing, running: 0, sensor };
  if (defrost.running > 0) return { freezing: 0, running: defrost.running + dt, sensor };
  return { freezing: defrost.freezing + (sensor < FREEZING ? dt : 0), running: 0, sensor };
}

/** The direction for the coming step, and the defrost control's state with it. */
export function directionFor(
  rig: Rig,
  state: CircuitState,
  demand: Direction,
): { direction: Direction; defrost: DefrostState } {
  const defrost = state.defrost ?? NO_DEFROST;
  if (demand === 'cooling' || !state.turning) return { direction: demand, defrost: { ...defrost, running: 0 } };
  if (defrost.running > 0) {
    const over = defrost.sensor >= CLEARED || defrost.running >= LONGEST;
    return over
      ? { direction: 'heating', defrost: { ...defrost, running: 0, freezing: 0 } }
      : { direction: 'cooling', defrost };
  }
  const due = defrost.freezing >= FREEZING_TIME && defrost.sensor < ICED && rig.effective.defrostNotStarting === 0;
  return due ? { direction: 'cooling', defrost: { ...defrost, running: 1e-3 } } : { direction: 'heating', defrost };
}

/** kg of ice that blocks air: on the outdoor coil of a machine that heats, or on a cooler. */
export function blockingIce({ circuit, data }: Rig, state: Pick<CircuitState, 'frost' | 'condenserIce'>): number {
  if (!data.outdoorIce && !data.ice) return 0;
  const ice = data.outdoorIce && !circuit.heating ? (state.condenserIce ?? []) : state.frost;
  return ice.reduce((sum, kg) => sum + kg, 0);
}

/** Mass, kg, and internal energy, J, of what stands in a part. */
interface Content {
  readonly mass: number;
  readonly energy: number;
}

const sum = (...parts: readonly Content[]): Content => ({
  mass: parts.reduce((total, { mass }) => total + mass, 0),
  energy: parts.reduce((total, { energy }) => total + energy, 0),
});
const less = (whole: Content, part: Content): Content => ({
  mass: whole.mass - part.mass,
  energy: whole.energy - part.energy,
});

/** What a volume of a settled vessel holds of which liquid fills `liquid` m3 and gas the rest. */
function content(vessel: Vessel, volume: number, liquid: number): Content {
  if (vessel.quality <= 0 || vessel.quality >= 1) {
    const mass = vessel.density * volume;
    return { mass, energy: mass * vessel.enthalpy - vessel.pressure * volume };
  }
  const { block } = vessel;
  const below = liquid * block[L.RHO_L];
  const above = (volume - liquid) * block[L.RHO_V];
  return { mass: below + above, energy: below * block[L.H_L] + above * block[L.H_V] - vessel.pressure * volume };
}

/** m3 of liquid in a settled vessel of this volume. */
function liquidIn(vessel: Vessel, volume: number): number {
  return vessel.quality > 0 && vessel.quality < 1 ? vessel.liquidShare * volume : 0;
}

/**
 * The reversing valve shifts. `state` stands still; `to` is the rig of the other way.
 * @returns the state under `to`
 */
export function turnOver(from: Rig, to: Rig, state: CircuitState): CircuitState {
  const { fluid } = from;
  const high = new Vessel();
  const low = new Vessel();
  const whole: Content = { mass: state.massHigh, energy: state.energyHigh };
  const rest: Content = { mass: state.charge - state.massHigh, energy: state.energyLow };
  high.settle(fluid, whole.mass, whole.energy, highVolume(from), exp(state.x[0]));
  low.settle(fluid, rest.mass, rest.energy, lowVolume(from), exp(state.x[1]));

  // the high side: liquid stands in the liquid pipes first, the discharge pipe holds gas, the coil that leaves has the rest
  const pipes = liquidPipes(from.data);
  const { dischargeVolume: stub, suctionVolume, expansionVolume } = from.data.lines;
  const inPipes = content(high, pipes, Math.min(pipes, liquidIn(high, highVolume(from))));
  const inStub = content(high, stub, 0);
  // the low side: liquid lies in the coil first; accumulator, pipes and shell hold gas and what the coil cannot
  const elsewhere = suctionVolume + expansionVolume + from.data.compressor.shellVolume;
  const coil = from.data.evaporator.volume;
  const spilt = Math.max(0, liquidIn(low, lowVolume(from)) - coil);
  const around = content(low, elsewhere, Math.min(spilt, elsewhere));
  const inEvaporator = less(rest, around);

  // the vapour line changes sides with its gas
  const change = to.data.lines.dischargeVolume - stub;
  const joins = change > 0 ? content(low, change, 0) : { mass: 0, energy: 0 };
  const leaves = change < 0 ? content(high, -change, 0) : { mass: 0, energy: 0 };
  const newHigh = less(sum(inPipes, inStub, inEvaporator, joins), leaves);
  const newLow = less(sum(whole, rest), newHigh);
  const hot = state.pipes.discharge;
  const { defrost, condenserIce = [] } = state;
  return {
    ...state,
    regime: 'still',
    direction: to.circuit.heating ? 'heating' : 'cooling',
    slideMoved: true,
    x: [state.x[1], state.x[0], state.x[2]],
    jacobian: null,
    condenserWall: turnedWalls(state.evaporatorWall),
    evaporatorWall: turnedWalls(state.condenserWall),
    frost: [...condenserIce].reverse(),
    condenserIce: [...state.frost].reverse(),
    massHigh: newHigh.mass,
    energyHigh: newHigh.energy,
    energyLow: newLow.energy,
    pool: 0,
    // the pipe of the coil that now evaporates has been hot, and with it the bulb of its valve, which stands wide open
    pipes: { ...state.pipes, suction: to.circuit.heating ? state.pipes.compressorIn : hot, evaporatorOut: hot },
    bulb: hot,
    opening: Number.isNaN(to.effective.stuckOpening) ? 1 : to.effective.stuckOpening,
    runningFor: 0,
    limitFor: 0,
    defrost,
    rate: 1,
  };
}

function liquidPipes({ lines }: MachineData): number {
  return lines.liquidVolume + lines.liquidLineVolume;
}

/** Segments the other way round, each at its mean: the refrigerant comes in where it left. */
function turnedWalls(walls: readonly number[]): number[] {
  const turned: number[] = [];
  for (let base = walls.length - WALL_FIELDS; base >= 0; base -= WALL_FIELDS) {
    for (let field = 0; field < WALL_FIELDS; field++) turned.push(walls[base]);
  }
  return turned;
}
