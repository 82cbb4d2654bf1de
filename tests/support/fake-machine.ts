/**
 * A machine of a few straight lines, for tests that need many cheap steps and know the answers: pressures and
 * temperatures come from one number that creeps to 1 while it runs and to 0 while it stands. Not physics.
 */
import { plantDescription } from '../../physics';
import {
  type Controls,
  type Faults,
  type Machine,
  type MachineSetup,
  type MachineState,
  PROBES,
  type ProbeName,
  type Quantity,
  type Snapshot,
  type Station,
  type StationId,
} from '../../physics/types';
import type { World } from '../../src/attempt/site';

/** Time constant of the fake, s. */
export const CREEP = 60;

interface FakeState extends MachineState {
  readonly level: number;
  readonly controls: Controls;
}

const STATIONS: readonly StationId[] = [
  'compressor-in',
  'compressor-out',
  'condenser-in',
  'condenser-out',
  'liquid-port',
  'drier-out',
  'metering-in',
  'evaporator-in',
  'evaporator-out',
  'suction-port',
];

const RUNNING: Controls = {
  running: true,
  setPoint: 293.15,
  indoorFan: 'high',
  outdoorFanRunning: true,
  indoorFanRunning: true,
  fixedSpeed: false,
  valveHold: null,
};

export class FakeMachine implements Machine {
  readonly plant;
  readonly defaultControls = RUNNING;
  steps = 0;

  constructor(
    readonly setup: MachineSetup,
    /** time constant, s; 0 = it is at rest after the first step */
    private readonly creep = CREEP,
  ) {
    this.plant = plantDescription(setup.plant);
  }

  steady(controls?: Partial<Controls>): Snapshot {
    return this.snapshot(this.start('settled', controls));
  }

  start(from: 'settled' | 'standing', controls?: Partial<Controls>): MachineState {
    const all = { ...RUNNING, ...controls };
    return { time: 0, level: from === 'settled' && all.running ? 1 : 0, controls: all } satisfies FakeState;
  }

  step(state: MachineState, controls: Controls, dt: number): MachineState {
    this.steps += 1;
    const { level } = state as FakeState;
    const target = controls.running ? 1 : 0;
    const share = dt / (this.creep + dt);
    const next = level + share * (target - level);
    return {
      time: state.time + dt,
      level: Math.abs(next - target) < 1e-6 ? target : next,
      controls,
    } satisfies FakeState;
  }

  settled(state: MachineState): boolean {
    const { level, controls } = state as FakeState;
    return level === (controls.running ? 1 : 0);
  }

  repaired(state: MachineState, faults: Faults): { machine: Machine; state: MachineState } {
    return { machine: new FakeMachine({ ...this.setup, faults }, this.creep), state };
  }

