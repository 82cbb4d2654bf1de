import { PhysicsError } from '../errors';
import type { RefrigerantId } from '../fluids/fluid';
import { plantDescription } from '../plants';
import type { DesignPoint, Effective, Nominal } from '../solve/effective';
import type { FamilyId, FaultFamily, Faults, OperatingMode, PlantId, SensorName, TransducerName } from '../types';
import { AIR_RECIRCULATION } from './airRecirculation';
import { BULB_CHARGE_LOST } from './bulbChargeLost';
import { BULB_LOOSE } from './bulbLoose';
import { CAPACITOR_WEAK } from './capacitorWeak';
import { CHANGEOVER_PORTS_CROSSED } from './changeoverPortsCrossed';
import { CHECK_VALVE_LEAKING } from './checkValveLeaking';
import { COMMUNICATION_LOST } from './communicationLost';
import { COMPRESSOR_LEAK_BY } from './compressorLeakBy';
import { COMPRESSOR_WORN } from './compressorWorn';
import { CONDENSER_DIRTY } from './condenserDirty';
import { CONDENSER_FAN_SLOW } from './condenserFanSlow';
import { CONTACTOR_BURNT } from './contactorBurnt';
import { DEFROST_HEATER_DEAD } from './defrostHeaterDead';
import { DEFROST_NOT_ENDING } from './defrostNotEnding';
import { DEFROST_NOT_STARTING } from './defrostNotStarting';
import { DRAIN_BLOCKED } from './drainBlocked';
import { DRIER_RESTRICTION } from './drierRestriction';
import { DUCT_LEAK, RETURN_DUCT_LEAK } from './ductLeak';
import { EVAPORATOR_DIRTY } from './evaporatorDirty';
import { EVAPORATOR_FAN_SLOW } from './evaporatorFanSlow';
import { FAN_CAPACITOR_WEAK } from './fanCapacitorWeak';
import { FAN_CYCLING_CONTROL_FAILED } from './fanCyclingControlFailed';
import { FILTER_DIRTY } from './filterDirty';
import { LINE_CHARGE_NOT_ADDED } from './lineChargeNotAdded';
import { LINES_TOO_LONG } from './linesTooLong';
import { LIQUID_LINE_HEATED } from './liquidLineHeated';
import { LIQUID_LINE_KINK } from './liquidLineKink';
import { MODULE_VALVE_SHUT } from './moduleValveShut';
import { NON_CONDENSABLE } from './nonCondensable';
import { ORIFICE_OVERSIZE } from './orificeOversize';
import { ORIFICE_UNDERSIZE } from './orificeUndersize';
import { OVERCHARGE } from './overcharge';
import { PHASE_LOST } from './phaseLost';
import { PRESSURE_TRANSDUCER_OFFSET } from './pressureTransducerOffset';
import { REVERSING_VALVE_HALF_SHIFTED } from './reversingValveHalfShifted';
import { REVERSING_VALVE_LEAK } from './reversingValveLeak';
import { SERVICE_VALVE_THROTTLED } from './serviceValveThrottled';
import { SOLENOID_STUCK_CLOSED } from './solenoidStuckClosed';
import { SOLENOID_STUCK_OPEN } from './solenoidStuckOpen';
import { SUCTION_LINE_UNINSULATED } from './suctionLineUninsulated';
import { SUPERHEAT_SET } from './superheatSet';
import { SUPPLY_VOLTAGE_LOW } from './supplyVoltageLow';
import { THERMISTOR_DRIFT } from './thermistorDrift';
import { THERMISTOR_LOOSE } from './thermistorLoose';
import { THERMISTOR_OPEN } from './thermistorOpen';
import { THERMISTOR_SHORTED } from './thermistorShorted';
import { THERMOSTAT_MISPLACED } from './thermostatMisplaced';
import type { Fault } from './types';
import { UNDERCHARGE } from './undercharge';
import { UNIT_ADDRESS_CROSSED } from './unitAddressCrossed';
import { UNIT_CAPACITY_SET_WRONG } from './unitCapacitySetWrong';
import { VALVE_COIL_UNPLUGGED } from './valveCoilUnplugged';
import { VALVE_NOT_CLOSING } from './valveNotClosing';
import { VALVE_STUCK_CLOSING } from './valveStuckClosing';
import { VALVE_STUCK_OPENING } from './valveStuckOpening';

