/** Machines with many units drawn at random: weather, demands, faults and pairs of faults. Do they solve, do books close? */
import {
  type Conditions,
  createMachine,
  type Faults,
  familiesOf,
  type MachineSetup,
  PhysicsError,
  plantDescription,
} from '../index';
import type { OperatingMode, UnitDemand } from '../types';
import { Draw, severityAt } from './draws';
import { type Finding, finding } from './finding';
import { DRAWS } from './networkExpectations';
import type { NetworkVariant } from './networkMachines';
import { SOURCES } from './sources';

export interface NetworkDrawn {
  readonly setup: MachineSetup;
  readonly units: Readonly<Record<string, UnitDemand>>;
  readonly fixedSpeed: boolean;
}

export interface NetworkDraw {
  readonly drawn: NetworkDrawn;
  readonly error: PhysicsError | null;
  readonly energy: number;
  readonly mass: number;
}

const ZERO = 273.15;

function weather(draw: Draw, mode: OperatingMode): Conditions {
  const [low, high] = DRAWS[mode];
  const indoor = mode === 'cooling' ? draw.between(19, 32) : draw.between(16, 26);
  return {
    outdoor: ZERO + draw.between(low, high),
    indoor: ZERO + indoor,
    wetBulb: ZERO + indoor - draw.between(4, 8),
    mode,
    altitude: draw.between(0, 1500),
  };
}

function demand(draw: Draw, mode: OperatingMode): UnitDemand {
  if (draw.share() < 0.25) return 'off';
  if (mode !== 'simultaneous') return mode;
  return draw.share() < 0.5 ? 'cooling' : 'heating';
}

/** One fault, or two in one of three; in one unit or in all alike. */
function faults(draw: Draw, plant: MachineSetup['plant'], ids: readonly string[]): Faults {
  const drawn: Record<string, number> = {};
  for (let k = draw.share() < 0.33 ? 2 : 1; k > 0; k--) {
    const family = draw.pick(familiesOf(plant));
    const target = family.targets ? `:${draw.pick(family.targets)}` : '';
    // a machine that hears none of its units runs for nobody
    const one = family.perUnit && (family.id === 'communication-lost' || draw.share() < 0.7);
    const at = one ? `@${draw.pick(ids)}` : '';
    const sign = family.signed && draw.share() < 0.5 ? -1 : 1;
    drawn[`${family.id}${target}${at}`] = sign * severityAt(family, draw.share());
  }
  return drawn;
}

export function drawNetwork(draw: Draw, variant: NetworkVariant, mode: OperatingMode): NetworkDrawn {
  const ids = plantDescription(variant.plant).units ?? [];
  const conditions = weather(draw, mode);
  const units: Record<string, UnitDemand> = {};
  for (const id of ids) units[id] = demand(draw, mode);
  // somebody asks
  if (mode !== 'simultaneous') units[draw.pick(ids)] = mode;
  else {
    units[ids[0]] = 'cooling';
    units[ids[1]] = 'heating';
  }
  return {
    setup: {
      plant: variant.plant,
      refrigerant: variant.refrigerant,
      conditions,
      faults: faults(draw, variant.plant, ids),
    },
    units,
    fixedSpeed: draw.share() < 0.3,
  };
}

export function solveDrawn(drawn: NetworkDrawn): NetworkDraw {
  try {
    const { balance } = createMachine(drawn.setup).steady({ units: drawn.units, fixedSpeed: drawn.fixedSpeed });
    return { drawn, error: null, energy: balance.energy, mass: balance.mass };
  } catch (error) {
    if (!(error instanceof PhysicsError)) throw error;
    return { drawn, error, energy: 0, mass: 0 };
  }
}

export function networkDraws(
  section: string,
  variant: NetworkVariant,
  mode: OperatingMode,
  count: number,
  seed: number,
): Finding[] {
  const draw = new Draw(seed);
  const results = Array.from({ length: count }, () => solveDrawn(drawNetwork(draw, variant, mode)));
  const failed = results.filter(({ error }) => error !== null);
  const unnamed = failed.filter(({ error }) => error?.code !== 'protection');
  const worst = (of: (result: NetworkDraw) => number): number => results.reduce((most, r) => Math.max(most, of(r)), 0);
  const id = `${section}/${variant.id}/random ${mode}`;
  const own = SOURCES.own;
  return [
    // a machine that its own safety switch stops first is a result; anything else is a failure of the solver
    finding(
      `${id}/solved`,
      SOURCES.model,
      'share that solves or says which switch stops it',
      '-',
      1 - unnamed.length / count,
      DRAWS.solved,
      1,
    ),
    finding(
      `${id}/stopped`,
      SOURCES.model,
      'share that a safety switch stops',
      '-',
      (failed.length - unnamed.length) / count,
      0,
      0.12,
    ),
    finding(
      `${id}/energy`,
      own,
      'worst first-law defect over capacity',
      '-',
      worst(({ energy }) => energy),
      0,
      DRAWS.energy,
    ),
    finding(
      `${id}/charge`,
      own,
      'worst departure from the charge',
      'kg',
      worst(({ mass }) => mass),
      0,
      DRAWS.charge,
    ),
  ];
}
