import type { Conditions, PlantDescription } from '../../types';
import { INVERTER_SPLIT_DRAWING } from './drawing';
import { INVERTER_SPLIT_MACHINE } from './machine';
import { INVERTER_SPLIT_PLACES } from './places';

const DESIGN: Conditions = { outdoor: 308.15, indoor: 300.15, wetBulb: 292.15, mode: 'cooling', altitude: 0 };

export const INVERTER_SPLIT: PlantDescription = {
  id: 'inverter-split',
  refrigerants: ['R-32'],
  designConditions: DESIGN,
  modes: { cooling: DESIGN },
  metering: 'electronic-valve',
  variableSpeed: true,
  dataLink: true,
  places: INVERTER_SPLIT_PLACES,
  drawing: INVERTER_SPLIT_DRAWING,
  nameplate: (refrigerant) => {
    const data = INVERTER_SPLIT_MACHINE['R-32'];
    return {
      refrigerant,
      charge: data.charge,
      ratedCapacity: 3500,
      ratedCurrent: 4.2,
      supplyVoltage: data.motor.voltage,
      capacitance: null,
      targetSuperheat: data.control.superheatTarget,
      targetSubcooling: 6,
      highPressureLimit: data.limits.highPressure,
      ratedAirFlow: data.indoorFan.flow,
    };
  },
};
