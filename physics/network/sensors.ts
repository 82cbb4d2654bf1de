/** What the controller's own sensors report of a network. */
import type { Sensors } from '../types';
import type { NetworkRig } from './rig';
import { gasTemperature } from './stations';

/** Pa where the pressure sensors sit: the pipes of the suction port and of the discharge port. */
export interface TruePressures {
  readonly suction: number;
  readonly discharge: number;
}

/** What the controller reads: the outdoor sensors, and two pipe sensors and the air sensor of every unit. */
export function sensorsOf(rig: NetworkRig, suction: number, pressures: TruePressures): Sensors {
  const { network } = rig;
  return sensorsWith(
    rig,
    suction,
    network.compressor.tDischarge,
    network.units.map((b) => gasTemperature(rig, b)),
    network.branches.map((b) => b.tLiquid),
    pressures,
  );
}

/** The same from given true temperatures, K: gas pipes of the units, liquid pipes of all branches. */
export function sensorsWith(
  rig: NetworkRig,
  suction: number,
  discharge: number,
  gas: readonly number[],
  liquid: readonly number[],
  pressures: TruePressures,
): Sensors {
  const { network, conditions, effective } = rig;
  const own = effective.machine.drift;
  const modules = network.modules.length;
  const sensors: Record<string, number> = {
    suctionLine: suction + own.suctionLine,
    evaporatorCoil: liquid[0] + own.evaporatorCoil,
    dischargeLine: discharge + own.dischargeLine,
    outdoorAir: conditions.outdoor + own.outdoorAir,
    returnAir: network.units[0].air.temperature + own.returnAir,
    suctionPressure: pressures.suction + own.suctionPressure,
    dischargePressure: pressures.discharge + own.dischargePressure,
  };
  network.units.forEach((b, i) => {
    const { drift } = effective.units[i];
    sensors[`suctionLine@${b.data.id}`] = gas[i] + drift.suctionLine;
    sensors[`evaporatorCoil@${b.data.id}`] = liquid[modules + i] + drift.evaporatorCoil;
    sensors[`returnAir@${b.data.id}`] = b.air.temperature + drift.returnAir;
  });
  return sensors as Sensors;
}
