import { PhysicsError } from '../errors';
import type { RefrigerantId } from '../fluids/fluid';
import type { NetworkData } from '../network/data';
import type { MachineData } from '../solve/effective';
import type { OperatingMode, PlantDescription, PlantId } from '../types';
import { COLD_ROOM } from './coldRoom';
import { COLD_ROOM_MACHINE } from './coldRoom/machine';
import { HEAT_RECOVERY } from './heatRecovery';
import { heatRecoveryOf } from './heatRecovery/machine';
import { INVERTER_SPLIT } from './inverterSplit';
import { INVERTER_SPLIT_MACHINE } from './inverterSplit/machine';
import { MULTI_SPLIT } from './multiSplit';
import { multiSplitOf } from './multiSplit/machine';
import { ORIFICE_SPLIT } from './orificeSplit';
import { ORIFICE_SPLIT_MACHINE } from './orificeSplit/machine';
import { THERMOSTATIC_HEAT_PUMP } from './thermostaticHeatPump';
import { HEAT_PUMP_COOLING, HEAT_PUMP_HEATING } from './thermostaticHeatPump/machine';

export const PLANTS: Readonly<Record<PlantId, PlantDescription>> = {
  'orifice-split': ORIFICE_SPLIT,
  'inverter-split': INVERTER_SPLIT,
  'cold-room': COLD_ROOM,
  'multi-split': MULTI_SPLIT,
  'heat-recovery': HEAT_RECOVERY,
  'thermostatic-heat-pump': THERMOSTATIC_HEAT_PUMP,
};

/** Plants with one indoor unit. */
type SinglePlantId = Exclude<PlantId, NetworkPlantId>;
/** Plants whose indoor units share one circuit. */
export type NetworkPlantId = 'multi-split' | 'heat-recovery';

const NETWORKS: Readonly<Record<NetworkPlantId, (refrigerant: string) => NetworkData | undefined>> = {
  'multi-split': multiSplitOf,
  'heat-recovery': heatRecoveryOf,
};

export function isNetwork(plant: PlantId): plant is NetworkPlantId {
  return Object.hasOwn(NETWORKS, plant);
}

type Variants = Readonly<Partial<Record<RefrigerantId, MachineData>>>;

const MACHINES: Readonly<Record<SinglePlantId, Variants>> = {
  'orifice-split': ORIFICE_SPLIT_MACHINE,
  'inverter-split': INVERTER_SPLIT_MACHINE,
  'cold-room': COLD_ROOM_MACHINE,
  'thermostatic-heat-pump': HEAT_PUMP_COOLING,
};

/** The same parts put together for heating. */
const HEATING: Readonly<Partial<Record<PlantId, Variants>>> = { 'thermostatic-heat-pump': HEAT_PUMP_HEATING };

/**
 * A plant as it is measured and drawn in a mode (left out: the one that it is rated in first) and in the variant built for a
 * refrigerant (left out: the first). Throws `bad-input` for a plant that does not exist.
 */
export function plantDescription(id: string, mode?: OperatingMode, refrigerant?: RefrigerantId): PlantDescription {
  const plant = (PLANTS as Readonly<Record<string, PlantDescription | undefined>>)[id];
  if (plant === undefined || !Object.hasOwn(PLANTS, id)) {
    throw new PhysicsError('bad-input', `unknown plant "${id}"; known are ${Object.keys(PLANTS).join(', ')}`, {
      plant: id,
    });
  }
  const other = mode === undefined ? undefined : plant.otherwise?.[mode];
  const variant = refrigerant === undefined ? undefined : plant.variants?.[refrigerant];
  return other || variant ? { ...plant, ...other, ...variant } : plant;
}

/**
 * Numbers of a plant variant in a mode. A refrigerant selects a variant built for it; throws `bad-input` where there is none.
 */
export function machineData(plant: PlantId, refrigerant: string, mode: OperatingMode): MachineData {
  const variants = isNetwork(plant) ? {} : ((mode === 'heating' ? HEATING[plant] : undefined) ?? MACHINES[plant]);
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

/** The same of a plant whose indoor units share one circuit. */
export function networkData(plant: PlantId, refrigerant: string): NetworkData {
  const data = isNetwork(plant) ? NETWORKS[plant](refrigerant) : undefined;
  if (data === undefined) {
    const built = plantDescription(plant).refrigerants.join(', ');
    throw new PhysicsError('bad-input', `${plant} is not built for "${refrigerant}"; variants: ${built}`, {
      plant,
      refrigerant,
    });
  }
  return data;
}
