/** What the eye and the hand make of a number: classes in words. Thresholds are judgement, from memory. */
import { LOOKS, type LookName } from '../../physics/types';
import { kindOfChannel } from './places';
import type { ChannelName } from './types';

export interface SenseClass {
  /** id of the word; texts live in the catalogues */
  readonly word: string;
  /** the class ends here; the last one has no end */
  readonly below: number;
}

export interface Sense {
  /** lowest class first; a reading's `value` is the number of its class in this list */
  readonly classes: readonly SenseClass[];
  /** standard deviation of a person's judgement, one draw an attempt: looking again gives the same answer */
  readonly sd: number;
}

const classes = (...pairs: readonly (readonly [string, number])[]): readonly SenseClass[] =>
  pairs.map(([word, below]) => ({ word, below }));

const DIRT: Sense = {
  classes: classes(['clean', 0.06], ['dusty', 0.2], ['clogged', 0.4], ['blocked', Number.POSITIVE_INFINITY]),
  sd: 0.03,
};
const SENSOR: Sense = {
  classes: classes(['sensor-hangs', 0.75], ['sensor-slipped', 0.95], ['sensor-seated', Number.POSITIVE_INFINITY]),
  sd: 0.02,
};
const FAN: Sense = {
  classes: classes(['stopped', 0.05], ['crawling', 0.5], ['slow', 0.85], ['brisk', Number.POSITIVE_INFINITY]),
  sd: 0.05,
};

/** Ice in the passages between fins. */
const ICE = classes(
  ['ice-thin', 0.08],
  ['ice-between-fins', 0.25],
  ['ice-thick', 0.45],
  ['ice-solid', Number.POSITIVE_INFINITY],
);

export const SENSES: Readonly<Record<LookName, Sense>> = {
  sightGlass: {
    classes: classes(['clear', 0.03], ['few-bubbles', 0.3], ['many-bubbles', 0.75], ['foam', Number.POSITIVE_INFINITY]),
    sd: 0.01,
  },
  evaporatorFrost: {
    classes: classes(
      ['no-frost', 0.03],
      ['frost-patches', 0.3],
      ['half-iced', 0.75],
      ['iced-over', Number.POSITIVE_INFINITY],
    ),
    sd: 0.01,
  },
  filterDust: DIRT,
  condenserDirt: DIRT,
  evaporatorDirt: DIRT,
  condenserFanSpeed: FAN,
  evaporatorFanSpeed: FAN,
  receiverLevel: {
    classes: classes(
      ['level-empty', 0.06],
      ['level-low', 0.3],
      ['level-middle', 0.75],
      ['level-high', Number.POSITIVE_INFINITY],
    ),
    sd: 0.04,
  },
  evaporatorIce: {
    classes: ICE,
    sd: 0.02,
  },
  outdoorIce: {
    classes: ICE,
    sd: 0.02,
  },
  bulbContact: {
    classes: classes(['bulb-hangs', 0.4], ['bulb-loose', 0.8], ['bulb-tight', Number.POSITIVE_INFINITY]),
    sd: 0.08,
  },
  liquidLineKink: {
    classes: classes(['pipe-round', 0.25], ['pipe-dented', 0.7], ['pipe-flat', Number.POSITIVE_INFINITY]),
    sd: 0.03,
  },
  suctionValveOpen: {
    classes: classes(['stem-in', 0.3], ['stem-part-way', 0.7], ['stem-out', Number.POSITIVE_INFINITY]),
    sd: 0.04,
  },
  lineCharged: {
    classes: classes(['label-blank', 0.2], ['label-short', 0.85], ['label-full', Number.POSITIVE_INFINITY]),
    sd: 0.03,
  },
  linesPlanned: {
    classes: classes(
      ['lines-far-longer', 0.35],
      ['lines-longer', 0.75],
      ['lines-as-planned', Number.POSITIVE_INFINITY],
    ),
    sd: 0.03,
  },
  suctionSensorContact: SENSOR,
  coilSensorContact: SENSOR,
  outdoorSensorContact: SENSOR,
  condensatePan: {
    classes: classes(['pan-drained', 0.2], ['pan-holds-water', 0.8], ['pan-full', Number.POSITIVE_INFINITY]),
    sd: 0.03,
  },
  display: {
    classes: classes(
      ['display-calm', 0.125],
      ['display-limit', 0.375],
      ['display-safety-open', 0.625],
      ['display-sensor-refused', Number.POSITIVE_INFINITY],
    ),
    sd: 0.005,
  },
};

const ZERO_CELSIUS = 273.15;

/** A hand on a pipe, K. Above about 60 °C nobody holds on. */
export const TOUCH: Sense = {
  classes: classes(
    ['icy', ZERO_CELSIUS + 4],
    ['cold', ZERO_CELSIUS + 16],
    ['cool', ZERO_CELSIUS + 26],
    ['hand-warm', ZERO_CELSIUS + 36],
    ['warm', ZERO_CELSIUS + 47],
    ['hot', ZERO_CELSIUS + 60],
    ['too-hot-to-hold', Number.POSITIVE_INFINITY],
  ),
  sd: 2,
};

/** The sense behind a look or touch channel; null for what an instrument measures. */
export function senseOf(channel: ChannelName): Sense | null {
  if (channel.startsWith('touch:')) return TOUCH;
  const look = LOOKS.find((name) => kindOfChannel(channel) === `look:${name}`);
  return look ? SENSES[look] : null;
}

/** Number of the class that a value falls into. */
export function classOf(sense: Sense, value: number): number {
  return sense.classes.findIndex(({ below }) => value < below);
}
