import type { CauseId } from '../../physics/types';
import type { RootCause } from './types';

/** What most often lies behind a cause. Common practice, no source. */
export const USUAL_ROOT: Readonly<Record<CauseId, RootCause>> = {
  undercharge: 'leak-at-joint',
  overcharge: 'overfilled-at-last-service',
  'non-condensable': 'air-left-in-at-installation',
  'drier-restriction': 'wet-or-dirty-circuit',
  'liquid-line-kink': 'badly-laid-pipe',
  'service-valve-throttled': 'left-part-shut',
  'condenser-dirty': 'no-cleaning',
  'condenser-fan-slow': 'worn-motor',
  'air-recirculation': 'air-path-blocked',
  'filter-dirty': 'no-cleaning',
  'evaporator-dirty': 'no-cleaning',
  'evaporator-fan-slow': 'worn-motor',
  'duct-leak': 'poor-fastening',
  'return-duct-leak': 'poor-fastening',
  'compressor-leak-by': 'worn-compressor',
  'orifice-oversize': 'wrong-part-fitted',
  'orifice-undersize': 'wrong-part-fitted',
  'metering-valve-stuck-closing': 'worn-valve',
  'metering-valve-stuck-opening': 'worn-valve',
  'bulb-charge-lost': 'aged-part',
  'bulb-loose': 'poor-fastening',
  'capacitor-weak': 'aged-part',
  'fan-capacitor-weak': 'aged-part',
  'supply-voltage-low': 'weak-supply',
  'contactor-burnt': 'aged-part',
  'thermistor-drift': 'aged-part',
  'no-fault': 'customer-expectation',
};
