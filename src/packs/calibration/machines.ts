/**
 * Simulated attempts for asking whether the examiner holds what it claims: machines off its grid – cause drawn from the
 * work order's tally, severity within its cells, differences of their own – read here and there by erring instruments.
 * Stranger worlds change the machine or the readings without the examiner's knowledge.
 */
import { createMachine, PhysicsError, plantDescription } from '../../../physics';
import type { CauseId, MachineSetup, Nuisance } from '../../../physics/types';
import { drawNuisance, REAL_WORLD } from '../../attempt';
import type { Callout } from '../../attempt/pack/types';
import { priorOf } from '../../examiner/belief';
import { type Bench, candidatesOf } from '../../examiner/candidates';
import { discrepancyOf } from '../../examiner/discrepancy';
import { type MachineSource, sourceOf, statesOf } from '../../examiner/source';
import type { Candidate, Differential, Node, Observation } from '../../examiner/types';
import { type Stream, stream } from '../../instruments/streams';
import { erringReader } from '../erring';

/** What is other than the examiner thinks. */
export type Strangeness =
  /** nothing: the machine is one of its kind, the instruments err as stated */
  | 'none'
  /** the model itself errs by what the examiner allows for */
  | 'model-error'
  /** both coils conduct 15 % more or less, one against the other */
  | 'coils'
  /** coils follow other published correlations, and conduct 15 % more or less */
  | 'correlations'
  /** instruments err twice as much, which the examiner is told */
  | 'noise';

/** One reading with what took it. */
export interface Read {
  readonly candidate: Candidate;
  readonly observation: Observation;
}

export interface Attempt {
  readonly truth: CauseId;
  readonly readings: readonly Read[];
}

/** How many readings an attempt takes, evenly between. */
const FEWEST = 4;
const MOST = 12;
/** Share by which strange coils differ. */
const COILS = 0.15;

export interface Subject {
  readonly callout: Callout;
  readonly differential: Differential;
}

/** Null where the drawn machine does not run at all, so that nobody would read it. */
export function drawAttempt(
  { callout, differential }: Subject,
  strangeness: Strangeness,
  seed: string,
): Attempt | null {
  const random = stream(seed);
  const node = drawNode(callout, differential, random);
  const severity = node.from + (node.to - node.from) * random.uniform();
  const nuisance = strangeNuisance(callout, strangeness, drawNuisance(random), random);
  const { plant, refrigerant, conditions } = callout;
  const setup: MachineSetup = {
    plant,
    refrigerant,
    conditions,
    faults: node.key === '' ? {} : { [node.key]: severity },
    nuisance,
    ...(strangeness === 'correlations' && { correlations: 'other' as const }),
  };
  const bench = benchOf(callout);
  const snapshots = snapshotsOf(setup, differential);
  if (!snapshots?.running) return null;
  const read = erringReader({ snapshots, seed });
  const count = FEWEST + Math.floor(random.uniform() * (MOST - FEWEST + 1));
  const readings = pick(candidatesOf(bench), count, random).flatMap((candidate): Read[] => {
    const observation = read(candidate);
    return observation ? [{ candidate, observation: changed(observation, strangeness, seed) }] : [];
  });
  return { truth: node.cause, readings };
}

/** Null where a stranger machine has no design point at all. */
function snapshotsOf(setup: MachineSetup, { states }: Differential): ReturnType<MachineSource['snapshots']> | null {
  try {
    return sourceOf(REAL_WORLD).snapshots(setup, states);
  } catch (error) {
    if (error instanceof PhysicsError) return null;
    throw error;
  }
}

export function benchOf(callout: Callout): Bench {
  const plant = sourceOf(REAL_WORLD).plant(callout);
  const { charge } = plant.nameplate(callout.refrigerant);
  return { plant, toolbag: callout.toolbag, charge, states: statesOf(plant) };
}

function drawNode(callout: Callout, differential: Differential, random: Stream): Node {
  const prior = priorOf(differential, callout.tally);
  let chance = random.uniform();
  let last = differential.nodes[0];
  for (const node of differential.nodes) {
    last = node;
    chance -= node.weight * (prior[node.cause] ?? 0);
    if (chance < 0) break;
  }
  return last;
}

