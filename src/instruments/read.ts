/**
 * A reading as a function of (machine, instrument, place, seed, time). The true value goes through the contact with
 * its place, the instrument's lag since it was put on, its bias and noise, its zero and its span, to the display's step.
 */
import { exp } from '../../physics/math/elementary';
import { type Place, type Snapshot, unitOf } from '../../physics/types';
import { CATALOGUE } from './catalogue';
import {
  accuracyAt,
  BIAS_SHARE,
  biasDraw,
  biasGroup,
  COMPARED_WITHIN,
  NOISE_SHARE,
  rounded,
  zeroOffset,
} from './errors';
import { classOf, senseOf } from './looks';
import { channelValue } from './places';
import { MOVEMENT_SPAN, machineWord, sensorWord, worse } from './settle';
import { stream } from './streams';
import type { ChannelName, InstrumentId, Misuse, PhysicalQuantity, Reading } from './types';

/** Where and when it is read. */
export interface Scene {
  /** the attempt's seed */
  readonly seed: string;
  /** the machine at any whole second from 0 to the time of the reading */
  readonly snapshot: (t: number) => Snapshot;
  /** air pressure on site, Pa */
  readonly atmosphere: number;
  /** a pulsed (inverter) supply feeds the compressor */
  readonly variableSpeed: boolean;
}

export interface ReadingRequest {
  readonly instrument: InstrumentId;
  readonly place: Place;
  readonly quantity: PhysicalQuantity;
  readonly channel: ChannelName;
  /** simulated second of the reading, and the one at which the instrument was put on */
  readonly time: number;
  readonly since: number;
  /** how many readings this instrument has given at this place before */
  readonly ordinal: number;
  /** a clamp with its insulation round it */
  readonly insulated: boolean;
  readonly zeroed: boolean;
  readonly compared: boolean;
}

/** Bare clamp in still air: share of the place's exposure that is left (from memory). */
const STILL_AIR = 0.5;
/** Fan speed, share of rated, from which the air round it counts as wind. */
const WIND = 0.15;
/** An air probe held on a pipe: share of the way to the air; a clamp hung in the air: times as slow (from memory). */
const PROBE_ON_PIPE = 0.4;
const CLAMP_IN_AIR = 6;
/** A clamp meter for sine waves on an inverter's pulses: mean and standard deviation of its relative error (from memory). */
const PULSED = { mean: 0.12, sd: 0.06 } as const;
/** Time constants after which nothing of an earlier value is left at any display's step. */
const FORGOTTEN = 14;

export function read(scene: Scene, request: ReadingRequest): Reading {
  const { instrument, place, quantity, channel, time, since } = request;
  const noted = { instrument, place: place.id, quantity, channel, time };
  const word = machineWord(scene.snapshot(Math.max(0, time - MOVEMENT_SPAN)), scene.snapshot(time), channel);

  const sense = senseOf(channel);
  if (sense) {
    const judged = channelValue(scene.snapshot(time), channel) + sense.sd * groupBias(scene, request);
    const value = classOf(sense, judged);
    return { ...noted, value, word: sense.classes[value]!.word, gauge: false, settled: word, misuse: [] };
  }

  const lag = lagAt(request);
  const sensor = sensorWord(time - since, lag);
  const misuse: Misuse[] = [...contactMisuse(scene.snapshot(time), request)];
  if (sensor === 'fresh' || sensor === 'moving') misuse.push('instrument-not-settled');
  if (word === 'moving') misuse.push('machine-not-settled');

  const { value, more } = displayed(scene, request, lagged(scene, request, lag));
  return { ...noted, value, gauge: isGauge(instrument), settled: worse(sensor, word), misuse: [...misuse, ...more] };
}

const isGauge = (instrument: InstrumentId) => instrument === 'low-gauge' || instrument === 'high-gauge';

function lagAt({ instrument, place }: ReadingRequest): number {
  const { lag } = CATALOGUE[instrument];
  return instrument === 'pipe-clamp' && place.kind === 'air' ? lag * CLAMP_IN_AIR : lag;
}

/** What the sensor has come to: first-order from what it was at when it was put on. Whole-second steps. */
function lagged(scene: Scene, request: ReadingRequest, lag: number): number {
  const { time, since } = request;
  if (lag === 0) return contact(scene, request, time);
  const from = Math.max(since, time - Math.ceil(FORGOTTEN * lag));
  let sensed = from === since ? atRest(scene, request) : contact(scene, request, from);
  const share = 1 - exp(-1 / lag);
  for (let t = from + 1; t <= time; t += 1) sensed += share * (contact(scene, request, t) - sensed);
  return sensed;
}

