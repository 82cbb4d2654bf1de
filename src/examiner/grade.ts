/** The grade of one attempt: six parts, what could not be measured shared out over the others, the cap of Care. */
import type { CauseId } from '../../physics/types';
import type { AttemptState } from '../attempt';
import { WORKED_HINT } from '../attempt/hints';
import { applyRemedy, REMEDY_RULES } from '../attempt/remedies';
import { machineNuisance } from '../attempt/seeds';
import type { RemedyId } from '../attempt/types';
import { type Case, openCase } from './case';
import { klBits } from './numeric';
import { markBelief } from './parts/belief';
import { capOf, hazardsOf } from './parts/care';
import { markCause } from './parts/cause';
import { markEconomy } from './parts/economy';
import { markEvidence } from './parts/evidence';
import type { Marked } from './parts/part';
import { markRepair } from './parts/repair';
import { markWorking } from './parts/working';
import { provingOf } from './proving';
import type { Differential, Grade, PartName, PartScore, TrailStep } from './types';

const PARTS: readonly PartName[] = ['cause', 'belief', 'evidence', 'working', 'repair', 'economy'];
/** A remedy that brings back this share of the lost capacity mends it, whatever it was called. */
const RESTORED = 0.9;

export function grade(state: AttemptState, differential: Differential): Grade {
  return gradeCase(openCase(state, differential));
}

export function gradeCase(one: Case): Grade {
  const { state, plain, followThrough, twins, support, path } = one;
  const right = rightness(one);
  const proving = provingOf(one, right);
  const cause = markCause(one, right, proving);
  const economy = markEconomy(one);
  const marks: Readonly<Record<PartName, Marked>> = {
    cause,
    belief: markBelief(one),
    evidence: markEvidence(one, right),
    working: markWorking(one),
    repair: markRepair(one, proving.support),
    economy,
  };
  const parts = weigh(marks, state.site.pack.weights);
  const uncapped = parts.reduce((sum, { points }) => sum + (points ?? 0), 0);
  const cap = capOf(one);
  const causeWeight = parts.find(({ part }) => part === 'cause')!.weight;
  return {
    total: Math.min(cap, uncapped),
    uncapped,
    cap,
    scored: !state.hints.some(({ level }) => level === WORKED_HINT),
    parts,
    hazards: hazardsOf(one),
    posterior: plain.final,
    followThrough: followThrough.final,
    right,
    support,
    twins,
    proveIt: proving.open ? { open: causeWeight * cause.open, won: causeWeight * cause.won, note: proving.note } : null,
    hints: state.hints.length,
    trail: trailOf(one),
    path,
    used: economy.used,
  };
}

function weigh(marks: Readonly<Record<PartName, Marked>>, weights: Readonly<Record<PartName, number>>): PartScore[] {
  const measured = PARTS.filter((part) => marks[part].share !== null);
  const total = PARTS.reduce((sum, part) => sum + weights[part], 0);
  const left = measured.reduce((sum, part) => sum + weights[part], 0);
  const scale = left > 0 ? total / left : 0;
  return PARTS.map((part) => {
    const { share, reasons } = marks[part];
    const weight = share === null ? weights[part] : weights[part] * scale;
    return { part, weight, points: share === null ? null : share * weight, reasons };
  });
}

/** 1: right or an information twin; 0.8: its remedy would bring the machine back; 0: neither. */
function rightness(one: Case): 0 | 0.8 | 1 {
  const { verdict, twins } = one;
  if (!verdict) return 0;
  if (twins.includes(verdict.cause)) return 1;
  return mends(one, verdict.cause) ? 0.8 : 0;
}

/** The remedy that belongs to a cause, as a careful person carries it out. */
export function remedyFor(cause: CauseId): RemedyId {
  if (cause === 'undercharge') return 'find-leak-mend-and-weigh-in';
  if (cause === 'overcharge') return 'recover-excess';
  if (cause === 'non-condensable') return 'recover-evacuate-recharge';
  const cures = (Object.keys(REMEDY_RULES) as RemedyId[]).find((id) =>
    REMEDY_RULES[id].cures.some((family) => family === cause),
  );
  return cures ?? 'nothing-to-mend';
}

function mends({ state }: Case, cause: CauseId): boolean {
  const { callout, world } = state.site;
  if (Object.keys(callout.faults).length === 0) return false;
  const remedy = remedyFor(cause);
  if (remedy === 'nothing-to-mend') return false;
  const after = applyRemedy(callout.faults, remedy, REMEDY_RULES[remedy].steps, world.families);
  const { plant, refrigerant, conditions, machineSeed } = callout;
  const nuisance = machineNuisance(machineSeed);
  const capacity = (faults: Readonly<Record<string, number>>) =>
    world.createMachine({ plant, refrigerant, conditions, faults, nuisance }).steady().probes.capacityTotal.value;
  try {
    const healthy = capacity({});
    const lost = healthy - capacity(callout.faults);
    return lost > 0 && capacity(after) - capacity(callout.faults) >= RESTORED * lost;
  } catch {
    return false; // a machine that does not run settled before or after is not mended by the wrong remedy
  }
}

function trailOf({ plain, judgedNotes }: Case): TrailStep[] {
  const steps: TrailStep[] = [];
  for (let count = 1; count <= judgedNotes; count++) {
    const taken = plain.taken[count - 1];
    const posterior = plain.posterior(count);
    const notJudged = 'notJudged' in taken ? taken.notJudged : null;
    const bits = notJudged ? 0 : klBits(posterior, plain.posterior(count - 1));
    steps.push({ note: count - 1, posterior, bits, notJudged });
  }
  return steps;
}
