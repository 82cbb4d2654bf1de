/** Machines drawn at random: do they solve, and do their balances close? Deterministic. */
import {
  type Conditions,
  createMachine,
  type FamilyId,
  type FaultFamily,
  type Faults,
  familiesOf,
  PhysicsError,
  type PhysicsErrorCode,
} from '../index';
import { type Finding, finding, statement } from './finding';
import { VARIANTS, type Variant } from './machines';
import { SOURCES } from './sources';

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

/** Size of a fault at a share of its range. */
export function severityAt({ slight, max }: Pick<FaultFamily, 'slight' | 'max'>, share: number): number {
  // a scale that begins beyond its middle means what lies below to be no such fault: a contact is open or it is not
  const from = slight > max / 2 ? slight : 0;
  return from + share * (max - from);
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
    faults: { [key]: sign * severityAt(family, part) },
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

/** The promise on random machines, 18…46 °C outdoors, one fault each, as findings. */
export function randomMachines(count: number, seed: number): Finding[] {
  const results = steadyDraws(count, seed);
  const failed = results.filter(({ error }) => error !== null);
  const ordinary = failed.filter(({ drawn }) => {
    const outdoor = drawn.conditions.outdoor - 273.15;
    return drawn.share <= 0.5 && outdoor >= 21 && outdoor <= 40;
  });
  const worst = (pick: (r: DrawResult) => number): number => results.reduce((most, r) => Math.max(most, pick(r)), 0);
  const id = 'random';
  return [
    finding(`${id}/solved`, SOURCES.model, 'share that solves', '-', 1 - failed.length / count, 0.995, 1),
    finding(`${id}/ordinary`, SOURCES.model, 'unsolved at half severity, 21…40 °C', '-', ordinary.length, 0, 0),
    finding(
      `${id}/energy`,
      SOURCES.own,
      'worst first-law defect over capacity',
      '-',
      worst((r) => r.energy),
      0,
      1e-3,
    ),
    finding(
      `${id}/charge`,
      SOURCES.own,
      'worst departure from the charge',
      'kg',
      worst((r) => r.mass),
      0,
      1e-9,
    ),
    statement(
      `${id}/named`,
      SOURCES.model,
      'what does not solve says why',
      failed.every(({ error }) => error?.named === true && error.code !== 'no-convergence'),
    ),
  ];
}
