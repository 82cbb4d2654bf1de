/**
 * Set the trap: a machine set so that the readings that everybody takes first point to another cause. It is fair if
 * the readings that the bag allows tell the two apart; both are worked out by the examiner.
 */
import lz from 'lz-string';
import { FAULTS } from '../../physics';
import type { CauseId } from '../../physics/types';
import { REAL_WORLD } from '../attempt';
import { checkValue } from '../attempt/canonical';
import { machineFacts } from '../attempt/pack/facts';
import { readPack } from '../attempt/pack/load';
import type { Callout, Localized, Pack } from '../attempt/pack/types';
import { USUAL_ROOT } from '../attempt/roots';
import { machineNuisance } from '../attempt/seeds';
import { causeLogLikelihoods, priorOf, temper } from '../examiner/belief';
import { candidatesOf } from '../examiner/candidates';
import { truthsOf } from '../examiner/case';
import { LN3 } from '../examiner/numeric';
import { INPUTS } from '../examiner/quanta';
import { readerOf } from '../examiner/readings';
import { sourceOf } from '../examiner/source';
import { everyReading } from '../examiner/twins';
import type { Channel, Posterior } from '../examiner/types';
import { namedCauses } from './edges';
import { benchAt, type Setting } from './setting';

/** What everybody reads first: superheat and the air that comes out. Common practice, no source. */
const FIRST: readonly Channel[] = [...INPUTS.superheat, 'supplyAirTemp'];
/** Belief from every allowed reading that counts as told. */
const TOLD = 0.8;

export interface TrapDraft {
  /** fault key; the family's own where it has no targets */
  readonly fault: string;
  readonly severity: number;
  readonly imitates: CauseId;
}

export type TrapCheck =
  | { readonly as: 'stops' }
  | {
      readonly as: 'checked';
      /** belief from the readings that everybody takes first */
      readonly first: Posterior;
      /** belief from every reading that the bag allows */
      readonly all: Posterior;
      /** after the first readings no cause is likelier than the imitated one */
      readonly works: boolean;
      /** every reading makes the true cause likely, and at least three times as likely as the imitated one */
      readonly fair: boolean;
    };

/** Faults that can be set at this place: those of its tally, their sizes from barely to be seen to the end. */
export function trapFaults(
  setting: Pick<Setting, 'callout'>,
): { cause: CauseId; fault: string; from: number; to: number }[] {
  return namedCauses(setting).flatMap((cause) => {
    const family = FAULTS.find(({ id }) => id === cause);
    if (!family || family.targets || family.perUnit) return [];
    return [{ cause, fault: family.id, from: family.slight, to: family.max }];
  });
}

export function trapCallout({ callout: home }: Pick<Setting, 'callout'>, { fault, severity }: TrapDraft): Callout {
  const { lookAlike: _none, ...rest } = home;
  const cause = truthsOf({ [fault]: severity })[0]!;
  const machineSeed = `trap-${checkValue(`${home.id}/${fault}/${severity}`)}`.toLowerCase();
  return {
    ...rest,
    id: 'trap',
    faults: { [fault]: severity },
    rootCause: USUAL_ROOT[cause],
    mode: 'solo',
    machineSeed,
  };
}

/** Whether the callout's machine is taken for `imitates` at first, and whether it can be told from it after all. */
export function checkTrap(
  { differential }: Pick<Setting, 'differential'>,
  callout: Callout,
  imitates: CauseId,
): TrapCheck {
  const { plant, refrigerant, conditions, faults, machineSeed, tally } = callout;
  const setup = { plant, refrigerant, conditions, faults, nuisance: machineNuisance(machineSeed) };
  const snapshots = sourceOf(REAL_WORLD).snapshots(setup, differential.states);
  if (!snapshots.running) return { as: 'stops' };
  const bench = benchAt(callout);
  const read = readerOf(snapshots);
  const named = namedCauses({ callout });
  const believe = (likelihoods: ReadonlyMap<CauseId, number>) => temper(priorOf(differential, tally), likelihoods, 1);
  const opening = candidatesOf(bench)
    .filter(({ channel, state }) => state === 'running' && FIRST.includes(channel))
    .flatMap((candidate) => read(candidate) ?? []);
  const first = believe(causeLogLikelihoods(differential, opening, named));
  const whole = causeLogLikelihoods(differential, everyReading(bench, read), named);
  const all = believe(whole);
  const truth = truthsOf(faults)[0]!;
  return {
    as: 'checked',
    first,
    all,
    works: named.every((cause) => (first[cause] ?? 0) <= (first[imitates] ?? 0)),
    fair: (all[truth] ?? 0) >= TOLD && whole.get(truth)! - whole.get(imitates)! >= LN3,
  };
}

const TEXTS: { readonly title: Localized; readonly about: Localized } = {
  title: { en: 'A trap', es: 'Una trampa' },
  about: { en: 'A machine that somebody has set for you.', es: 'Una máquina que alguien ha preparado para ti.' },
};

/** A pack of one callout; its name says nothing of what is in it. */
export function trapPack(home: Pick<Pack, 'weights'>, callout: Callout): Pack {
  const id = `trap-${checkValue(JSON.stringify(callout)).toLowerCase()}`;
  return { format: 1, id, version: 1, ...TEXTS, weights: home.weights, callouts: [callout] };
}

/** For a link. It holds the answer packed, not hidden: whoever unpacks it fools only themselves. */
export function packToCode(pack: Pack): string {
  return lz.compressToEncodedURIComponent(JSON.stringify(pack));
}

/** Null where the text was packed by nobody; the unpacker throws at some of it. */
function unpacked(code: string): string | null {
  try {
    return lz.decompressFromEncodedURIComponent(code);
  } catch {
    return null;
  }
}

/** Longer codes are refused unread: unpacking cannot be bounded. */
const LONGEST_CODE = 6000;

/** A trap out of a link or a file, or what is wrong with it. */
export function readTrap(code: string): { readonly pack: Pack } | { readonly problem: string } {
  if (code.length > LONGEST_CODE) return { problem: `${code.length} characters, at most ${LONGEST_CODE}` };
  const text = code.trimStart().startsWith('{') ? code : unpacked(code.trim());
  if (!text) return { problem: 'it cannot be unpacked' };
  const outcome = readPack(text, machineFacts);
  if (!outcome.ok) return { problem: outcome.problems[0]!.message };
  const { pack } = outcome;
  if (!pack.id.startsWith('trap-') || pack.callouts.length !== 1) return { problem: 'it is no trap' };
  return { pack };
}
