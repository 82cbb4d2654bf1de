import type { Conditions, PlantDescription } from '../../types';
import { COLD_ROOM_DRAWING, WITHOUT_RECEIVER } from './drawing';
import { COLD_ROOM_MACHINE } from './machine';
import { COLD_ROOM_PLACES } from './places';

/** +2 °C at about 85 % relative humidity in the room. */
const DESIGN: Conditions = { outdoor: 305.15, indoor: 275.15, wetBulb: 274.2, mode: 'cooling', altitude: 0 };

export const COLD_ROOM: PlantDescription = {
  id: 'cold-room',
  refrigerants: ['R-134a', 'R-448A', 'R-290'],
  designConditions: DESIGN,
  modes: { cooling: DESIGN },
  metering: 'thermostatic-valve',
  setPoint: { found: 273.65, low: 272.15, high: 283.15 },
  variableSpeed: false,
  pumpsDown: true,
  dataLink: false,
  places: COLD_ROOM_PLACES,
  variants: {
    'R-290': {
      places: COLD_ROOM_PLACES.filter(({ id }) => id !== 'receiver' && id !== 'suction-valve'),
      drawing: WITHOUT_RECEIVER,
    },
  },
  drawing: COLD_ROOM_DRAWING,
  nameplate: (refrigerant) => {
    const data = COLD_ROOM_MACHINE[refrigerant === 'R-448A' || refrigerant === 'R-290' ? refrigerant : 'R-134a'];
    return {
      refrigerant,
      charge: data.charge,
      ratedCapacity: 4000,
      ratedCurrent: 8.5,
      supplyVoltage: data.motor.voltage,
      capacitance: data.motor.capacitance,
      targetSuperheat: 8,
      targetSubcooling: null,
      highPressureLimit: data.limits.highPressure,
      ratedAirFlow: data.indoorFan.flow,
    };
  },
};
