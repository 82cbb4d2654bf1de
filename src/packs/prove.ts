/**
 * Is a callout tellable? The greedy best readings are taken on many machines of its kind: its own fault near its own
 * size, differences of its own, instruments with their errors. None lies on the examiner's grid.
 */
import { FAULTS } from '../../physics';
import type { CauseId, Faults, MachineSetup, Nuisance } from '../../physics/types';
import { drawNuisance, machineNuisance, REAL_WORLD } from '../attempt';
import type { Callout } from '../attempt/pack/types';
import type { Bench } from '../examiner/candidates';
import { truthsOf } from '../examiner/case';
import { classed } from '../examiner/observe';
import { greedyPathOn } from '../examiner/path';
import { type Reader, readerOf } from '../examiner/readings';
import { sourceOf, statesOf } from '../examiner/source';
import { twinsOf } from '../examiner/twins';
import type { Channel, Differential, JudgedState, Observation } from '../examiner/types';
import { CHANGE_MINUTES } from '../examiner/value';
import { classOf, senseOf } from '../instruments/looks';
import { channelValue } from '../instruments/places';
import { type Stream, stream } from '../instruments/streams';

/** Belief that counts as told. */
export const TOLD = 0.8;
/** Sizes tried lie within this share of the callout's own. */
const SIZE_SPREAD = 0.15;

export interface Trial {
  /** belief in the truth, its twins with it */
  readonly belief: number;
  readonly leading: CauseId;
  /** minutes of the greedy path, changes of state included */
  readonly minutes: number;
  /** channels in the order in which they were read */
  readonly path: readonly Channel[];
}

export interface Proof {
  readonly trials: readonly Trial[];
  /** share of trials told, and told within the callout's budget */
  readonly told: number;
  readonly inTime: number;
  /** minutes within which half, and nine tenths, of the paths end */
  readonly median: number;
  readonly ninth: number;
}

export function benchFor(callout: Callout): Bench {
  const source = sourceOf(REAL_WORLD);
  const plant = source.plant(callout);
  return {
    plant,
    toolbag: callout.toolbag,
    charge: plant.nameplate(callout.refrigerant).charge,
    states: statesOf(plant),
  };
}

/** `readFrom` = the callout whose machines are read, where the readings are to be another's. */
export function proveCallout(
  callout: Callout,
  differential: Differential,
  machines: number,
  readFrom: Callout = callout,
): Proof {
  const subject: Subject = { callout, differential, bench: benchFor(callout), truths: twinsIn(callout, differential) };
  const trials = Array.from({ length: machines }, (_, i) => tryOne(subject, readFrom, i));
  const told = trials.filter(({ belief }) => belief >= TOLD);
  const minutes = trials.map((each) => each.minutes).sort((a, b) => a - b);
  return {
    trials,
    told: told.length / machines,
    inTime: told.filter((each) => each.minutes <= callout.budget).length / machines,
    median: minutes[Math.floor(0.5 * machines)],
    ninth: minutes[Math.min(machines - 1, Math.floor(0.9 * machines))],
  };
}

interface Subject {
  readonly callout: Callout;
  readonly differential: Differential;
  readonly bench: Bench;
  /** the true cause and what no allowed reading tells from it on the callout's own machine */
  readonly truths: readonly CauseId[];
}

/** The causes that count as right: judged on the callout's own machine, so that no odd machine widens them. */
export function twinsIn(callout: Callout, differential: Differential): readonly CauseId[] {
  const setup = setupOf(callout, callout.faults, machineNuisance(callout.machineSeed));
  const read = readerOf(sourceOf(REAL_WORLD).snapshots(setup, differential.states));
  return twinsOf(differential, benchFor(callout), read, truthsOf(callout.faults));
}

function tryOne({ callout, differential, bench, truths }: Subject, from: Callout, index: number): Trial {
  const random = stream(`${from.id}/off-grid/${index}`);
  const setup = setupOf(from, nearby(from.faults, random), drawNuisance(random));
  const snapshots = sourceOf(REAL_WORLD).snapshots(setup, differential.states);
  const path = greedyPathOn(differential, callout.tally, bench, erring(snapshots, random));
  const belief = path.steps.at(-1)?.posterior ?? {};
  const ranked = (Object.entries(belief) as [CauseId, number][]).sort(([, a], [, b]) => b - a);
  const states = new Set(path.steps.map(({ candidate }) => candidate.state));
  return {
    belief: truths.reduce((sum, cause) => sum + (belief[cause] ?? 0), 0),
    leading: ranked[0]?.[0] ?? 'no-fault',
    minutes: path.cost + [...states].reduce((sum, state) => sum + CHANGE_MINUTES[state], 0),
    path: path.steps.map(({ candidate }) => candidate.channel),
  };
}

function setupOf({ plant, refrigerant, conditions }: Callout, faults: Faults, nuisance: Nuisance): MachineSetup {
  return { plant, refrigerant, conditions, faults, nuisance };
}

/** The same faults, a little larger or smaller, within what the family covers. */
function nearby(faults: Faults, { uniform }: Stream): Faults {
  return Object.fromEntries(
    Object.entries(faults).map(([key, severity]) => {
      const { slight, max } = FAULTS.find(({ id }) => id === key.split(':')[0])!;
      const size = Math.abs(severity) * (1 + SIZE_SPREAD * (2 * uniform() - 1));
      return [key, Math.sign(severity) * Math.min(max, Math.max(slight, size))];
    }),
  );
}

/** Reads with the errors that the instruments have: one bias a group, noise and rounding each time. */
function erring(snapshots: Parameters<typeof readerOf>[0], random: Stream): Reader {
  const exact = readerOf(snapshots);
  const biases = new Map<string, number>();
  return (candidate): Observation | null => {
    const reading = exact(candidate);
    if (!reading) return null;
    if (reading.kind === 'classed') {
      const sense = senseOf(candidate.channel)!;
      const seen = channelValue(snapshots[candidate.state as JudgedState]!, candidate.channel);
      return classed(candidate.channel, candidate.state, classOf(sense, seen + sense.sd * random.normal()));
    }
    const bias = biases.get(reading.biasKey) ?? random.normal();
    biases.set(reading.biasKey, bias);
    return { ...reading, value: reading.value + reading.bias * bias + reading.noise * random.normal() };
  };
}
