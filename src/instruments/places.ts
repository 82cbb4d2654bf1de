/** What can be read where. */
import {
  type LookKey,
  type Place,
  PROBES,
  type ProbeKey,
  type ProbeName,
  probeName,
  type SensorKey,
  type Snapshot,
  type StationId,
  unitOf,
} from '../../physics/types';
import { CATALOGUE, PREPARING } from './catalogue';
import { type ChannelName, INSTRUMENTS, type InstrumentId, type PhysicalQuantity } from './types';

/** Every instrument that physically fits the place and reads something there: never filtered by wisdom. */
export function instrumentsAt(place: Place): InstrumentId[] {
  return INSTRUMENTS.filter((id) => readableAt(id, place).length > 0);
}

/** The quantities that an instrument reads at a place; empty where it does not fit. */
export function readableAt(instrument: InstrumentId, place: Place): PhysicalQuantity[] {
  const { fits, measures } = CATALOGUE[instrument];
  if (!fits.includes(place.kind)) return [];
  return measures.filter((quantity) => channelsAt(instrument, place, quantity).length > 0);
}

/** The channels behind one quantity at a place: one, or for the data link those of that kind. */
export function channelsAt(instrument: InstrumentId, place: Place, quantity: PhysicalQuantity): ChannelName[] {
  const { reads } = place;
  if (instrument === 'data-link') return (reads.link ?? []).filter((channel) => linkQuantity(channel) === quantity);
  switch (quantity) {
    case 'look':
      return reads.look ? [`look:${reads.look}`] : [];
    case 'touch':
      return reads.temperature ? [`touch:${reads.temperature}`] : [];
    case 'pressure':
    case 'temperature':
    case 'wetBulb':
    case 'current':
    case 'voltage':
    case 'capacitance':
    case 'resistance':
    case 'differentialPressure': {
      const probe = reads[quantity];
      return probe ? [probe] : [];
    }
    case 'speed':
    case 'opening':
      return [];
  }
}

/** What kind of number a channel of the data link is. */
export function linkQuantity(channel: ChannelName): PhysicalQuantity {
  const probe = probeOf(channel);
  if (!probe) return isTransducer(channel) ? 'pressure' : 'temperature';
  const name = probeName(probe);
  if (name === 'valveOpening') return 'opening';
  const unit = PROBES[name];
  if (unit === 'Hz') return 'speed';
  if (unit === 'A') return 'current';
  return unit === 'Pa' ? 'pressure' : 'temperature';
}

/** Whether a channel is a pressure that the machine's own controller reads. */
export function isTransducer(channel: ChannelName): boolean {
  return channel === 'sensor:suctionPressure' || channel === 'sensor:dischargePressure';
}

/** The probe that a channel shows as it is; null for the controller's sensors, looks and touches. */
export function probeOf(channel: ChannelName): ProbeKey | null {
  return channel.includes(':') ? null : (channel as ProbeKey);
}

/** The channel without the indoor unit or outdoor module that it belongs to: `sensor:returnAir@unit3` is a `sensor:returnAir`. */
export function kindOfChannel(channel: ChannelName): ChannelName {
  const at = channel.indexOf('@');
  return at < 0 ? channel : (channel.slice(0, at) as ChannelName);
}

/** Whether the outdoor side hears nothing from the unit that a channel belongs to: the data link has no value then. */
export function isUnheard({ units }: Snapshot, channel: ChannelName): boolean {
  const unit = unitOf(channel);
  return unit !== null && units?.find(({ id }) => id === unit)?.state === 'not-answering';
}

/** True value of a channel in one instant, SI (looks: share 0…1; touch: K). */
export function channelValue(snapshot: Snapshot, channel: ChannelName): number {
  const [kind, name] = channel.split(':') as [string, string | undefined];
  if (name === undefined) return snapshot.probes[kind as ProbeKey].value;
  if (kind === 'sensor') return sensorOf(snapshot.sensors, name as SensorKey);
  if (kind === 'look') return lookOf(snapshot.looks, name as LookKey);
  return snapshot.probes[name as ProbeKey].value;
}

/** Throws RangeError for a sensor that the machine does not have: a mistake in its places. */
function sensorOf(sensors: Snapshot['sensors'], key: SensorKey): number {
  const value = sensors[key];
  if (value === undefined) throw new RangeError(`no sensor "${key}" on this machine`);
  return value;
}

/** Throws RangeError for a look that the machine does not have: a mistake in its places. */
function lookOf(looks: Snapshot['looks'], key: LookKey): number {
  const value = looks[key];
  if (value === undefined) throw new RangeError(`no look "${key}" on this machine`);
  return value;
}

/** Seconds for a first reading at a place by a careful person; `opened` = its unit's panel is open already. */
export function firstReadingCost(instrument: InstrumentId, place: Place, opened = false): number {
  const { cost, dwell } = CATALOGUE[instrument];
  return preparing(instrument, place, true, opened) + cost.connect + dwell + cost.read;
}

/** Seconds of what has to be done before the instrument can go on. */
export function preparing(instrument: InstrumentId, place: Place, insulated: boolean, opened: boolean): number {
  const cap = place.needs?.includes('cap-off') ? PREPARING.cap : 0;
  const panel = place.needs?.includes('panel-open') && !opened ? PREPARING.panel : 0;
  const wrap = instrument === 'pipe-clamp' && place.kind === 'pipe' && insulated ? PREPARING.wrap : 0;
  return cap + panel + wrap;
}

const STATION_OF: Readonly<Partial<Record<ProbeName, StationId>>> = {
  suctionPressure: 'suction-port',
  dischargePressure: 'compressor-out',
  liquidPressure: 'liquid-port',
  liquidPressureAfterDrier: 'drier-out',
  evaporatorOutletPressure: 'evaporator-out',
};

/** kg that fill the hose when it goes on here now: grams of vapour, tens of grams of liquid. */
export function spillOf(instrument: InstrumentId, place: Place, snapshot: Snapshot): number {
  const station = place.reads.pressure && STATION_OF[probeName(place.reads.pressure)];
  return station ? CATALOGUE[instrument].hose * snapshot.stations[station].density : 0;
}