/** Every fault family, in the contract's order. */
export const FAULTS: readonly Fault[] = [
  UNDERCHARGE,
  LINE_CHARGE_NOT_ADDED,
  LINES_TOO_LONG,
  OVERCHARGE,
  NON_CONDENSABLE,
  DRIER_RESTRICTION,
  LIQUID_LINE_KINK,
  LIQUID_LINE_HEATED,
  SUCTION_LINE_UNINSULATED,
  SERVICE_VALVE_THROTTLED,
  CONDENSER_DIRTY,
  CONDENSER_FAN_SLOW,
  AIR_RECIRCULATION,
  FILTER_DIRTY,
  EVAPORATOR_DIRTY,
  EVAPORATOR_FAN_SLOW,
  DUCT_LEAK,
  RETURN_DUCT_LEAK,
  COMPRESSOR_LEAK_BY,
  COMPRESSOR_WORN,
  ORIFICE_OVERSIZE,
  ORIFICE_UNDERSIZE,
  VALVE_STUCK_CLOSING,
  VALVE_STUCK_OPENING,
  VALVE_COIL_UNPLUGGED,
  BULB_CHARGE_LOST,
  BULB_LOOSE,
  SUPERHEAT_SET,
  SOLENOID_STUCK_OPEN,
  SOLENOID_STUCK_CLOSED,
  FAN_CYCLING_CONTROL_FAILED,
  DEFROST_NOT_STARTING,
  DEFROST_NOT_ENDING,
  DEFROST_HEATER_DEAD,
  CAPACITOR_WEAK,
  FAN_CAPACITOR_WEAK,
  SUPPLY_VOLTAGE_LOW,
  CONTACTOR_BURNT,
  PHASE_LOST,
  THERMISTOR_DRIFT,
  THERMISTOR_LOOSE,
  THERMISTOR_OPEN,
  THERMISTOR_SHORTED,
  PRESSURE_TRANSDUCER_OFFSET,
  THERMOSTAT_MISPLACED,
  DRAIN_BLOCKED,
  CHECK_VALVE_LEAKING,
  REVERSING_VALVE_LEAK,
  REVERSING_VALVE_HALF_SHIFTED,
  CHANGEOVER_PORTS_CROSSED,
  UNIT_ADDRESS_CROSSED,
  MODULE_VALVE_SHUT,
  VALVE_NOT_CLOSING,
  UNIT_CAPACITY_SET_WRONG,
  COMMUNICATION_LOST,
];

/** K and Pa beyond which nothing is set or read wrongly */
const HOTTEST = 40;
const FARTHEST = 4e5;
/** what a sensor's severity may be; shares where nothing stands here */
const RANGES: Readonly<Partial<Record<FaultFamily['unit'], readonly [number, number]>>> = {
  K: [-HOTTEST, HOTTEST],
  Pa: [-FARTHEST, FARTHEST],
};
const SENSORS: readonly SensorName[] = ['suctionLine', 'evaporatorCoil', 'dischargeLine', 'outdoorAir', 'returnAir'];
const TRANSDUCERS: readonly TransducerName[] = ['suctionPressure', 'dischargePressure'];

export function faultFamily(id: FamilyId): Fault {
  const fault = FAULTS.find((f) => f.id === id);
  if (fault === undefined) throw new PhysicsError('bad-input', `unknown fault "${id}"`, { fault: id });
  return fault;
}

/** Whether a fault of this plant can be felt in a mode. */
export function isFelt({ modes }: FaultFamily, plant: PlantId, mode: OperatingMode): boolean {
  return modes?.[plant]?.includes(mode) !== false;
}

/** Whether the variant for a refrigerant (left out: any) has the part that goes wrong. */
export function canOccur({ plants, lacking }: FaultFamily, plant: PlantId, refrigerant?: RefrigerantId): boolean {
  return plants.includes(plant) && !(refrigerant && lacking?.[plant]?.includes(refrigerant));
}

