import { PhysicsError } from '../errors';
import type { RefrigerantId } from '../fluids/fluid';
import type { MachineData } from '../solve/effective';
import type { PlantDescription, PlantId } from '../types';
import { COLD_ROOM } from './coldRoom';
import { COLD_ROOM_MACHINE } from './coldRoom/machine';
import { INVERTER_SPLIT } from './inverterSplit';
import { INVERTER_SPLIT_MACHINE } from './inverterSplit/machine';
import { ORIFICE_SPLIT } from './orificeSplit';
import { ORIFICE_SPLIT_MACHINE } from './orificeSplit/machine';

export const PLANTS: Readonly<Record<PlantId, PlantDescription>> = {
  'orifice-split': ORIFICE_SPLIT,
  'inverter-split': INVERTER_SPLIT,
  'cold-room': COLD_ROOM,
};

const MACHINES: Readonly<Record<PlantId, Readonly<Partial<Record<RefrigerantId, MachineData>>>>> = {
  'orifice-split': ORIFICE_SPLIT_MACHINE,
  'inverter-split': INVERTER_SPLIT_MACHINE,
  'cold-room': COLD_ROOM_MACHINE,
};

/** Throws `bad-input` for a plant that does not exist. */
export function plantDescription(id: string): PlantDescription {
  const plant = (PLANTS as Readonly<Record<string, PlantDescription | undefined>>)[id];
  if (plant === undefined || !Object.hasOwn(PLANTS, id)) {
    throw new PhysicsError('bad-input', `unknown plant "${id}"; known are ${Object.keys(PLANTS).join(', ')}`, {
      plant: id,
    });
  }
  return plant;
}

/** Numbers of a plant variant. A refrigerant selects a variant built for it; throws `bad-input` where there is none. */
export function machineData(plant: PlantId, refrigerant: string): MachineData {
  const variants = MACHINES[plant];
  const data = (variants as Readonly<Record<string, MachineData | undefined>>)[refrigerant];
  if (data === undefined) {
    throw new PhysicsError(
      'bad-input',
      `${plant} is not built for "${refrigerant}"; variants: ${Object.keys(variants).join(', ')}`,
      { plant, refrigerant },
    );
  }
  return data;
}
