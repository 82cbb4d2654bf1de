import type { Conditions, PlantDescription } from '../../types';
import { MULTI_SPLIT_DRAWING } from './drawing';
import { MULTI_SPLIT_UNITS, multiSplitInstall, multiSplitMachine } from './machine';
import { MULTI_SPLIT_PLACES } from './places';

const COOLING: Conditions = { outdoor: 308.15, indoor: 300.15, wetBulb: 292.15, mode: 'cooling', altitude: 0 };
const HEATING: Conditions = { outdoor: 280.15, indoor: 293.15, wetBulb: 288.15, mode: 'heating', altitude: 0 };

export const MULTI_SPLIT: PlantDescription = {
  id: 'multi-split',
  refrigerants: ['R-410A', 'R-32'],
  designConditions: COOLING,
  modes: { cooling: COOLING, heating: HEATING },
  metering: 'electronic-valve',
  units: MULTI_SPLIT_UNITS.map(({ id }) => id),
  variableSpeed: true,
  dataLink: true,
  places: MULTI_SPLIT_PLACES,
  drawing: MULTI_SPLIT_DRAWING,
  nameplate: (refrigerant) => {
    const variant = refrigerant === 'R-32' ? 'R-32' : 'R-410A';
    const data = multiSplitMachine(variant);
    return {
      refrigerant,
      install: multiSplitInstall(variant),
      charge: data.charge,
      ratedCapacity: 22400,
      ratedCurrent: 10.5,
      supplyVoltage: data.motor.voltage,
      capacitance: null,
      targetSuperheat: data.control.superheatTarget,
      targetSubcooling: 15,
      highPressureLimit: data.limits.highPressure,
      ratedAirFlow: data.units.reduce((sum, each) => sum + each.fan.flow, 0),
    };
  },
};
