/**
 * The other face of the picture: the same state in plain sentences, in the order of the refrigerant, then the air.
 * It says no number and nothing that the picture does not show.
 */
import type { DrawnPart, PlantDrawing, Snapshot } from '../../physics/types';
import { type Content, contentAt, type Reach, reachesOf, speedsOf } from './model/reaches';
import { waterOff } from './model/water';

/** A message of the catalogue; values that begin with 'bench.' are messages themselves. */
export interface Sentence {
  /** part or pipe of the drawing that it is about */
  readonly about: string;
  readonly key: string;
  readonly values: Readonly<Record<string, SentenceValue>>;
}
export type SentenceValue = string | { readonly key: string; readonly values: Readonly<Record<string, string>> };

const KELVIN = 273.15;

/** Bounds in °C, each with the word for what lies below it. */
const WARMTH: readonly (readonly [number, string])[] = [
  [0, 'freezing'],
  [12, 'cold'],
  [20, 'cool'],
  [30, 'mild'],
  [42, 'warm'],
  [60, 'hot'],
  [Number.POSITIVE_INFINITY, 'scalding'],
];
/** Share of gas by volume. */
const CONTENT: readonly (readonly [number, string])[] = [
  [0.001, 'liquid'],
  [0.3, 'liquid-with-bubbles'],
  [0.9, 'mixed'],
  [0.999, 'gas-with-drops'],
  [Number.POSITIVE_INFINITY, 'gas'],
];
/** Speed in the pipe, m/s. */
const PACE: readonly (readonly [number, string])[] = [
  [0.01, 'still'],
  [0.5, 'slow'],
  [3, 'steady'],
  [Number.POSITIVE_INFINITY, 'fast'],
];
/** Share of rated fan speed. */
const TURN: readonly (readonly [number, string])[] = [
  [0.02, 'stopped'],
  [0.75, 'slow'],
  [0.93, 'somewhat'],
  [Number.POSITIVE_INFINITY, 'full'],
];
/** Share covered, or share of air taken away. */
const AMOUNT: readonly (readonly [number, string])[] = [
  [0.02, 'none'],
  [0.12, 'trace'],
  [0.4, 'some'],
  [0.8, 'much'],
  [Number.POSITIVE_INFINITY, 'all'],
];
/** Share of gas by volume behind the sight glass. */
const GLASS: readonly (readonly [number, string])[] = [
  [0.005, 'clear'],
  [0.15, 'few'],
  [0.7, 'many'],
  [Number.POSITIVE_INFINITY, 'foam'],
];
/** Water off the drain, kg/s. */
const DRIP: readonly (readonly [number, string])[] = [
  [2e-5, 'dry'],
  [4e-4, 'slow'],
  [Number.POSITIVE_INFINITY, 'fast'],
];

function word(scale: readonly (readonly [number, string])[], value: number): string {
  return (scale.find(([bound]) => value < bound) ?? scale[scale.length - 1])[1];
}

const warmthOf = (kelvin: number) => `bench.warmth.${word(WARMTH, kelvin - KELVIN)}`;
const contentOf = (gas: number) => `bench.content.${word(CONTENT, gas)}`;

/** Sentences from the compressor round the circuit and back, then fans, filter and drain. */
export function describeBench(drawing: PlantDrawing, snapshot: Snapshot, inside = true): Sentence[] {
  const reaches = reachesOf(drawing);
  const speeds = speedsOf(reaches, snapshot);
  const speed = (reach: Reach) => speeds[reaches.indexOf(reach)];
  const sentences: Sentence[] = [compressor(snapshot)];
  if (!inside) sentences.push(flow(snapshot));
  for (const reach of pathOrder(reaches)) {
    if (inside) sentences.push((reach.kind === 'pipe' ? pipe : coil)(reach, snapshot, speed(reach)));
    if (reach.kind === 'coil') sentences.push(face(reach, snapshot));
    const glass = drawing.parts.find((part) => part.kind === 'sight-glass' && reach.route.within(part) !== null);
    if (glass) sentences.push(sightGlass(glass, snapshot));
  }
  for (const part of drawing.parts) {
    if (part.kind === 'fan') sentences.push(fan(part, snapshot));
    if (part.kind === 'filter') sentences.push(filter(part, snapshot));
  }
  sentences.push({ about: 'drain', key: `bench.drip.${word(DRIP, waterOff(snapshot))}`, values: {} });
  return sentences;
}

/** Follows the stations from the compressor's outlet; a coil comes after the pipe that feeds it. */
function pathOrder(reaches: readonly Reach[]): Reach[] {
  const ordered: Reach[] = [];
  let next = reaches.find((reach) => reach.from === 'compressor-out');
  while (next && !ordered.includes(next)) {
    const here: Reach = next;
    ordered.push(here);
    const fed = reaches.find((reach) => reach.feeds && reaches[reach.feeds[0]] === here);
    if (fed?.feeds) {
      ordered.push(fed);
      next = reaches[fed.feeds[1]];
    } else {
      next = reaches.find((reach) => reach.kind === 'pipe' && reach.from === here.to);
    }
  }
  return ordered;
}

