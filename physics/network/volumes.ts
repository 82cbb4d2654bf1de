/** Volumes of a network's two sides, and its pressure after a long stop. */
import { standingAt } from '../solve/standing';
import type { NetworkRig } from './rig';

/** m3 of all that refrigerant fills */
export function totalVolume(rig: NetworkRig): number {
  const { data } = rig;
  const { pipes } = data;
  let volume =
    pipes.dischargeVolume +
    pipes.suctionVolume +
    pipes.gasVolume +
    pipes.liquidVolume +
    data.compressor.shellVolume +
    (data.threePipes ? pipes.hotVolume : 0);
  for (const each of [...data.modules, ...data.units]) {
    volume += each.coil.volume + each.gasVolume + each.liquidVolume;
  }
  return volume;
}

/** Pressure after a long stop, Pa absolute: liquid lies in the coldest room or outdoors. */
export function standingPressure(rig: NetworkRig): number {
  const { conditions, fluid, network } = rig;
  let cold = conditions.outdoor;
  for (const b of network.units) if (b.air.temperature < cold) cold = b.air.temperature;
  const effective = rig.effective.machine;
  const p = standingAt(fluid, effective.charge, totalVolume(rig), cold);
  return p + effective.nitrogen * fluid.pDew(298.15) * (cold / 298.15);
}

/** m3 on the high side with the branches in their present roles. */
export function highVolume(rig: NetworkRig): number {
  const { data, network } = rig;
  const { pipes } = data;
  const heatsIndoors = network.units.some((b) => b.role === 'condenser');
  let volume = pipes.dischargeVolume + pipes.liquidVolume + (data.threePipes ? pipes.hotVolume : 0);
  if (heatsIndoors && !data.threePipes) volume += pipes.gasVolume;
  for (const b of network.branches) {
    volume += b.data.liquidVolume;
    if (b.role === 'condenser' || b.flooded) volume += b.data.coil.volume + b.data.gasVolume;
  }
  return volume;
}