  snapshot(state: MachineState): Snapshot {
    const { level, controls, time } = state as FakeState;
    const { conditions, faults } = this.setup;
    const charge = 1 - (faults.undercharge ?? 0) + (faults.overcharge ?? 0);
    const fan = controls.outdoorFanRunning ? 1 - (faults['condenser-fan-slow'] ?? 0) : 0;
    const blower = controls.indoorFanRunning ? 1 - (faults['evaporator-fan-slow'] ?? 0) : 0;
    const still = 1.6e6;
    const low = still + level * (1.0e6 * charge - still);
    const high = still + level * (2.8e6 + 1e6 * (1 - fan) - still);
    const k = (running: number, standing: number) => standing + level * (running - standing);
    const values: Partial<Record<ProbeName, number>> = {
      suctionPressure: low,
      dischargePressure: high + 3e4,
      liquidPressure: high,
      liquidPressureAfterDrier: high - level * (1e4 + 1e6 * (faults['drier-restriction'] ?? 0)),
      evaporatorOutletPressure: low + 2e4,
      filterPressureDrop: 40 + 200 * (faults['filter-dirty'] ?? 0),
      standingPressure: still,
      suctionLineTemp: k(287 + 20 * (1 - charge), conditions.outdoor),
      dischargeLineTemp: k(353, conditions.outdoor),
      liquidLineTemp: k(conditions.outdoor + 6, conditions.outdoor),
      liquidLineTempAfterDrier: k(conditions.outdoor + 5.8, conditions.outdoor),
      evaporatorOutletTemp: k(285, conditions.indoor),
      outdoorAirTemp: conditions.outdoor,
      condenserEnteringAirTemp: conditions.outdoor,
      condenserLeavingAirTemp: k(conditions.outdoor + 10, conditions.outdoor),
      returnAirTemp: conditions.indoor,
      returnAirWetBulb: conditions.wetBulb,
      supplyAirTemp: k(conditions.indoor - 11, conditions.indoor),
      supplyAirWetBulb: k(conditions.wetBulb - 5, conditions.wetBulb),
      compressorCurrent: k(12, 0),
      compressorSpeed: k(60, 0),
      supplyVoltage: 230,
      compressorCapacitance: 45e-6 * (1 - (faults['capacitor-weak'] ?? 0)),
      valveOpening: 0.4,
      refrigerantCharge: 2.8 * charge,
    };
    const probes = Object.fromEntries(
      (Object.keys(PROBES) as ProbeName[]).map((name): [ProbeName, Quantity] => [
        name,
        { value: values[name] ?? 0, unit: PROBES[name] },
      ]),
    ) as Record<ProbeName, Quantity>;
    const station = (id: StationId): Station => ({
      pressure: low,
      temperature: 290,
      enthalpy: 4e5,
      quality: 1,
      density: id === 'liquid-port' || id === 'drier-out' ? 1000 : 35,
      massFlow: 0.06 * level,
    });
    return {
      time,
      regime: level > 0 ? 'flow' : 'still',
      probes,
      looks: {
        sightGlass: Math.max(0, 1 - charge),
        evaporatorFrost: 0,
        filterDust: faults['filter-dirty'] ?? 0,
        condenserDirt: faults['condenser-dirty'] ?? 0,
        evaporatorDirt: faults['evaporator-dirty'] ?? 0,
        condenserFanSpeed: fan,
        evaporatorFanSpeed: blower,
        receiverLevel: 0,
        bulbContact: 1,
        liquidLineKink: 0,
        suctionValveOpen: 1,
        evaporatorIce: 0,
        lineCharged: 1,
        linesPlanned: 1,
        suctionSensorContact: 1,
        outdoorIce: 0,
        outdoorSensorContact: 1,
        coilSensorContact: 1,
        condensatePan: 0,
        display: 0,
      },
      controller: controls.running ? 'cooling' : 'off',
      sensors: {
        suctionLine: probes.suctionLineTemp.value + (faults['thermistor-drift:suctionLine'] ?? 0),
        evaporatorCoil: 282,
        dischargeLine: probes.dischargeLineTemp.value,
        outdoorAir: conditions.outdoor,
        returnAir: conditions.indoor,
      },
      stations: Object.fromEntries(STATIONS.map((id) => [id, station(id)])) as Record<StationId, Station>,
      condenser: [],
      evaporator: [],
      balance: { energy: 0, mass: 0 },
    };
  }
}

/** Straight saturation lines, 1 K per 30 kPa, bubble 2 K below dew: easy to work by hand. */
export const fakeSaturation = {
  tDew: (p: number) => (p > 0 && p < 6e6 ? 280 + (p - 1e6) / 3e4 : null),
  tBubble: (p: number) => (p > 0 && p < 6e6 ? 278 + (p - 1e6) / 3e4 : null),
};

export const fakeWorld: World = {
  physics: 'fake-1',
  createMachine: (setup) => new FakeMachine(setup),
  families: [],
  airPressure: (altitude) => 101_325 - 11.5 * altitude,
  flammable: (refrigerant) => refrigerant === 'R-32' || refrigerant === 'R-290',
  saturation: () => fakeSaturation,
};

/** The same without transients: for tests of many attempts. */
export const quickWorld: World = { ...fakeWorld, createMachine: (setup) => new FakeMachine(setup, 0) };
