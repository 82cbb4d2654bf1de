/**
 * Machines of every plant drawn at random: steady states in every mode with up to two faults, what their parts do to
 * entropy, and hours in which everything that can be set is set at random.
 */
import { fluidTable } from '../fluids/fluid';
import * as L from '../fluids/layout';
import {
  type Controls,
  createMachine,
  type Faults,
  familiesOf,
  type MachineSetup,
  type OperatingMode,
  PhysicsError,
  PLANTS,
  type PlantDescription,
  type PlantId,
  type Snapshot,
  type StationId,
} from '../index';
import { Draw, severityAt } from './draws';

/** °C outdoors that a mode is drawn from. */
const OUTDOORS: Readonly<Record<OperatingMode, readonly [number, number]>> = {
  cooling: [18, 46],
  heating: [-20, 20],
  simultaneous: [-10, 30],
};
/** share of the drawn machines with no, one and two faults */
const HEALTHY = 0.1;
const TWO = 0.35;

/** A plant, mode, weather and up to two faults, severities over their whole ranges. */
export function drawAny(draw: Draw, plants: readonly PlantId[] = Object.keys(PLANTS) as PlantId[]): MachineSetup {
  const plant: PlantDescription = PLANTS[draw.pick(plants)];
  const mode = draw.pick(Object.keys(plant.modes) as OperatingMode[]);
  const rated = plant.modes[mode] ?? plant.designConditions;
  const cold = rated.indoor < 283.15;
  const [low, high] = cold ? [-10, 46] : OUTDOORS[mode];
  const indoor = rated.indoor + (cold ? draw.between(-3, 8) : draw.between(-4, 4));
  const conditions = {
    outdoor: 273.15 + draw.between(low, high),
    indoor,
    wetBulb: indoor - draw.between(cold ? 0.4 : 4, cold ? 3 : 9),
    mode,
    altitude: draw.between(0, 1500),
  };
  const refrigerant = draw.pick(plant.refrigerants);
  const count = draw.share();
  const faults: Faults = {
    ...(count > HEALTHY && drawFault(draw, plant, mode, refrigerant)),
    ...(count > 1 - TWO && drawFault(draw, plant, mode, refrigerant)),
  };
  return { plant: plant.id, refrigerant, conditions, faults };
}

function drawFault(
  draw: Draw,
  plant: PlantDescription,
  mode: OperatingMode,
  refrigerant: MachineSetup['refrigerant'],
): Faults {
  const family = draw.pick(familiesOf(plant.id, mode, refrigerant));
  const target = family.targets ? `:${draw.pick(family.targets)}` : '';
  // with all units silent nobody asks for anything
  const one = draw.share() < 0.7 || family.id === 'communication-lost';
  const unit = family.perUnit && plant.units && one ? `@${draw.pick(plant.units)}` : '';
  const sign = family.signed && draw.share() < 0.5 ? -1 : 1;
  return { [`${family.id}${target}${unit}`]: sign * severityAt(family, draw.share()) };
}

export interface SteadyTally {
  readonly drawn: number;
  readonly solved: number;
  /** ended by a safety switch that opens, or refused as a pair that cannot be */
  readonly named: number;
  readonly unsolved: readonly { readonly setup: MachineSetup; readonly why: string }[];
  readonly energy: number;
  readonly mass: number;
  /** W/K: the least that any part made, and what and where */
  readonly entropy: number;
  readonly entropyAt: string;
}

export function steadyDraws(count: number, seed: number, plants?: readonly PlantId[]): SteadyTally {
  const draw = new Draw(seed);
  const unsolved: { setup: MachineSetup; why: string }[] = [];
  let solved = 0;
  let named = 0;
  let energy = 0;
  let mass = 0;
  let entropy = Number.POSITIVE_INFINITY;
  let entropyAt = '';
  for (let k = 0; k < count; k++) {
    const setup = drawAny(draw, plants);
    try {
      const snapshot = createMachine(setup).steady();
      solved++;
      energy = Math.max(energy, snapshot.balance.energy);
      mass = Math.max(mass, snapshot.balance.mass);
      for (const [part, made] of Object.entries(entropyMade(setup, snapshot))) {
        if (made >= entropy) continue;
        entropy = made;
        entropyAt = `${part} of ${setup.plant}, ${setup.conditions.mode}, ${JSON.stringify(setup.faults)}`;
      }
    } catch (error) {
      if (!(error instanceof PhysicsError)) throw error;
      if (error.code === 'protection' || error.code === 'bad-input') named++;
      unsolved.push({ setup, why: `${error.code}: ${error.message}` });
    }
  }
  return { drawn: count, solved, named, unsolved, energy, mass, entropy, entropyAt };
}

const block = new Float64Array(L.BLOCK_SIZE);
const out = new Float64Array(L.OUT_SIZE);

/**
 * W/K that parts make at least, from outside: entropy that the stream gains, and what its heat brings to the air, taken at
 * the end of the air that is worst for the claim. Several coils on one circuit are told in their own section.
 */