function pick(all: readonly Candidate[], count: number, random: Stream): Candidate[] {
  const left = [...all];
  const taken: Candidate[] = [];
  while (taken.length < count && left.length > 0)
    taken.push(...left.splice(Math.floor(random.uniform() * left.length), 1));
  return taken;
}

function changed(observation: Observation, strangeness: Strangeness, seed: string): Observation {
  if (observation.kind === 'classed') return observation;
  const { channel, state, value, noise, bias } = observation;
  const { normal } = stream(`${seed}/strange/${channel}/${state}`);
  if (strangeness === 'model-error') return { ...observation, value: value + discrepancyOf(channel, value) * normal() };
  if (strangeness !== 'noise') return observation;
  // as much again, independent of the first: twice the variance would be too little to see
  const more = Math.sqrt(3);
  return {
    ...observation,
    value: value + more * Math.sqrt(noise * noise + bias * bias) * normal(),
    noise: 2 * noise,
    bias: 2 * bias,
  };
}

function strangeNuisance(callout: Callout, strangeness: Strangeness, own: Nuisance, random: Stream): Nuisance {
  if (strangeness !== 'coils' && strangeness !== 'correlations') return own;
  const coils = random.uniform() < 0.5 ? 1 + COILS : 1 / (1 + COILS);
  const strange = { ...own, condenserUa: own.condenserUa * coils, evaporatorUa: own.evaporatorUa / coils };
  if (strangeness === 'coils') return strange;
  const made = asMade(callout);
  return { ...strange, charge: strange.charge * made.charge, meteringArea: strange.meteringArea * made.metering };
}

interface Made {
  readonly charge: number;
  readonly metering: number;
}

const known = new Map<string, Made>();

/**
 * A maker whose coils follow other correlations fills and sizes the machine so that it reads as its plate at the rating
 * point: charge for subcooling, a fixed orifice for superheat.
 */
function asMade({ plant, refrigerant, conditions: { mode } }: Callout): Made {
  const key = `${plant}/${refrigerant}/${mode}`;
  const found = known.get(key);
  if (found) return found;
  const description = plantDescription(plant, mode, refrigerant);
  const conditions = description.modes[mode] ?? description.designConditions;
  const at = (made: Made | null): { readonly cold: number; readonly warm: number } => {
    const other = made && {
      correlations: 'other' as const,
      nuisance: { charge: made.charge, meteringArea: made.metering },
    };
    const { probes } = createMachine({ plant, refrigerant, conditions, faults: {}, ...other }).steady();
    return { cold: probes.subcooling.value, warm: probes.compressorSuperheat.value };
  };
  const own = at(null);
  const isFixed = plant === 'orifice-split';
  let made: Made = { charge: 1, metering: 1 };
  for (let round = 0; round < 4; round++) {
    let here: ReturnType<typeof at>;
    let fuller: ReturnType<typeof at>;
    try {
      here = at(made);
      fuller = at({ ...made, charge: made.charge * 1.02 });
    } catch (error) {
      if (!(error instanceof PhysicsError)) throw error;
      // rooms of both kinds near balance: where the next guess finds no rest, the last stands
      break;
    }
    const slope = (fuller.cold - here.cold) / (0.02 * made.charge);
    // no slope: a receiver takes up what is too much
    const charge = slope > 5 ? made.charge + (own.cold - here.cold) / slope : made.charge;
    const wider = isFixed ? at({ charge, metering: made.metering * 1.02 }) : here;
    const now = isFixed ? at({ charge, metering: made.metering }) : here;
    const fall = (wider.warm - now.warm) / (0.02 * made.metering);
    const metering = isFixed ? made.metering + Math.max(-0.05, Math.min(0.05, (own.warm - now.warm) / fall)) : 1;
    made = { charge: Math.max(0.8, Math.min(1.2, charge)), metering };
  }
  known.set(key, made);
  return made;
}
