import type { Conditions, PlantDescription } from '../../types';
import { HEAT_PUMP_COOLING_DRAWING, HEAT_PUMP_HEATING_DRAWING } from './drawing';
import { HEAT_PUMP_COOLING } from './machine';
import { HEAT_PUMP_COOLING_PLACES, HEAT_PUMP_HEATING_PLACES } from './places';

const COOLING: Conditions = { outdoor: 308.15, indoor: 300.15, wetBulb: 292.15, mode: 'cooling', altitude: 0 };
/** Rating point of the trade: 7 °C outdoors (about 6 °C wet bulb), 20 °C in the room. */
const HEATING: Conditions = { outdoor: 280.15, indoor: 293.15, wetBulb: 287.15, mode: 'heating', altitude: 0 };

/** Charge printed for 5 m of line; a further metre of 9.5 mm liquid line holds about this much (liquid at 38 °C). */
const CHARGE_RULE = {
  'R-410A': { base: 2.95, allowance: 0.047, included: 5, length: 9.7 },
  'R-454B': { base: 2.6, allowance: 0.043, included: 5, length: 9.7 },
} as const;

const nameplate: PlantDescription['nameplate'] = (refrigerant) => {
  const variant = refrigerant === 'R-454B' ? 'R-454B' : 'R-410A';
  const data = HEAT_PUMP_COOLING[variant];
  return {
    refrigerant,
    charge: data.charge,
    chargeRule: CHARGE_RULE[variant],
    ratedCapacity: 10000,
    ratedCurrent: 12,
    supplyVoltage: data.motor.voltage,
    capacitance: data.motor.capacitance,
    targetSuperheat: null,
    targetSubcooling: 5.5,
    highPressureLimit: data.limits.highPressure,
    ratedAirFlow: data.indoorFan.flow,
  };
};

export const THERMOSTATIC_HEAT_PUMP: PlantDescription = {
  id: 'thermostatic-heat-pump',
  refrigerants: ['R-410A', 'R-454B'],
  designConditions: COOLING,
  modes: { cooling: COOLING, heating: HEATING },
  otherwise: {
    heating: {
      designConditions: HEATING,
      places: HEAT_PUMP_HEATING_PLACES,
      drawing: HEAT_PUMP_HEATING_DRAWING,
      nameplate: (refrigerant) => ({ ...nameplate(refrigerant), targetSubcooling: null }),
    },
  },
  metering: 'thermostatic-valve',
  variableSpeed: false,
  dataLink: false,
  places: HEAT_PUMP_COOLING_PLACES,
  drawing: HEAT_PUMP_COOLING_DRAWING,
  nameplate,
};
