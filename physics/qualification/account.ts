/** Which machine a finding is about, what became of it, and how many of each there are. */
import { PLANTS, type PlantId } from '../index';
import type { Finding } from './finding';
import { COLD_ROOMS, HEAT_PUMPS, ORIFICE_R410A, VARIANTS } from './machines';
import { reasonFor } from './misses';
import { NETWORK_VARIANTS } from './networkMachines';

/** `missed`: does not hold, and the list of misses says why; `failed`: does not hold, and nothing says why. */
export type Verdict = 'holds' | 'missed' | 'failed';

export function verdictOf({ id, holds }: Finding): Verdict {
  if (holds) return 'holds';
  return reasonFor(id) === null ? 'failed' : 'missed';
}

/** The plant that a finding is about; null where machines of every plant were drawn together. */
export function plantOf({ id }: Finding): PlantId | null {
  const machine = id.split('/')[1];
  // what two faults do together is told of one machine only (pairs.ts)
  if (machine === 'known') return ORIFICE_R410A.plant;
  const all = [...VARIANTS, ...COLD_ROOMS, ...HEAT_PUMPS, ...NETWORK_VARIANTS];
  const plant = all.find((variant) => variant.id === machine)?.plant;
  return plant ?? (Object.hasOwn(PLANTS, machine) ? (machine as PlantId) : null);
}

export interface Count {
  readonly tests: number;
  readonly held: number;
  readonly missed: number;
  readonly failed: number;
}

export function count(findings: readonly Finding[]): Count {
  const of = (verdict: Verdict): number => findings.filter((one) => verdictOf(one) === verdict).length;
  return { tests: findings.length, held: of('holds'), missed: of('missed'), failed: of('failed') };
}
