import type { Conditions, PlantDescription } from '../../types';
import { ORIFICE_SPLIT_DRAWING } from './drawing';
import { ORIFICE_SPLIT_MACHINE } from './machine';
import { ORIFICE_SPLIT_PLACES } from './places';

const DESIGN: Conditions = { outdoor: 308.15, indoor: 300.15, wetBulb: 292.15, mode: 'cooling', altitude: 0 };

export const ORIFICE_SPLIT: PlantDescription = {
  id: 'orifice-split',
  refrigerants: ['R-410A', 'R-22'],
  designConditions: DESIGN,
  modes: { cooling: DESIGN },
  metering: 'fixed-orifice',
  variableSpeed: false,
  dataLink: false,
  places: ORIFICE_SPLIT_PLACES,
  drawing: ORIFICE_SPLIT_DRAWING,
  nameplate: (refrigerant) => {
    const data = ORIFICE_SPLIT_MACHINE[refrigerant === 'R-22' ? 'R-22' : 'R-410A'];
    return {
      refrigerant,
      charge: data.charge,
      ratedCapacity: 10000,
      ratedCurrent: 12.5,
      supplyVoltage: data.motor.voltage,
      capacitance: data.motor.capacitance,
      targetSuperheat: 6.6,
      targetSubcooling: null,
      highPressureLimit: data.limits.highPressure,
      ratedAirFlow: data.indoorFan.flow,
    };
  },
};
