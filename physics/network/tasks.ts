/** Who boils, who condenses, who rests: from the mode, the rooms' demands and what is wrong with pipes and valves. */
import type { UnitDemand } from '../types';
import { SHUT_MODULE, type Task } from './network';
import type { NetworkRig } from './rig';

/** What the outdoor modules do and how many of them take part. */
export interface Outdoors {
  readonly role: 'condenser' | 'evaporator' | 'idle';
  readonly count: number;
}

/** Which unit's port of the changeover box a unit hangs on: pipes crossed with the next unit's exchange the two. */
export function portOf(rig: NetworkRig, index: number): number {
  const { units } = rig.effective;
  const last = units.length - 1;
  let at = index;
  // crossings in a row hand a port on from unit to unit
  for (let i = 0; i < last; i++) {
    if (!(units[i].portsCrossed > 0)) continue;
    if (at === i) at = i + 1;
    else if (at === i + 1) at = i;
  }
  return at;
}

/** What reaches the coil of a unit: nothing where its own valve is shut, and nothing from a port that is. */
export function fedWith(rig: NetworkRig, demands: readonly UnitDemand[], index: number): UnitDemand {
  return demands[index] === 'off' ? 'off' : demands[portOf(rig, index)];
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
  const shut = effective.machine.moduleShut > 0 ? SHUT_MODULE : -1;
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
    const demand = fedWith(rig, demands, i);
    const own = Number.isNaN(stuckOpening) ? valveHold : stuckOpening;
    const steered = openings?.[network.modules.length + i] ?? null;
    // a valve whose coil does the opposite of what its controller takes it to do is driven wide open
    const held = own ?? (demand === demands[i] ? steered : effective.units[i].stroke);
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
  const passing = effective.units[index].valvePasses;
  if (heats && !data.threePipes) {
    const drains = data.control.drainOpening;
    return { ...task, role: 'condenser', opening: stuck ?? (passing > drains ? passing : drains) };
  }
  const passes = stuck ?? passing;
  return passes > 0 ? { ...task, role: 'evaporator', opening: passes } : { ...task, role: 'idle', opening: 0 };
}
