/** What a person sees of a network: of the machine as a whole, of each outdoor module and of each indoor unit. */
import { displayOf, flattened } from '../looks';
import type { Looks } from '../types';
import type { Branch } from './branch';
import { SHUT_MODULE } from './network';
import type { NetworkRig } from './rig';
import type { Shown } from './snapshot';

/** kg of ice on one segment at which it counts as covered */
const COVER = 0.12;

/** A module that takes no part lets its fan rest; of one that is shut off by hand the controller does not know. */
export function moduleFan(rig: NetworkRig, shown: Shown, b: Branch): number {
  const shut = rig.effective.machine.moduleShut > 0 && b === rig.network.modules[SHUT_MODULE];
  return b.role === 'idle' && !shut ? 0 : shown.outdoorFan * rig.effective.machine.outdoorFanSpeed;
}

export function looksOf(rig: NetworkRig, shown: Shown, glass: number): Looks {
  const { units, machine } = rig.effective;
  const worst = (values: readonly number[]): number => values.reduce((a, b) => (b > a ? b : a), 0);
  const iced = (ice: readonly number[]): number => mean(ice.map((kg) => Math.min(1, kg / COVER)));
  const single: Record<string, number> = {};
  rig.network.modules.forEach((b, i) => {
    single[`condenserDirt@${b.data.id}`] = machine.condenserLost;
    single[`condenserFanSpeed@${b.data.id}`] = moduleFan(rig, shown, b);
    single[`evaporatorFrost@${b.data.id}`] = iced(shown.frost[i] ?? []);
  });
  rig.network.units.forEach((b, i) => {
    single[`filterDust@${b.data.id}`] = units[i].filterLost;
    single[`evaporatorDirt@${b.data.id}`] = units[i].evaporatorLost;
    single[`evaporatorFanSpeed@${b.data.id}`] = b.fan.power > 0 ? units[i].indoorFanSpeed : 0;
  });
  return {
    ...single,
    sightGlass: glass,
    evaporatorFrost: iced(shown.frost.flat()),
    evaporatorDirt: worst(units.map((each) => each.evaporatorLost)),
    filterDust: worst(units.map((each) => each.filterLost)),
    condenserDirt: machine.condenserLost,
    condenserFanSpeed: shown.outdoorFan * machine.outdoorFanSpeed,
    evaporatorFanSpeed: mean(units.map((each) => each.indoorFanSpeed)),
    receiverLevel: 0,
    bulbContact: 1,
    evaporatorIce: 0,
    outdoorIce: 0,
    outdoorSensorContact: 1,
    liquidLineKink: flattened(machine.line - rig.data.pipes.liquidDrop, rig.data.pipes.liquidBore),
    suctionValveOpen: Math.sqrt(rig.data.pipes.inletDrop / machine.suctionValve),
    lineCharged: 1,
    linesPlanned: 1,
    suctionSensorContact: 1,
    coilSensorContact: 1,
    condensatePan: 0,
    display: displayOf(shown.controller),
  };
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((a, b) => a + b, 0) / values.length;
}
