/**
 * Expectations hold for the weather and the room of the work order. While the machine stands the room warms, and with
 * it the standing pressure; a machine started again works on another room for a while.
 */
import { unitOf } from '../../physics/types';
import type { AttemptState, Note } from '../attempt';
import type { Drift } from './observe';

/** K by which dry or wet bulb of the room may have moved for a reading under load to be comparable. */
const SAME_ROOM = 0.8;

export function driftOf({ site, events }: AttemptState): (note: Note) => Drift {
  const { indoor, wetBulb } = site.callout.conditions;
  const found = new Map<string, Drift>();
  const standing = site.machine.snapshot(site.machine.start('standing')).probes.standingPressure.value;
  return ({ time, channel }) => {
    const unit = site.plant.units?.find((id) => id === unitOf(channel));
    const name = `${time} ${unit ?? ''}`;
    const known = found.get(name);
    if (known) return known;
    const { probes } = site.snapshot(events, time);
    const dry = unit === undefined ? probes.returnAirTemp : probes[`returnAirTemp@${unit}`];
    const wet = unit === undefined ? probes.returnAirWetBulb : probes[`returnAirWetBulb@${unit}`];
    const moved = Math.max(Math.abs(dry.value - indoor), Math.abs(wet.value - wetBulb));
    const drift = { otherRoom: moved > SAME_ROOM, standing: probes.standingPressure.value - standing };
    found.set(name, drift);
    return drift;
  };
}