/**
 * @param mode leaves out what cannot be felt in it
 * @param refrigerant leaves out what the variant for it has no part for
 */
export function familiesOf(plant: PlantId, mode?: OperatingMode, refrigerant?: RefrigerantId): readonly Fault[] {
  return FAULTS.filter((f) => canOccur(f, plant, refrigerant) && (mode === undefined || isFelt(f, plant, mode)));
}

export interface ParsedFault {
  readonly fault: Fault;
  readonly target: SensorName | TransducerName | null;
  /** the indoor unit that it sits in; null = the whole machine, or every unit alike */
  readonly unit: string | null;
  readonly severity: number;
}

/**
 * Read fault keys such as `undercharge`, `thermistor-drift:suctionLine` or `filter-dirty@unit3`. Throws `bad-input` naming the key and what is
 * expected: unknown family or sensor, a family that the plant cannot have, a severity out of range.
 */
export function parseFaults(plant: PlantId, faults: Faults, refrigerant?: RefrigerantId): readonly ParsedFault[] {
  const parsed: ParsedFault[] = [];
  for (const [key, severity] of Object.entries(faults)) {
    const [name, unit] = key.split('@');
    const [id, sensor] = name.split(':');
    const fault = FAULTS.find((f) => f.id === id);
    const refuse = (why: string): PhysicsError =>
      new PhysicsError('bad-input', `fault "${key}": ${why}`, { fault: key, severity: String(severity) });
    if (fault === undefined) throw refuse(`unknown; known are ${FAULTS.map((f) => f.id).join(', ')}`);
    if (!canOccur(fault, plant)) throw refuse(`cannot occur on ${plant}`);
    if (!canOccur(fault, plant, refrigerant)) throw refuse(`cannot occur on ${plant} for ${refrigerant}`);
    if (typeof severity !== 'number' || !Number.isFinite(severity)) throw refuse('severity must be a finite number');
    let target: SensorName | TransducerName | null = null;
    if (fault.targets) {
      const pressure = fault.unit === 'Pa';
      const sensors = pressure ? TRANSDUCERS : SENSORS;
      const named = sensor === undefined && pressure ? TRANSDUCERS[0] : sensor;
      target = sensors.find((s) => s === named) ?? null;
      if (target === null) throw refuse(`needs a sensor after the colon, one of ${sensors.join(', ')}`);
      const [low, high] = RANGES[fault.unit] ?? [0, 1];
      if (severity < low || severity > high) throw refuse(`severity must lie within ${low}…${high}`);
    } else {
      if (sensor !== undefined) throw refuse('takes no target after a colon');
      const top = topOf(fault);
      const low = fault.signed ? -top : 0;
      if (severity < low || severity > top) throw refuse(`severity must lie within ${low}…${top}`);
    }
    if (unit !== undefined) {
      const { units = [] } = plantDescription(plant);
      if (!fault.perUnit || units.length === 0) throw refuse('takes no indoor unit after an @');
      if (!units.includes(unit)) throw refuse(`needs an indoor unit after the @, one of ${units.join(', ')}`);
    }
    if (severity !== 0) parsed.push({ fault, target, unit: unit ?? null, severity });
  }
  return parsed;
}

/** The most that a severity may be at all, in the family's unit; its scale ends earlier. */
function topOf({ id, unit, max }: Fault): number {
  if (unit === 'K') return HOTTEST;
  if (unit !== 'share') return 2 * max;
  return id === 'overcharge' || id.endsWith('opening') || id.endsWith('oversize') || max > 1 ? 2 : 1;
}

export function applyFaults(
  plant: PlantId,
  refrigerant: RefrigerantId,
  faults: Faults,
  machine: Effective,
  design: DesignPoint,
  data: Nominal,
  /** the machine as it was called to work, or turned over for a while (a defrost): its other valve is at work then */
  called: boolean,
): void {
  for (const { fault, target, severity } of parseFaults(plant, faults, refrigerant)) {
    if (fault.atValveInUse && !called) continue;
    fault.apply(machine, severity, design, data, target);
  }
}