export function entropyMade(setup: MachineSetup, snapshot: Snapshot): Readonly<Record<string, number>> {
  const fluid = fluidTable(setup.refrigerant);
  const { stations, probes, units } = snapshot;
  const s = (id: StationId): number => {
    const { pressure, enthalpy } = stations[id];
    fluid.setPressure(pressure, block);
    fluid.state(block, enthalpy, out);
    return out[L.OUT_S];
  };
  const gain = (from: StationId, to: StationId): number => s(to) - s(from);
  const m = stations['compressor-in'].massFlow;
  const rise = stations['compressor-out'].enthalpy - stations['compressor-in'].enthalpy;
  const lost = probes.compressorPower.value - m * rise;
  const made: Record<string, number> = {
    compressor: m * gain('compressor-in', 'compressor-out') + lost / setup.conditions.outdoor,
  };
  if (units) return made;
  const rejected = m * (stations['condenser-in'].enthalpy - stations['condenser-out'].enthalpy);
  const taken = m * (stations['evaporator-out'].enthalpy - stations['evaporator-in'].enthalpy);
  const heats = setup.conditions.mode === 'heating';
  const warm = heats
    ? Math.max(probes.supplyAirTemp.value, probes.returnAirTemp.value)
    : Math.max(probes.condenserLeavingAirTemp.value, probes.condenserEnteringAirTemp.value);
  const cold = heats
    ? Math.min(probes.outdoorLeavingAirTemp.value, probes.outdoorAirTemp.value)
    : Math.min(probes.supplyAirTemp.value, probes.returnAirTemp.value);
  made.condenser = rejected / warm + m * gain('condenser-in', 'condenser-out');
  made.throttle = m * gain('metering-in', 'evaporator-in');
  made.evaporator = m * gain('evaporator-in', 'evaporator-out') - taken / cold;
  return made;
}

export interface TimeTally {
  readonly runs: number;
  readonly errors: readonly string[];
  readonly notNumbers: number;
  /** kg by which the charge was missed at worst, at any moment and at the end of a run */
  readonly mass: number;
  readonly massAtEnd: number;
  readonly trips: number;
  readonly steps: number;
}

/** `hours` of random settings on each of `count` machines, on steps of up to half a minute. */
export function timeDraws(count: number, seed: number, hours: number, plants?: readonly PlantId[]): TimeTally {
  const errors: string[] = [];
  let mass = 0;
  let massAtEnd = 0;
  let notNumbers = 0;
  let trips = 0;
  let steps = 0;
  for (let k = 0; k < count; k++) {
    const draw = new Draw(seed + k);
    const setup = drawAny(draw, plants);
    const plant = PLANTS[setup.plant];
    try {
      const machine = createMachine(setup);
      let controls: Controls = machine.defaultControls;
      let state = machine.start('standing', controls);
      const charge = machine.snapshot(state).probes.refrigerantCharge.value;
      let next = 0;
      let stopped = false;
      let missed = 0;
      for (let time = 0; time < hours * 3600; steps++) {
        if (time >= next) {
          next = time + draw.between(120, 1800);
          controls = drawControls(draw, controls, plant);
        }
        const dt = 1 + Math.floor(draw.share() * 30);
        state = machine.step(state, controls, dt);
        time += dt;
        const { probes, controller, balance } = machine.snapshot(state);
        for (const { value } of Object.values(probes)) if (!Number.isFinite(value)) notNumbers++;
        missed = Math.max(balance.mass, Math.abs(probes.refrigerantCharge.value - charge));
        mass = Math.max(mass, missed);
        const off = controller.startsWith('stopped-on-');
        if (off && !stopped) trips++;
        stopped = off;
      }
      massAtEnd = Math.max(massAtEnd, missed);
    } catch (error) {
      const why = error instanceof PhysicsError ? `${error.code}: ${error.message}` : `untyped: ${String(error)}`;
      errors.push(`${setup.plant} ${setup.conditions.mode} ${JSON.stringify(setup.faults)}: ${why}`);
    }
  }
  return { runs: count, errors, notNumbers, mass, massAtEnd, trips, steps };
}

function drawControls(draw: Draw, before: Controls, plant: PlantDescription): Controls {
  const { setPoint } = plant;
  const [low, high] = setPoint ? [setPoint.low, setPoint.high] : [289.15, 303.15];
  const asks = ['off', ...Object.keys(plant.modes).filter((mode) => mode !== 'simultaneous')] as const;
  const units = plant.units?.flatMap((id) => (draw.share() < 0.3 ? [[id, draw.pick(asks)] as const] : []));
  return {
    ...before,
    running: draw.share() < 0.85,
    setPoint: draw.between(low, high),
    indoorFan: draw.pick(['low', 'high']),
    outdoorFanRunning: draw.share() < 0.92,
    indoorFanRunning: draw.share() < 0.92,
    fixedSpeed: plant.variableSpeed && draw.share() < 0.3,
    valveHold: plant.metering === 'electronic-valve' && draw.share() < 0.15 ? draw.between(0.05, 1) : null,
    ...(units && { units: Object.fromEntries(units) as Controls['units'] }),
  };
}
