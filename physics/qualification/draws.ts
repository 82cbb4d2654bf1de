/** Machines drawn at random: do they solve, and do their balances close? Deterministic. */
import {
  type Conditions,
  type Controls,
  createMachine,
  type FamilyId,
  type Faults,
  familiesOf,
  type MachineState,
  PhysicsError,
  type PhysicsErrorCode,
} from '../index';
import { VARIANTS, type Variant } from './machines';

/** Mulberry32: small, exact in every engine. */
export class Draw {
  constructor(private seed: number) {}

  /** 0…1 */
  share(): number {
    this.seed = (this.seed + 0x6d2b79f5) | 0;
    let t = Math.imul(this.seed ^ (this.seed >>> 15), 1 | this.seed);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.share();
  }

  pick<T>(list: readonly T[]): T {
    return list[Math.floor(this.share() * list.length)];
  }
}

export interface Drawn {
  readonly variant: Variant;
  readonly conditions: Conditions;
  readonly faults: Faults;
  readonly family: FamilyId;
  /** severity over the family's range */
  readonly share: number;
}

export function drawMachine(draw: Draw, share?: number): Drawn {
  const variant = draw.pick(VARIANTS);
  const family = draw.pick(familiesOf(variant.plant));
  const indoor = draw.between(20, 32);
  const part = share ?? draw.share();
  const sign = family.signed && draw.share() < 0.5 ? -1 : 1;
  const key = family.targets ? `${family.id}:${draw.pick(family.targets)}` : family.id;
  return {
    variant,
    conditions: {
      outdoor: 273.15 + draw.between(18, 46),
      indoor: 273.15 + indoor,
      wetBulb: 273.15 + indoor - draw.between(4, 9),
      mode: 'cooling',
      altitude: draw.between(0, 1500),
    },
    faults: { [key]: sign * part * family.max },
    family: family.id,
    share: part,
  };
}

export interface DrawResult {
  readonly drawn: Drawn;
  /** null where it solved */
  readonly error: { readonly code: PhysicsErrorCode; readonly message: string; readonly named: boolean } | null;
  readonly energy: number;
  readonly mass: number;
}

function solveOne(drawn: Drawn): DrawResult {
  const { variant, conditions, faults } = drawn;
  try {
    const machine = createMachine({ plant: variant.plant, refrigerant: variant.refrigerant, conditions, faults });
    const { balance } = machine.steady(variant.controls);
    return { drawn, error: null, energy: balance.energy, mass: balance.mass };
  } catch (error) {
    if (!(error instanceof PhysicsError)) throw error;
    const { code, message, details } = error;
    // a reason is a message and the figures that led to it
    const named = message.length > 10 && Object.keys(details).length > 0;
    return { drawn, error: { code, message, named }, energy: 0, mass: 0 };
  }
}

export function steadyDraws(count: number, seed: number): DrawResult[] {
  const draw = new Draw(seed);
  return Array.from({ length: count }, () => solveOne(drawMachine(draw)));
}

export interface AbuseResult {
  readonly seed: number;
  readonly variant: Variant['id'];
  /** kg by which the charge was missed at worst; NaN where any shown number was not finite */
  readonly mass: number;
  readonly error: string | null;
  readonly trips: number;
  readonly stillShare: number;
}

/** An hour of misuse on coarse steps: everything that a person can set is set at random, all the time. */
export function abuse(seed: number): AbuseResult {
  const draw = new Draw(seed);
  const { variant, conditions, faults } = drawMachine(draw);
  const base = { seed, variant: variant.id };
  const machine = createMachine({ plant: variant.plant, refrigerant: variant.refrigerant, conditions, faults });
  let controls: Controls = { ...machine.defaultControls, ...variant.controls };
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
          setPoint: 273.15 + draw.between(18, 30),
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
    return { ...base, mass, error: text, trips, stillShare: still / Math.max(1, steps) };
  }
  return { ...base, mass, error: null, trips, stillShare: still / steps };
}
