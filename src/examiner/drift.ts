/**
 * Expectations hold for the weather and the room of the work order. While the machine stands the room warms, and with
 * it the standing pressure; a machine started again works on another room for a while.
 */
import type { AttemptState, Note } from '../attempt';
import type { Drift } from './observe';

/** K by which dry or wet bulb of the room may have moved for a reading under load to be comparable. */
const SAME_ROOM = 0.8;

export function driftOf({ site, events }: AttemptState): (note: Note) => Drift {
  const { indoor, wetBulb } = site.callout.conditions;
  const found = new Map<number, Drift>();
  const standing = site.machine.snapshot(site.machine.start('standing')).probes.standingPressure.value;
  return ({ time }) => {
    const known = found.get(time);
    if (known) return known;
    const { returnAirTemp, returnAirWetBulb, standingPressure } = site.snapshot(events, time).probes;
    const moved = Math.max(Math.abs(returnAirTemp.value - indoor), Math.abs(returnAirWetBulb.value - wetBulb));
    const drift = { otherRoom: moved > SAME_ROOM, standing: standingPressure.value - standing };
    found.set(time, drift);
    return drift;
  };
}
