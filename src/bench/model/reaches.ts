/**
 * Every stretch of tube in which refrigerant runs, pipes and coils alike: where it lies, and what runs in it now.
 * Only the plant's drawing and a snapshot go in, so that a new plant needs no new code here.
 */
import type { CoilSegment, DrawnPart, DrawnPipe, PlantDrawing, Snapshot, Station } from '../../../physics/types';
import { Route } from '../geometry/route';
import { serpentine } from '../geometry/serpentine';
import { branchOf, dutyOf, flowOf, stationAt } from './stations';

/** Corners of pipes are bent to this radius, m. */
const BEND_RADIUS = 0.09;
/** Wall of a copper tube, m (common practice, no source): the bore decides the speed. */
const TUBE_WALL = 0.0009;

export interface Reach {
  readonly id: string;
  readonly kind: 'pipe' | 'coil';
  readonly role?: 'condenser' | 'evaporator';
  /** coil of one unit or module of several */
  readonly of?: string;
  /** coil: where it stands */
  readonly side?: 'outdoor' | 'indoor';
  readonly route: Route;
  /** drawn width of the channel, m */
  readonly width: number;
  readonly insulated: boolean;
  /** where a part that throttles sits on it, as shares of its length */
  readonly throttle: { readonly from: number; readonly to: number } | null;
  /** coil: index of its pipes among the reaches */
  readonly feeds: readonly [number, number] | null;
  readonly from: DrawnPipe['from'] | null;
  readonly to: DrawnPipe['to'] | null;
  readonly carries?: DrawnPipe['carries'];
  readonly share: number;
  /** bore, m2 */
  readonly area: number;
}

/** What runs at one point of a reach. */
export interface Content {
  /** K */
  temperature: number;
  /** share of gas by volume, 0…1 */
  gas: number;
}

const THROTTLES: readonly DrawnPart['kind'][] = ['drier', 'orifice', 'electronic-valve', 'thermostatic-valve'];
/** Ends between which nothing throttles: hot gas and what comes back may run past a valve in the drawing. */
const GAS_ENDS = /^(gas@|.*-header$|compressor-|suction-port)/;

/** Drawn wider than life: a line of 10 mm would be a hair's breadth on the screen. */
function channelWidth(diameter: number): number {
  return 0.05 + 3 * diameter;
}

type Stretch = NonNullable<Reach['throttle']>;

function joined(a: Stretch | null, b: Stretch | null): Stretch | null {
  return a && b ? { from: Math.min(a.from, b.from), to: Math.max(a.to, b.to) } : (a ?? b);
}

export function reachesOf(drawing: PlantDrawing): Reach[] {
  const pipes = drawing.pipes.map((pipe): Reach => {
    const route = new Route(pipe.points, BEND_RADIUS);
    const bore = pipe.diameter - 2 * TUBE_WALL;
    let throttle: Reach['throttle'] = null;
    for (const part of GAS_ENDS.test(pipe.from) && GAS_ENDS.test(pipe.to) ? [] : drawing.parts) {
      if (THROTTLES.includes(part.kind)) throttle = throttle ?? route.within(part);
      // Liquid that is cooled in an exchanger right behind a valve changes over both.
      if (part.kind === 'exchanger') throttle = joined(throttle, route.within(part));
    }
    // Behind the metering device there is no stretch on which its drop could be spread.
    if (pipe.from === 'metering-in') throttle = throttle ?? { from: 0, to: 0 };
    return {
      id: pipe.id,
      kind: 'pipe',
      route,
      width: channelWidth(pipe.diameter),
      insulated: pipe.insulated ?? false,
      throttle,
      feeds: null,
      from: pipe.from,
      to: pipe.to,
      carries: pipe.carries,
      share: pipe.share ?? 1,
      area: (Math.PI / 4) * bore * bore,
    };
  });
  const coils = drawing.parts.filter((part) => part.kind === 'coil').map((coil) => coilReach(coil, drawing, pipes));
  return [...pipes, ...coils];
}

/** Where a coil stands. */
export function sideOf({ side, role }: DrawnPart): 'outdoor' | 'indoor' {
  return side ?? (role === 'condenser' ? 'outdoor' : 'indoor');
}

function coilReach(coil: DrawnPart, drawing: PlantDrawing, pipes: readonly Reach[]): Reach {
  const [feed, drainPipe] = feedsOf(coil, drawing);
  const fed = drawing.pipes[feed].points;
  const left = drawing.pipes[drainPipe].points;
  const tube = serpentine(coil, fed[fed.length - 1], left[0]);
  return {
    id: coil.id,
    kind: 'coil',
    role: coil.role,
    of: coil.of,
    side: sideOf(coil),
    route: new Route(tube.points, tube.pitch / 2),
    width: tube.pitch * 0.46,
    insulated: false,
    throttle: null,
    feeds: [feed, drainPipe],
    from: null,
    to: null,
    share: 1,
    area: Math.min(pipes[feed].area, pipes[drainPipe].area),
  };
}

/** The pipes that end and begin at a coil, as rooms are cooled. Throws Error where the drawing lacks one. */
function feedsOf(coil: DrawnPart, drawing: PlantDrawing): [number, number] {
  const isOutdoor = coil.role === 'condenser';
  let [into, out] = isOutdoor ? ['condenser-in', 'condenser-out'] : ['evaporator-in', 'evaporator-out'];
  if (coil.of !== undefined) [into, out] = isOutdoor ? ends('gas', 'liquid', coil.of) : ends('liquid', 'gas', coil.of);
  // Where a stretch has the same state at both ends, the last one meets the coil.
  const feed = drawing.pipes.findLastIndex((pipe) => pipe.to === into);
  const drain = drawing.pipes.findIndex((pipe) => pipe.from === out);
  if (feed < 0 || drain < 0) throw new Error(`coil "${coil.id}" lacks a pipe to ${into} or from ${out}`);
  return [feed, drain];
}

