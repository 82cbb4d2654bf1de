/** The trainee's own sums, marked from the trainee's own inputs. */
import { unitOf } from '../../physics/types';
import { CATALOGUE, type ChannelName, kindOfChannel } from '../instruments';
import { ensure } from './refusal';
import type { MarkedSum } from './state';
import { findSlip } from './sumSlips';
import { difference, type Lines, type SumTask, work } from './sumWork';
import type { Action, Note, SumKind } from './types';

export type SumAction = Extract<Action, { kind: 'sum' }>;

/** Reading a pressure–temperature table to its nearest whole degree, K. */
const TABLE_READING = 0.5;
/** Rounding an answer to a tenth of a degree, K. */
const ANSWER_ROUNDING = 0.06;
/** Air pressure as people carry it in their heads (100 or 101 kPa), Pa. */
const ATMOSPHERE_READING = 2000;

/** What goes into a sum: a pressure with its line, or two temperatures. */
interface SumRule {
  readonly line: 'dew' | 'bubble' | 'by-place' | null;
  /** number of temperatures; the second is taken from the first */
  readonly temperatures: 0 | 1 | 2;
  /** the channels that this sum is made of, in the order of the subtraction */
  readonly made: readonly (readonly ChannelName[])[];
}

const PRESSURES: readonly ChannelName[] = [
  'suctionPressure',
  'liquidPressure',
  'dischargePressure',
  'liquidPressureAfterDrier',
  'sensor:suctionPressure',
  'sensor:dischargePressure',
];

export const SUM_RULES: Readonly<Record<SumKind, SumRule>> = {
  superheat: {
    line: 'dew',
    temperatures: 1,
    made: [['suctionPressure', 'sensor:suctionPressure'], ['suctionLineTemp']],
  },
  subcooling: {
    line: 'bubble',
    temperatures: 1,
    made: [['liquidPressure'], ['liquidLineTemp']],
  },
  'saturation-temperature': {
    line: 'by-place',
    temperatures: 0,
    made: [PRESSURES],
  },
  'absolute-pressure': {
    line: null,
    temperatures: 0,
    made: [PRESSURES],
  },
  'air-drop': {
    line: null,
    temperatures: 2,
    made: [['returnAirTemp', 'sensor:returnAir'], ['supplyAirTemp']],
  },
  'air-rise': {
    line: null,
    temperatures: 2,
    made: [['condenserLeavingAirTemp'], ['condenserEnteringAirTemp', 'outdoorAirTemp', 'sensor:outdoorAir']],
  },
  approach: {
    line: null,
    temperatures: 2,
    made: [['liquidLineTemp'], ['outdoorAirTemp', 'condenserEnteringAirTemp', 'sensor:outdoorAir']],
  },
  'line-difference': { line: null, temperatures: 2, made: [['liquidLineTemp'], ['liquidLineTempAfterDrier']] },
};

/** Marks one sum. `earlier` = sums marked before, `epoch` = the machine's present one. Throws ActionRefused. */
export function markSum(
  action: SumAction,
  notes: readonly Note[],
  earlier: readonly MarkedSum[],
  world: Pick<SumTask, 'saturation' | 'atmosphere'>,
  at: { readonly time: number; readonly action: number },
): MarkedSum {
  const task = taskOf(action, notes, world);
  const lines: Lines = { line: task.line, added: task.atmosphere };
  const worked = work(task, lines);
  ensure(worked !== null, 'no-saturation', action.sum);
  const tolerance = toleranceOf(task);

  const own = action.saturation ?? null;
  const readOff = own === null || worked.saturation === null || Math.abs(own - worked.saturation) <= tolerance.line;
  const usesOwn = own !== null && worked.saturation !== null && task.temperatures.length === 1;
  const expected = usesOwn ? difference(task.kind, task.temperatures[0]!.value, own) : worked.result;
  const allowed = usesOwn ? tolerance.subtraction : tolerance.result;
  const right = readOff && Math.abs(action.answer - expected) <= allowed;

  const same = earlier.filter((sum) => sum.task === taskName(action, notes));
  const trial = same.length + 1;
  const done = same.some((sum) => sum.right);
  return {
    sum: action.sum,
    task: taskName(action, notes),
    notes: action.notes,
    saturation: own,
    answer: action.answer,
    ...at,
    expected,
    expectedSaturation: worked.saturation,
    tolerance: allowed,
    inputsFit: fits(action.sum, task),
    right,
    slip: right
      ? null
      : findSlip(task, { own, answer: action.answer, readOff, expected, allowed, line: tolerance.line }),
    trial,
    credit: right && !done && trial <= 2 ? 1 / trial : 0,
    shown: right || trial >= 2,
  };
}

