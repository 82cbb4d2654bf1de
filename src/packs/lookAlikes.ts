/** Which callouts of a drawn pack look alike: offered to each other at the debrief. */
import type { CauseId } from '../../physics/types';
import type { Callout } from '../attempt/pack/types';
import { familyOf } from '../attempt/remedies';

/**
 * Causes that trainers know to be taken for one another, the closest first. Common practice, no source; "nothing wrong"
 * is taken for the mild form of what makes an innocent complaint.
 */
const ALIKE: Readonly<Record<CauseId, readonly CauseId[]>> = {
  undercharge: [
    'drier-restriction',
    'orifice-undersize',
    'metering-valve-stuck-closing',
    'filter-dirty',
    'no-fault',
    'defrost-not-starting',
  ],
  'line-charge-not-added': ['undercharge', 'liquid-line-heated', 'orifice-undersize'],
  'lines-too-long': ['suction-line-uninsulated', 'undercharge', 'orifice-undersize'],
  overcharge: ['condenser-dirty', 'non-condensable', 'condenser-fan-slow', 'orifice-oversize'],
  'non-condensable': ['overcharge', 'condenser-dirty', 'condenser-fan-slow'],
  'drier-restriction': ['undercharge', 'orifice-undersize', 'metering-valve-stuck-closing'],
  'liquid-line-kink': ['drier-restriction', 'orifice-undersize', 'undercharge'],
  'liquid-line-heated': ['liquid-line-kink', 'undercharge', 'orifice-undersize'],
  'suction-line-uninsulated': ['undercharge', 'no-fault', 'compressor-leak-by'],
  'service-valve-throttled': ['compressor-leak-by', 'orifice-oversize', 'metering-valve-stuck-opening'],
  'condenser-dirty': ['overcharge', 'non-condensable', 'condenser-fan-slow'],
  'condenser-fan-slow': ['condenser-dirty', 'overcharge', 'non-condensable'],
  'air-recirculation': ['condenser-dirty', 'condenser-fan-slow', 'overcharge', 'non-condensable'],
  'filter-dirty': ['undercharge', 'evaporator-fan-slow'],
  'evaporator-dirty': ['filter-dirty', 'evaporator-fan-slow', 'undercharge'],
  'evaporator-fan-slow': ['filter-dirty', 'undercharge'],
  'duct-leak': ['no-fault', 'return-duct-leak', 'evaporator-fan-slow'],
  'return-duct-leak': ['duct-leak', 'compressor-leak-by', 'no-fault'],
  'compressor-leak-by': ['no-fault', 'orifice-oversize', 'metering-valve-stuck-opening', 'undercharge'],
  'compressor-worn': ['capacitor-weak', 'supply-voltage-low', 'contactor-burnt', 'no-fault'],
  'orifice-oversize': ['overcharge', 'compressor-leak-by'],
  'orifice-undersize': ['drier-restriction', 'undercharge'],
  'metering-valve-stuck-closing': ['undercharge', 'drier-restriction', 'thermistor-drift'],
  'metering-valve-stuck-opening': ['thermistor-drift', 'overcharge', 'compressor-leak-by'],
  'metering-valve-coil-unplugged': ['metering-valve-stuck-closing', 'metering-valve-stuck-opening', 'thermistor-drift'],
  'bulb-charge-lost': ['drier-restriction', 'metering-valve-stuck-closing', 'undercharge'],
  'metering-valve-superheat-set': [
    'metering-valve-stuck-closing',
    'metering-valve-stuck-opening',
    'bulb-loose',
    'solenoid-stuck-closed',
  ],
  'solenoid-stuck-open': ['no-fault', 'compressor-leak-by'],
  'solenoid-stuck-closed': [
    'drier-restriction',
    'metering-valve-stuck-closing',
    'bulb-charge-lost',
    'metering-valve-superheat-set',
    'undercharge',
  ],
  'fan-cycling-control-failed': ['undercharge', 'no-fault'],
  'defrost-not-starting': [
    'defrost-heater-dead',
    'evaporator-fan-slow',
    'condenser-fan-slow',
    'undercharge',
    'solenoid-stuck-closed',
  ],
  'defrost-not-ending': ['no-fault', 'defrost-heater-dead'],
  'defrost-heater-dead': ['defrost-not-starting', 'evaporator-fan-slow'],
  'bulb-loose': ['metering-valve-stuck-opening', 'evaporator-fan-slow'],
  'capacitor-weak': ['no-fault', 'condenser-fan-slow'],
  'fan-capacitor-weak': ['condenser-fan-slow', 'condenser-dirty', 'air-recirculation'],
  'supply-voltage-low': ['capacitor-weak', 'contactor-burnt', 'no-fault'],
  'contactor-burnt': ['supply-voltage-low', 'capacitor-weak', 'no-fault'],
  'phase-lost': ['supply-voltage-low', 'no-fault'],
  'thermistor-drift': ['metering-valve-stuck-opening', 'metering-valve-stuck-closing', 'undercharge'],
  'thermistor-out-of-its-pocket': ['thermistor-drift', 'metering-valve-stuck-opening', 'metering-valve-stuck-closing'],
  'thermistor-open': ['thermistor-shorted', 'drain-blocked', 'thermistor-drift'],
  'thermistor-shorted': ['thermistor-open', 'drain-blocked', 'thermistor-drift'],
  'pressure-transducer-offset': ['thermistor-drift', 'undercharge', 'no-fault'],
  'thermostat-misplaced': ['no-fault', 'duct-leak'],
  'drain-blocked': ['thermistor-open', 'capacitor-weak', 'no-fault'],
  'check-valve-leaking': ['metering-valve-stuck-opening', 'bulb-loose', 'compressor-leak-by'],
  'reversing-valve-leak': ['compressor-leak-by', 'reversing-valve-half-shifted', 'undercharge', 'no-fault'],
  'reversing-valve-half-shifted': ['reversing-valve-leak', 'compressor-leak-by'],
  'no-fault': ['undercharge', 'compressor-leak-by', 'capacitor-weak', 'filter-dirty', 'defrost-not-ending'],
  'changeover-ports-crossed': ['unit-address-crossed', 'metering-valve-stuck-closing'],
  'unit-address-crossed': ['changeover-ports-crossed', 'no-fault'],
  'module-valve-shut': ['undercharge', 'condenser-dirty', 'compressor-leak-by'],
  'metering-valve-not-closing': ['metering-valve-stuck-opening', 'no-fault'],
  'communication-lost': ['metering-valve-stuck-closing', 'unit-address-crossed', 'no-fault'],
  'unit-capacity-set-wrong': ['metering-valve-stuck-closing', 'filter-dirty', 'no-fault'],
};

/** Each callout with the one of another cause that looks most like it, of the same plant where there is a choice. */
export function withLookAlikes(callouts: readonly Callout[]): Callout[] {
  return callouts.map((callout) => {
    const alike = ALIKE[causeOf(callout)];
    const rank = (other: Callout) =>
      2 * alike.indexOf(causeOf(other)) + (other.plant === callout.plant && other.id !== callout.id ? 0 : 1);
    const rivals = callouts.filter((other) => alike.includes(causeOf(other)));
    if (rivals.length === 0) return callout;
    const { id } = rivals.reduce((best, other) => (rank(other) < rank(best) ? other : best));
    return { ...callout, lookAlike: id };
  });
}

function causeOf({ faults }: Callout): CauseId {
  const key = Object.keys(faults)[0];
  return key === undefined ? 'no-fault' : familyOf(key);
}
