/** Who boils, who condenses, who rests: from the mode, the rooms' demands and what is wrong with pipes and valves. */
import type { UnitDemand } from '../types';
import type { Task } from './network';
import type { NetworkRig } from './rig';

/** What the outdoor modules do and how many of them take part. */
export interface Outdoors {
  readonly role: 'condenser' | 'evaporator' | 'idle';
  readonly count: number;
}

/** Which demand reaches the coil of a unit: pipes crossed with the next unit's hand it the other's refrigerant, not its fan. */
export function fedBy(rig: NetworkRig, index: number): number {
  const { units } = rig.effective;
  if (units[index].portsCrossed > 0) return (index + 1) % units.length;
  const before = (index + units.length - 1) % units.length;
  return units[before].portsCrossed > 0 ? before : index;
}

/**
 * @param openings held openings by branch, or null in the steady state, where each valve finds its own
 * @param valveHold opening that a person holds the valves of the units at, or null
 */
export function tasksFor(
  rig: NetworkRig,
  outdoors: Outdoors,
  demands: readonly UnitDemand[],
  openings: readonly number[] | null,
  valveHold: number | null,
): Task[] {
  const { data, effective, network } = rig;
  const { control } = data;
  // a module that takes no part is the second one
  const shut = effective.machine.moduleShut > 0 ? 1 : -1;
  let placed = 0;
  const tasks: Task[] = network.modules.map((_, i) => {
    const active = i !== shut && placed < outdoors.count;
    if (active) placed++;
    const held = openings?.[i] ?? null;
    return {
      role: active ? outdoors.role : 'idle',
      opening: outdoors.role === 'condenser' && !data.threePipes ? 1 : held,
      adrift: 0,
      superheat: control.outdoorSuperheat,
    };
  });
  const heats = demands.some((each) => each === 'heating');
  network.units.forEach((_, i) => {
    const { drift, stuckOpening } = effective.units[i];
    const demand = demands[fedBy(rig, i)];
    const own = Number.isNaN(stuckOpening) ? valveHold : stuckOpening;
    const held = own ?? openings?.[network.modules.length + i] ?? null;
    const adrift = drift.suctionLine - drift.evaporatorCoil;
    const task = { opening: held, adrift, superheat: control.superheatTarget };
    if (demand === 'cooling') tasks.push({ ...task, role: 'evaporator' });
    else if (demand === 'heating') tasks.push({ ...task, role: 'condenser' });
    else tasks.push(resting(rig, i, heats, own, task));
  });
  return tasks;
}

/** A unit that stands by: on two hot pipes it drains a little; in cooling it is shut, unless its valve passes. */
function resting(rig: NetworkRig, index: number, heats: boolean, stuck: number | null, task: Omit<Task, 'role'>): Task {
  const { data, effective } = rig;
  if (heats && !data.threePipes) {
    return { ...task, role: 'condenser', opening: stuck ?? data.control.drainOpening };
  }
  const passes = stuck ?? effective.units[index].valvePasses;
  return passes > 0 ? { ...task, role: 'evaporator', opening: passes } : { ...task, role: 'idle', opening: 0 };
}