function taskOf(
  { sum, notes: indices }: SumAction,
  notes: readonly Note[],
  world: Pick<SumTask, 'saturation' | 'atmosphere'>,
): SumTask {
  const rule = SUM_RULES[sum];
  const inputs = indices.map((index) => {
    const note = notes[index];
    ensure(note !== undefined, 'no-such-note', index);
    ensure(!note.struck, 'struck-note', index);
    return note;
  });
  const pressures = inputs.filter(({ quantity }) => quantity === 'pressure');
  const temperatures = inputs.filter(({ quantity }) => quantity === 'temperature');
  const wantsPressure = rule.temperatures < 2;
  const fit = pressures.length === (wantsPressure ? 1 : 0) && temperatures.length === rule.temperatures;
  ensure(fit && pressures.length + temperatures.length === inputs.length, 'bad-inputs', sum);
  const pressure = pressures[0] ?? null;
  const byPlace =
    pressure?.channel === 'suctionPressure' || pressure?.channel === 'sensor:suctionPressure' ? 'dew' : 'bubble';
  const line = rule.line === 'by-place' ? byPlace : rule.line;
  return { kind: sum, ...world, pressure, temperatures: inOrder(rule, temperatures), line };
}

/** In the order of the subtraction where the notes are the right ones, else as they were given. */
function inOrder({ made, temperatures: count }: SumRule, temperatures: readonly Note[]): readonly Note[] {
  if (count !== 2) return temperatures;
  const [a, b] = temperatures as [Note, Note];
  const is = (which: 0 | 1, note: Note) => made[which]!.includes(kindOfChannel(note.channel));
  return is(0, b) && is(1, a) ? [b, a] : [a, b];
}

function fits(kind: SumKind, { pressure, temperatures }: SumTask): boolean {
  const inputs = pressure ? [pressure, ...temperatures] : temperatures;
  const units = new Set(inputs.map(({ channel }) => unitOf(channel)).filter((unit) => unit !== null));
  const isMade = SUM_RULES[kind].made.every((channels, i) => channels.includes(kindOfChannel(inputs[i]!.channel)));
  return isMade && units.size <= 1;
}

/** One sum of one kind on the same places and the same machine: answers to it count first, second … */
function taskName({ sum, notes: indices }: SumAction, notes: readonly Note[]): string {
  const channels = indices.map((index) => notes[index]!.channel).sort();
  const epoch = Math.max(...indices.map((index) => notes[index]!.epoch));
  return `${sum}(${channels.join(',')})@${epoch}`;
}

/** Half a display step of each input, the table's whole degrees, the answer's rounding; SI. */
function toleranceOf(task: SumTask): { line: number; subtraction: number; result: number } {
  const steps = task.temperatures.reduce((sum, note) => sum + displayStep(note) / 2, ANSWER_ROUNDING);
  if (!task.pressure) return { line: 0, subtraction: steps, result: steps };
  const half = displayStep(task.pressure) / 2;
  if (!task.line) return { line: 0, subtraction: 0, result: half + ATMOSPHERE_READING };
  const low = work(task, { line: task.line, added: task.atmosphere - half })?.saturation;
  const high = work(task, { line: task.line, added: task.atmosphere + half })?.saturation;
  const line = TABLE_READING + (low != null && high != null ? (high - low) / 2 : 0);
  return { line, subtraction: steps, result: line + steps };
}

function displayStep({ instrument, quantity }: Note): number {
  return CATALOGUE[instrument].resolution[quantity] ?? 0;
}