const ends = (a: string, b: string, id: string): [string, string] => [`${a}@${id}`, `${b}@${id}`];

/** Share of gas by volume from the quality, with the density of the gas on that side of the machine. */
export function gasShare(station: { quality: number; density: number }, densityOfGas: number): number {
  if (station.quality <= 0) return 0;
  if (station.quality >= 1) return 1;
  return clamp01((station.quality * station.density) / densityOfGas);
}

/** What runs at a share 0…1 of a reach's length. */
export function contentAt(reach: Reach, snapshot: Snapshot, share: number, out: Content): Content {
  const { stations } = snapshot;
  if (reach.kind === 'coil') return coilContent(reach, snapshot, share, out);
  const from = stationAt(snapshot, reach.from ?? 'compressor-in');
  const to = stationAt(snapshot, reach.to ?? 'compressor-in');
  const f = alongThrottle(reach, share);
  out.temperature = from.temperature + (to.temperature - from.temperature) * f;
  const a = gasShare(from, gasDensity(from.pressure, from.temperature, stations));
  const b = gasShare(to, gasDensity(to.pressure, to.temperature, stations));
  out.gas = a + (b - a) * f;
  return out;
}

/**
 * Density of gas at this state, kg/m3, from the nearest station that carries gas alone: on one side of the machine it
 * goes with pressure over temperature, closely enough for a mark on a drawing.
 */
function gasDensity(pressure: number, temperature: number, stations: Snapshot['stations']): number {
  const high = stations['compressor-out'];
  const low = stations['compressor-in'];
  const [near, far] = pressure * pressure > high.pressure * low.pressure ? [high, low] : [low, high];
  const gas = near.quality < 1 && far.quality >= 1 ? far : near;
  return (gas.density * pressure * gas.temperature) / (gas.pressure * temperature);
}

function coilContent(reach: Reach, snapshot: Snapshot, share: number, out: Content): Content {
  const { stations } = snapshot;
  const segment = segmentAt(segmentsOf(reach, snapshot), share);
  out.temperature = segment.temperature;
  if (segment.quality <= 0) out.gas = 0;
  else if (segment.quality >= 1) out.gas = 1;
  else {
    const gas = gasDensity(gasSide(reach, snapshot).pressure, segment.temperature, stations);
    const density = 1 / (segment.quality / gas + (1 - segment.quality) / stations['liquid-port'].density);
    out.gas = clamp01((segment.quality * density) / gas);
  }
  return out;
}

function gasSide({ of, role }: Pick<Reach, 'of' | 'role'>, snapshot: Snapshot): Station {
  const branch = of === undefined ? null : branchOf(snapshot, of);
  return branch ? branch.gas : snapshot.stations[role === 'condenser' ? 'condenser-in' : 'evaporator-out'];
}

/** Segments of a drawn coil from the edge where its refrigerant comes in when rooms are cooled. */
export function segmentsOf({ of, role }: Pick<Reach, 'of' | 'role'>, snapshot: Snapshot): readonly CoilSegment[] {
  const branch = of === undefined ? null : branchOf(snapshot, of);
  if (!branch || of === undefined) {
    const { condenser, evaporator, turnedOver } = snapshot;
    if (!turnedOver) return role === 'condenser' ? condenser : evaporator;
    return [...(role === 'condenser' ? evaporator : condenser)].reverse();
  }
  return dutyOf(snapshot, of) === 'heating' ? [...branch.coil].reverse() : branch.coil;
}

export function segmentAt(segments: readonly CoilSegment[], share: number): CoilSegment {
  return segments[Math.min(segments.length - 1, Math.max(0, Math.floor(share * segments.length)))];
}

/** A drop over a throttling part happens inside it; elsewhere the change is spread over the length. */
function alongThrottle(reach: Reach, share: number): number {
  if (!reach.throttle) return share;
  const { from, to } = reach.throttle;
  if (share <= from) return 0;
  if (share >= to) return 1;
  return (share - from) / (to - from);
}

/** Mean speed of the refrigerant in a pipe, m/s: mass flow over density and bore, at both ends; negative against its points. */
export function speedIn(reach: Reach, snapshot: Snapshot): number {
  if (reach.kind === 'coil' || !reach.from || !reach.to) return 0;
  const from = stationAt(snapshot, reach.from);
  const to = stationAt(snapshot, reach.to);
  if (!reach.carries)
    return (reach.share * (from.massFlow / from.density + to.massFlow / to.density)) / (2 * reach.area);
  const flow = reach.share * flowOf(snapshot, reach.carries.of, reach.carries.only);
  return (flow / from.density + flow / to.density) / (2 * reach.area);
}

/** Speeds of all reaches; a coil lies between those of its two pipes, by geometric mean. */
export function speedsOf(reaches: readonly Reach[], snapshot: Snapshot): number[] {
  const speeds = reaches.map((reach) => speedIn(reach, snapshot));
  reaches.forEach((reach, i) => {
    if (!reach.feeds) return;
    const [a, b] = reach.feeds;
    speeds[i] = Math.sign(speeds[a]) * Math.sqrt(Math.max(0, speeds[a] * speeds[b]));
  });
  return speeds;
}

export function clamp01(value: number): number {
  return Math.min(1, Math.max(0, value));
}