function compressor(snapshot: Snapshot): Sentence {
  const runs = snapshot.probes.compressorSpeed.value > 0;
  return { about: 'compressor', key: runs ? 'bench.says.compressorRuns' : 'bench.says.compressorStands', values: {} };
}

/** All that a closed pipe gives away. */
function flow(snapshot: Snapshot): Sentence {
  const flows = snapshot.probes.refrigerantMassFlow.value > 0;
  return { about: 'circuit', key: flows ? 'bench.says.flows' : 'bench.says.flowStands', values: {} };
}

function pipe(reach: Reach, snapshot: Snapshot, speed: number): Sentence {
  const part = `bench.pipe.${reach.id}`;
  const content: Content = { temperature: 0, gas: 0 };
  // A pipe that ends in a drier is described before it; the next pipe tells of what comes out.
  const share = reach.throttle && reach.throttle.from > 0.05 ? reach.throttle.from : 1;
  contentAt(reach, snapshot, share, content);
  return {
    about: reach.id,
    key: 'bench.says.pipe',
    values: {
      part,
      content: contentOf(content.gas),
      pace: `bench.pace.${word(PACE, speed)}`,
      warmth: warmthOf(content.temperature),
    },
  };
}

function coil(reach: Reach, snapshot: Snapshot, speed: number): Sentence {
  const part = `bench.coil.${reach.role}`;
  const segments = reach.role === 'condenser' ? snapshot.condenser : snapshot.evaporator;
  const wall = segments.reduce((sum, segment) => sum + segment.wall, 0) / Math.max(1, segments.length);
  if (word(PACE, speed) === 'still') {
    return { about: reach.id, key: 'bench.says.coilStill', values: { part, warmth: warmthOf(wall) } };
  }
  const content: Content = { temperature: 0, gas: 0 };
  const entering = contentOf(contentAt(reach, snapshot, 0, content).gas);
  const leaving = contentOf(contentAt(reach, snapshot, 1, content).gas);
  return { about: reach.id, key: 'bench.says.coil', values: { part, entering, leaving, warmth: warmthOf(wall) } };
}

function face(reach: Reach, snapshot: Snapshot): Sentence {
  const isOutdoor = reach.role === 'condenser';
  const share = isOutdoor ? snapshot.looks.condenserDirt : snapshot.looks.evaporatorFrost;
  const what = `bench.what.${isOutdoor ? 'dirt' : 'frost'}`;
  return {
    about: reach.id,
    key: 'bench.says.face',
    values: { part: `bench.coil.${reach.role}`, amount: amount(share, what) },
  };
}

function amount(share: number, what: string): SentenceValue {
  return { key: `bench.amount.${word(AMOUNT, share)}`, values: { what } };
}

function sightGlass(part: DrawnPart, snapshot: Snapshot): Sentence {
  const glass = `bench.glass.${word(GLASS, snapshot.looks.sightGlass)}`;
  return { about: part.id, key: 'bench.says.sightGlass', values: { glass } };
}

function fan(part: DrawnPart, snapshot: Snapshot): Sentence {
  const share = part.role === 'condenser' ? snapshot.looks.condenserFanSpeed : snapshot.looks.evaporatorFanSpeed;
  return {
    about: part.id,
    key: 'bench.says.fan',
    values: { part: `bench.fan.${part.role}`, turn: `bench.turn.${word(TURN, share)}` },
  };
}

function filter(part: DrawnPart, snapshot: Snapshot): Sentence {
  return {
    about: part.id,
    key: 'bench.says.filter',
    values: { amount: amount(snapshot.looks.filterDust, 'bench.what.dust') },
  };
}

/** The sentence in the reader's language. `maybe` is that of `src/i18n`. */
export function sentenceText(
  text: { maybe(key: string, values?: Readonly<Record<string, string>>): string | null },
  sentence: Sentence,
): string {
  const say = (key: string, values: Readonly<Record<string, string>>) => {
    const said = text.maybe(key, values);
    if (said === null) throw new Error(`no catalogue has the text "${key}"`);
    return said;
  };
  const resolved: Record<string, string> = {};
  for (const [name, value] of Object.entries(sentence.values)) {
    if (typeof value === 'string') resolved[name] = say(value, {});
    else {
      const inner = Object.entries(value.values).map(([k, v]) => [k, say(v, {})] as const);
      resolved[name] = say(value.key, Object.fromEntries(inner));
    }
  }
  return say(sentence.key, resolved);
}
