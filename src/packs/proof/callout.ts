/** The proof of one callout: that its machine runs, that its cause shows and can be told, and in the time that there is. */
import { faultFamily } from '../../../physics';
import type { CauseId, FamilyId } from '../../../physics/types';
import type { Callout } from '../../attempt/pack/types';
import { familyOf } from '../../attempt/remedies';
import { causeLogLikelihoods, priorOf, temper } from '../../examiner/belief';
import { LN3 } from '../../examiner/numeric';
import { greedyPathOn } from '../../examiner/path';
import { everyReading } from '../../examiner/twins';
import type { GreedyPath, ValuedCandidate } from '../../examiner/types';
import { INSTRUMENTS, type InstrumentId } from '../../instruments/types';
import { TOLD } from '../prove';
import { type Difficulty, difficultyOf, minutesOf, onArrival } from './difficulty';
import type { Finding, ProofRule } from './findings';
import { benchOf, type Opened, runsWith, whyNot } from './opened';
import { textFindings } from './texts';

export interface CalloutProof {
  readonly opened: Opened;
  readonly findings: readonly Finding[];
  /** null where the machine does not run, so that nothing can be read */
  readonly telling: {
    /** the true cause and what no allowed reading tells from it */
    readonly twins: readonly CauseId[];
    /** the shortest sufficient path */
    readonly path: GreedyPath;
    readonly difficulty: Difficulty;
    readonly arrival: readonly ValuedCandidate[];
  } | null;
}

/** What can be said against a callout before anything is read on it. */
export function unprovable(callout: Callout): Finding[] {
  const found = [...textFindings(callout), ...sizeFindings(callout)];
  if (!runsWith(callout, callout.faults)) {
    found.push({ callout: callout.id, rule: 'runs', weight: 'refused', why: standing(callout), mend: mendOf(callout) });
  }
  return found;
}

export function proveCallout(opened: Opened): CalloutProof {
  const { callout, differential, bench, truths, read } = opened;
  const findings = unprovable(callout);
  if (findings.some(({ rule }) => rule === 'runs')) return { opened, findings, telling: null };
  const likelihoods = causeLogLikelihoods(differential, everyReading(bench, read));
  const own = Math.max(...truths.map((cause) => likelihoods.get(cause) ?? -Infinity));
  const twins = [...likelihoods].filter(([cause, value]) => !truths.includes(cause) && value > own - LN3);
  const all = [...truths, ...twins.map(([cause]) => cause)];
  const belief = temper(priorOf(differential, callout.tally), likelihoods, 1);
  const first = [...likelihoods.keys()].reduce((a, b) => (belief[b]! > belief[a]! ? b : a));
  const ratio = (rival: CauseId) => Math.exp(own - likelihoods.get(rival)!);
  findings.push(...tellingFindings(opened, first, all, ratio));

  const arrival = onArrival(opened);
  const path = greedyPathOn(differential, callout.tally, bench, read);
  findings.push(...pathFindings(opened, path, all));
  return {
    opened,
    findings,
    telling: { twins: all, path, difficulty: difficultyOf(opened, path, all, arrival), arrival },
  };
}

/** Odds against no fault, and sizes that a person would not call slight yet. */
function sizeFindings({ id, faults }: Callout): Finding[] {
  return Object.entries(faults).flatMap(([key, severity]): Finding[] => {
    const { slight, clear, unit } = faultFamily(familyOf(key));
    if (Math.abs(severity) >= slight) return [];
    const why = `${key} ${severity} (${unit}) is too small to see: below ${slight} it is not even slight`;
    return [{ callout: id, rule: 'seen', weight: 'refused', why, mend: `at least ${slight}, better ${clear} (clear)` }];
  });
}