/** A thermometer comes with the temperature of the air round it, a gauge with none on it, a meter with zero. */
function atRest(scene: Scene, { instrument, place, quantity, since }: ReadingRequest): number {
  if (quantity === 'temperature' || quantity === 'wetBulb') return airRound(scene.snapshot(since), place);
  return isGauge(instrument) ? scene.atmosphere : 0;
}

/** What the sensor is exposed to at second `t`: the true value, pulled to the air where the contact is poor. */
function contact(scene: Scene, request: ReadingRequest, t: number): number {
  const snapshot = scene.snapshot(t);
  const value = channelValue(snapshot, request.channel);
  if (request.quantity !== 'temperature' || request.place.kind !== 'pipe') return value;
  return value + pull(snapshot, request) * (airRound(snapshot, request.place) - value);
}

function pull(snapshot: Snapshot, { instrument, place, insulated }: ReadingRequest): number {
  if (instrument === 'air-probe') return PROBE_ON_PIPE;
  if (instrument !== 'pipe-clamp' || insulated) return 0;
  return (place.exposure ?? 0) * (windy(snapshot, place) ? 1 : STILL_AIR);
}

function contactMisuse(snapshot: Snapshot, { instrument, place, insulated }: ReadingRequest): Misuse[] {
  if (instrument === 'air-probe') return place.kind === 'pipe' ? ['wrong-tool'] : [];
  if (instrument !== 'pipe-clamp') return [];
  if (place.kind === 'air') return ['wrong-tool'];
  if (insulated || !place.exposure) return [];
  return [windy(snapshot, place) ? 'wind-on-clamp' : 'uninsulated-clamp'];
}

/** The unit's own fan blows over the pipe; a line between the units hangs in the draught of the outdoor one. */
function windy({ looks }: Snapshot, place: Place): boolean {
  const unit = unitOf(place.id);
  if (place.side !== 'indoor') return (looks[`condenserFanSpeed@${unit}`] ?? looks.condenserFanSpeed) > WIND;
  return (looks[`evaporatorFanSpeed@${unit}`] ?? looks.evaporatorFanSpeed) > WIND;
}

function airRound({ probes }: Snapshot, place: Place): number {
  if (place.side !== 'indoor') return probes.outdoorAirTemp.value;
  const unit = unitOf(place.id);
  return (unit === null ? probes.returnAirTemp : probes[`returnAirTemp@${unit}`]).value;
}

/** From what the sensor has to what the display shows. */
function displayed(scene: Scene, request: ReadingRequest, sensed: number): { value: number; more: Misuse[] } {
  const { instrument, place, quantity, ordinal } = request;
  const own = stream(`${scene.seed}/reading/${instrument}/${place.id}/${ordinal}`);
  const more: Misuse[] = [];
  const half = accuracyAt(instrument, quantity, sensed);
  let value = sensed + bias(scene, request, half) + NOISE_SHARE * half * own.normal();

  if (isGauge(instrument)) {
    value -= scene.atmosphere;
    if (!request.zeroed) {
      value += zeroOffset(scene.seed, instrument, scene.atmosphere);
      more.push('not-zeroed');
    }
  }
  if (instrument === 'clamp-ammeter' && scene.variableSpeed && place.id === 'compressor-lead') {
    value *= 1 + PULSED.mean + PULSED.sd * own.normal();
    more.push('inverter-output');
  }
  const { span } = CATALOGUE[instrument];
  if (span !== undefined && quantity !== 'capacitance' && quantity !== 'resistance' && value > span) {
    value = span;
    more.push('over-range');
  }
  return { value: rounded(instrument, quantity, value), more };
}

function bias(scene: Scene, request: ReadingRequest, half: number): number {
  const drawn = BIAS_SHARE * half * groupBias(scene, request);
  const { quantity, instrument, compared } = request;
  const thermometer = (quantity === 'temperature' || quantity === 'wetBulb') && instrument !== 'data-link';
  return thermometer && compared ? Math.max(-COMPARED_WITHIN, Math.min(COMPARED_WITHIN, drawn)) : drawn;
}

function groupBias(scene: Scene, { instrument, quantity, channel }: ReadingRequest): number {
  return biasDraw(scene.seed, biasGroup(instrument, quantity, channel));
}

/** What the data link shows of one channel at second `t`, without a reading of its own (the strand, the tape). */
export function linkValue(scene: Scene, channel: ChannelName, quantity: PhysicalQuantity, t: number): number {
  const value = channelValue(scene.snapshot(t), channel);
  const half = accuracyAt('data-link', quantity, value);
  const drawn = biasDraw(scene.seed, biasGroup('data-link', quantity, channel));
  return rounded('data-link', quantity, value + BIAS_SHARE * half * drawn);
}
