/**
 * The other face of the picture: the same state in plain sentences, in the order of the refrigerant, then the air.
 * It says no number and nothing that the picture does not show.
 */
import type { BranchSnapshot, DrawnPart, PlantDrawing, Snapshot } from '../../physics/types';
import { type Content, contentAt, type Reach, reachesOf, speedsOf } from './model/reaches';
import { lookAt, probeAt } from './model/stations';
import { waterOff } from './model/water';
import { AMOUNT, contentOf, DRIP, GLASS, PACE, TURN, warmthOf, word } from './scales';

/** A message of the catalogue; values that begin with 'bench.' are messages themselves. */
export interface Sentence {
  /** part or pipe of the drawing that it is about */
  readonly about: string;
  readonly key: string;
  readonly values: Readonly<Record<string, SentenceValue>>;
}
export type SentenceValue =
  | string
  | { readonly key: string; readonly values: Readonly<Record<string, string | number>> };

/** Sentences from the compressor round the circuit and back, then fans, filter and drain. */
export function describeBench(drawing: PlantDrawing, snapshot: Snapshot, inside = true): Sentence[] {
  if (snapshot.units) return [...describeMany(drawing, snapshot, inside), drain(snapshot)];
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
  sentences.push(drain(snapshot));
  return sentences;
}

/** Many units: the machine, its mains and modules, then each unit by itself. */
function describeMany(drawing: PlantDrawing, snapshot: Snapshot, inside: boolean): Sentence[] {
  const reaches = reachesOf(drawing);
  const speeds = speedsOf(reaches, snapshot);
  const speed = (reach: Reach) => Math.abs(speeds[reaches.indexOf(reach)]);
  const sentences: Sentence[] = [compressor(snapshot)];
  if (!inside) sentences.push(flow(snapshot));
  for (const id of inside ? MAINS : []) {
    const reach = reaches.find((candidate) => candidate.id === id);
    if (reach) sentences.push(pipe(reach, snapshot, speed(reach), `bench.main.${id}`));
  }
  for (const branch of [...(snapshot.modules ?? []), ...(snapshot.units ?? [])]) {
    if (inside) sentences.push(branchCoil(branch, snapshot));
    sentences.push(branchAir(snapshot, branch.id));
  }
  return sentences;
}

/** Long pipes that all units share, by their ids in the drawings. */
const MAINS = ['liquid-line', 'gas-line', 'hot-line', 'suction-line'] as const;

function branchCoil({ id, role, coil }: BranchSnapshot, { regime, probes }: Snapshot): Sentence {
  const warmth = warmthOf(coil.reduce((sum, segment) => sum + segment.wall, 0) / Math.max(1, coil.length));
  const name = nameOf(id);
  const rests = regime === 'still' && probes.compressorSpeed.value === 0;
  if (rests || role === 'idle') return { about: id, key: 'bench.says.branchIdle', values: { name, warmth } };
  const [first, last] = [coil[0], coil[coil.length - 1]].map((segment) => `bench.phase.${phaseOf(segment.quality)}`);
  const does = `bench.does.${role}`;
  return { about: id, key: 'bench.says.branchCoil', values: { name, does, entering: first, leaving: last, warmth } };
}

function phaseOf(quality: number): string {
  return quality <= 0 ? 'liquid' : quality >= 1 ? 'gas' : 'mixed';
}

/** What a person standing before it could see and feel. */
function branchAir(snapshot: Snapshot, id: string): Sentence {
  const isModule = snapshot.modules?.some((module) => module.id === id) ?? false;
  const turn = lookAt(snapshot, isModule ? 'condenserFanSpeed' : 'evaporatorFanSpeed', id);
  const dirt = lookAt(snapshot, isModule ? 'condenserDirt' : 'filterDust', id);
  const air = probeAt(snapshot, isModule ? 'condenserLeavingAirTemp' : 'supplyAirTemp', id);
  return {
    about: id,
    key: `bench.says.${isModule ? 'moduleAir' : 'unitAir'}`,
    values: {
      name: nameOf(id),
      turn: `bench.turn.${isModule ? eased(turn) : word(TURN, turn)}`,
      amount: amount(dirt, `bench.what.${isModule ? 'dirt' : 'dust'}`),
      warmth: warmthOf(air),
    },
  };
}

/** An outdoor fan of such a machine goes as fast as its controller asks, so that slow is nothing amiss. */
function eased(turn: number): string {
  const said = word(TURN, turn);
  return said === 'slow' || said === 'somewhat' ? 'part' : said;
}

function nameOf(id: string): SentenceValue {
  const [, kind, number] = /^(unit|module)(\d+)$/.exec(id) ?? [];
  return { key: `bench.branch.${kind}`, values: { number: Number(number) } };
}

function drain(snapshot: Snapshot): Sentence {
  return { about: 'drain', key: `bench.drip.${word(DRIP, waterOff(snapshot))}`, values: {} };
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

function pipe(reach: Reach, snapshot: Snapshot, speed: number, part = `bench.pipe.${reach.id}`): Sentence {
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
  const part = `bench.coil.${reach.side}`;
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
  const { condenserDirt, outdoorIce, evaporatorFrost } = snapshot.looks;
  const isOutdoor = reach.side === 'outdoor';
  const isIced = outdoorIce > condenserDirt;
  const share = isOutdoor ? (isIced ? outdoorIce : condenserDirt) : evaporatorFrost;
  const what = `bench.what.${isOutdoor && !isIced ? 'dirt' : 'frost'}`;
  return {
    about: reach.id,
    key: 'bench.says.face',
    values: { part: `bench.coil.${reach.side}`, amount: amount(share, what) },
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
      const inner = Object.entries(value.values).map(
        ([k, v]) => [k, typeof v === 'number' ? String(v) : say(v, {})] as const,
      );
      resolved[name] = say(value.key, Object.fromEntries(inner));
    }
  }
  return say(sentence.key, resolved);
}
