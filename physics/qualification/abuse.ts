/** An hour of misuse on coarse steps: everything that a person can set is set at random, all the time. */
import { type Controls, createMachine, type Machine, type MachineState, PhysicsError } from '../index';
import { Draw, drawMachine } from './draws';
import { type Finding, finding } from './finding';
import type { Variant } from './machines';
import { SOURCES } from './sources';

/** What an hour of it did. */
export interface Misuse {
  /** kg by which the charge was missed at worst; NaN where any shown number was not finite */
  readonly mass: number;
  readonly error: string | null;
  readonly trips: number;
  readonly stillShare: number;
}

export interface AbuseResult extends Misuse {
  readonly seed: number;
  readonly variant: Variant['id'];
}

export function abuse(seed: number): AbuseResult {
  const draw = new Draw(seed);
  const { variant, conditions, faults } = drawMachine(draw);
  const machine = createMachine({ plant: variant.plant, refrigerant: variant.refrigerant, conditions, faults });
  return { seed, variant: variant.id, ...misuse(machine, variant.controls, draw, [18, 30]) };
}

/** @param dial °C between which the thermostat is turned */
export function misuse(
  machine: Machine,
  setting: Partial<Controls>,
  draw: Draw,
  dial: readonly [number, number],
): Misuse {
  let controls: Controls = { ...machine.defaultControls, ...setting };
  let state: MachineState = machine.start('standing', controls);
  const charge = machine.snapshot(state).probes.refrigerantCharge.value;
  let mass = 0;
  let trips = 0;
  let still = 0;
  let steps = 0;
  let nextChange = 0;
  let stopped = false;
  try {
    for (let time = 0; time < 3600; steps++) {
      if (time >= nextChange) {
        nextChange = time + draw.between(40, 500);
        controls = {
          ...controls,
          running: draw.share() < 0.85,
          indoorFan: draw.pick(['low', 'high']),
          outdoorFanRunning: draw.share() < 0.85,
          indoorFanRunning: draw.share() < 0.85,
          fixedSpeed: draw.share() < 0.5,
          valveHold: draw.share() < 0.3 ? draw.between(0.05, 1) : null,
          setPoint: 273.15 + draw.between(dial[0], dial[1]),
        };
      }
      const dt = 1 + Math.floor(draw.share() * 30);
      state = machine.step(state, controls, dt);
      time += dt;
      const snapshot = machine.snapshot(state);
      for (const probe of Object.values(snapshot.probes)) if (!Number.isFinite(probe.value)) mass = Number.NaN;
      mass = Math.max(mass, snapshot.balance.mass, Math.abs(snapshot.probes.refrigerantCharge.value - charge));
      if (snapshot.regime === 'still') still++;
      const off = snapshot.controller.startsWith('stopped-on-');
      if (off && !stopped) trips++;
      stopped = off;
    }
  } catch (error) {
    const text = error instanceof PhysicsError ? `${error.code}: ${error.message}` : `untyped: ${String(error)}`;
    return { mass, error: text, trips, stillShare: still / Math.max(1, steps) };
  }
  return { mass, error: null, trips, stillShare: still / steps };
}

export function abused(count: number, seed: number): Finding[] {
  const runs = Array.from({ length: count }, (_, i) => abuse(seed + i));
  const mass = runs.reduce((most, run) => (run.mass > most || Number.isNaN(run.mass) ? run.mass : most), 0);
  const untyped = runs.filter(({ error }) => error?.startsWith('untyped'));
  const given = runs.filter(({ error }) => error !== null);
  return [
    finding(
      'abuse/charge',
      SOURCES.own,
      'worst departure from the charge, not a number where a reading was none',
      'kg',
      mass,
      0,
      1e-6,
    ),
    finding('abuse/untyped', SOURCES.model, 'runs that end in an error without a code', '-', untyped.length, 0, 0),
    finding('abuse/given up', SOURCES.model, 'runs that end in a typed error', '-', given.length, 0, 0),
    finding(
      'abuse/trips',
      SOURCES.model,
      'safety switches were reached',
      '-',
      runs.reduce((sum, run) => sum + run.trips, 0),
      10,
      Infinity,
    ),
  ];
}
