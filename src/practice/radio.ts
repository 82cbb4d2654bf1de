/** On the radio: which three readings would make a colleague, who knows only the work order, believe what is true? */
import type { CauseId } from '../../physics/types';
import { REAL_WORLD } from '../attempt';
import { machineNuisance } from '../attempt/seeds';
import { causeLogLikelihoods, priorOf, temper } from '../examiner/belief';
import { truthsOf } from '../examiner/case';
import { INPUTS, TELLING_SUMS } from '../examiner/quanta';
import { type Reader, readerOf } from '../examiner/readings';
import { sourceOf, statesOf } from '../examiner/source';
import type { Channel, Observation, Posterior } from '../examiner/types';
import { stream } from '../instruments/streams';
import { erringReader } from '../packs/erring';
import { namedCauses } from './edges';
import { drawJob, twinOf } from './machine';
import { type Compared, comparedOn, isLook, isOfUnit } from './quanta';
import { benchAt, type Setting } from './setting';

/** Readings that a message holds. */
export const TOLD = 3;
/** Looks in the notebook. */
const LOOKS = 4;

export interface Noted {
  readonly compared: Compared;
  readonly value: number;
  readonly observation: Observation;
  readonly twin: number | null;
}

export interface Radio {
  readonly setting: Setting;
  readonly seed: string;
  readonly truth: CauseId;
  readonly notebook: readonly Noted[];
  /** Pa */
  readonly atmosphere: number;
}

/** What every notebook holds: what the sums are made of, and the current. */
const USUAL: readonly Channel[] = [
  ...new Set([...TELLING_SUMS.flatMap((sum) => INPUTS[sum]), 'compressorCurrent' as const]),
];

/** A machine drawn from the place's tally, and a notebook from it. */
export function makeRadio(setting: Setting, seed: string): Radio {
  const { callout: home, differential } = setting;
  const drawn = drawJob(home, `radio-${seed}`, `radio/${home.id}/${seed}`, home.toolbag);
  const { plant, refrigerant, conditions, faults, machineSeed } = drawn;
  const source = sourceOf(REAL_WORLD);
  const setup = { plant, refrigerant, conditions, faults, nuisance: machineNuisance(machineSeed) };
  const read = erringReader({ snapshots: source.snapshots(setup, statesOf(source.plant(setup))), seed });
  const twin = readerOf(twinOf(home));
  const all = comparedOn(benchAt(home), differential, ['running']).filter(
    (one) => one.quantum.sum === undefined && !isOfUnit(one),
  );
  const { uniform } = stream(`radio/${seed}/looks`);
  const looks = all
    .filter(isLook)
    .map((one) => ({ one, at: uniform() }))
    .sort((a, b) => a.at - b.at)
    .slice(0, LOOKS);
  const chosen = [...all.filter(({ inputs }) => USUAL.includes(inputs[0]!.channel)), ...looks.map(({ one }) => one)];
  return {
    setting,
    seed,
    truth: truthsOf(faults)[0]!,
    notebook: chosen.flatMap((one) => noted(one, read, twin)),
    atmosphere: REAL_WORLD.airPressure(conditions.altitude),
  };
}

function noted(compared: Compared, read: Reader, twin: Reader): Noted[] {
  const observation = read(compared.inputs[0]!);
  if (!observation) return [];
  return [{ compared, value: observation.value, observation, twin: twin(compared.inputs[0]!)?.value ?? null }];
}

/** What whoever knows only the work order believes after these readings. */
export function beliefFrom({ setting }: Radio, told: readonly Noted[]): Posterior {
  const { differential, callout } = setting;
  const named = namedCauses(setting);
  const likelihoods = causeLogLikelihoods(
    differential,
    told.map(({ observation }) => observation),
    named,
  );
  return temper(priorOf(differential, callout.tally), likelihoods, 1);
}

export interface BestThree {
  readonly told: readonly Noted[];
  readonly belief: number;
}

/** Every three of the notebook, so many a step that a page can go on drawing; the last value is the best. */
export function* bestThree(radio: Radio, step = 20): Generator<null, BestThree> {
  const { notebook, truth } = radio;
  let best: BestThree = { told: [], belief: beliefFrom(radio, [])[truth] ?? 0 };
  let count = 0;
  for (let i = 0; i < notebook.length; i++) {
    for (let j = i + 1; j < notebook.length; j++) {
      for (let k = j + 1; k < notebook.length; k++) {
        const told = [notebook[i]!, notebook[j]!, notebook[k]!];
        const belief = beliefFrom(radio, told)[truth] ?? 0;
        if (belief > best.belief) best = { told, belief };
        count += 1;
        if (count % step === 0) yield null;
      }
    }
  }
  return best;
}
