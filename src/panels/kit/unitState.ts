/** What an indoor unit's own controller says: at once what was asked of it, then what becomes of it. */

import { usualDemand } from '../../../physics/network/demands';
import type { UnitState } from '../../../physics/types';
import type { Session } from '../session';

export function unitStateOf(session: Session, unit: string): UnitState {
  const { plant, callout } = session;
  const { controls } = session.state.value;
  const asked = controls.units?.[unit] ?? usualDemand(callout.conditions.mode, plant.units?.indexOf(unit) ?? 0);
  const state = session.snapshot.value.units?.find(({ id }) => id === unit)?.state ?? 'off';
  if (state === 'not-answering') return state;
  if (asked === 'off') return 'off';
  return state === 'off' || (controls.running && state !== 'room-satisfied' && state !== 'machine-stopped')
    ? asked
    : state;
}