function tellingFindings(
  opened: Opened,
  first: CauseId,
  twins: readonly CauseId[],
  ratio: (rival: CauseId) => number,
): Finding[] {
  const { callout, truths } = opened;
  const found: Finding[] = [];
  const add = (rule: ProofRule, weight: Finding['weight'], why: string, mend: string) =>
    found.push({ callout: callout.id, rule, weight, why, mend });
  const open = callout.deliberatePair ?? [];
  const marked = (rival: CauseId) => open.includes(rival) && truths.some((cause) => open.includes(cause));
  for (const rival of twins.filter((cause) => !truths.includes(cause) && !marked(cause))) {
    const odds = `${ratio(rival).toFixed(1)}:1 with every allowed reading`;
    const pair = `deliberatePair ["${truths[0]}", "${rival}"] if that is meant`;
    if (rival === 'no-fault') {
      const { clear } = faultFamily(truths[0] as FamilyId);
      add('seen', 'refused', `${truths[0]} is too small to see: ${odds} against no fault`, `a size nearer to ${clear}`);
    } else if ((callout.tally[rival] ?? 0) > 0) {
      const why = `nothing that may be read tells ${truths[0]} from ${rival} by three to one (${odds})`;
      add('told-apart', 'refused', why, `${help(opened, rival)}, or ${pair}`);
    } else {
      const why = `${rival}, which the tally does not name, cannot be told from ${truths[0]} (${odds})`;
      add('told-apart', 'doubtful', why, `${help(opened, rival)}, or ${pair}`);
    }
  }
  if (!truths.includes(first) && !marked(first) && !twins.includes(first)) {
    const why = `with every allowed reading the examiner still puts ${first} before ${truths[0]}`;
    add(
      'first-choice',
      'refused',
      why,
      `${help(opened, first)}, or a larger ${truths[0]}, or a tally that gives it more`,
    );
  }
  return found;
}

function pathFindings({ callout, truths }: Opened, path: GreedyPath, twins: readonly CauseId[]): Finding[] {
  const { id, budget } = callout;
  const belief = path.steps.at(-1)?.posterior ?? {};
  const told = twins.reduce((sum, cause) => sum + (belief[cause] ?? 0), 0);
  const share = `${(100 * told).toFixed(0)} %`;
  if (told < TOLD) {
    const why = `the best readings, one after the other, bring belief in ${truths[0]} to ${share} only`;
    const mend = 'more instruments in the bag, a larger fault or fewer rivals in the tally';
    return [{ callout: id, rule: 'path', weight: 'refused', why, mend }];
  }
  const minutes = minutesOf(path);
  if (budget < minutes) {
    const why = `${budget} minutes are not enough for the shortest path that tells it (${minutes.toFixed(0)} min)`;
    const mend = `a budget of at least ${Math.ceil(2 * minutes)} minutes`;
    return [{ callout: id, rule: 'budget', weight: 'refused', why, mend }];
  }
  return [];
}

/** The first instrument outside the bag whose readings would part the truth from the rival by three to one. */
function help({ callout, differential, truths, read }: Opened, rival: CauseId): string {
  const parts = (extra: InstrumentId) => {
    const readings = everyReading(benchOf(callout, [...callout.toolbag, extra]), read);
    const likelihoods = causeLogLikelihoods(differential, readings, [truths[0], rival]);
    return likelihoods.get(truths[0])! - likelihoods.get(rival)! >= LN3;
  };
  const found = INSTRUMENTS.filter((each) => !callout.toolbag.includes(each)).find(parts);
  return found ? `put ${found} into the bag` : `no further instrument parts it from ${rival}: take another size`;
}

/** Shares of the size at which a machine that stands is tried again. */
const SMALLER = [0.9, 0.8, 0.65, 0.5, 0.35, 0.2] as const;

function standing(callout: Callout): string {
  return `the machine has no steady state in which it runs, so that nothing can be read: ${whyNot(callout)}`;
}

function mendOf(callout: Callout): string {
  const scaled = (share: number) =>
    Object.fromEntries(Object.entries(callout.faults).map(([key, size]) => [key, Number((share * size).toFixed(3))]));
  if (Object.keys(callout.faults).length === 0 || !runsWith(callout, {})) {
    return 'other weather or another room: the healthy machine does not run there either';
  }
  const share = SMALLER.find((each) => runsWith(callout, scaled(each)));
  if (share === undefined) return 'another fault, or milder weather';
  const faults = Object.entries(scaled(share)).map(([key, size]) => `${key} ${size}`);
  return `a smaller fault (it runs with ${faults.join(', ')}), or milder weather`;
}
