import type { Conditions, PlantDescription } from '../../types';
import { HEAT_RECOVERY_DRAWING } from './drawing';
import { HEAT_RECOVERY_UNITS, heatRecoveryInstall, heatRecoveryMachine } from './machine';
import { HEAT_RECOVERY_PLACES } from './places';

const COOLING: Conditions = { outdoor: 308.15, indoor: 300.15, wetBulb: 292.15, mode: 'cooling', altitude: 0 };
const HEATING: Conditions = { outdoor: 280.15, indoor: 293.15, wetBulb: 288.15, mode: 'heating', altitude: 0 };
const SIMULTANEOUS: Conditions = {
  outdoor: 283.15,
  indoor: 295.15,
  wetBulb: 288.65,
  mode: 'simultaneous',
  altitude: 0,
};

export const HEAT_RECOVERY: PlantDescription = {
  id: 'heat-recovery',
  refrigerants: ['R-410A'],
  designConditions: COOLING,
  modes: { cooling: COOLING, heating: HEATING, simultaneous: SIMULTANEOUS },
  metering: 'electronic-valve',
  units: HEAT_RECOVERY_UNITS.map(({ id }) => id),
  variableSpeed: true,
  dataLink: true,
  places: HEAT_RECOVERY_PLACES,
  drawing: HEAT_RECOVERY_DRAWING,
  nameplate: (refrigerant) => {
    const data = heatRecoveryMachine();
    return {
      refrigerant,
      install: heatRecoveryInstall(),
      charge: data.charge,
      ratedCapacity: 67000,
      ratedCurrent: 32,
      supplyVoltage: data.motor.voltage,
      capacitance: null,
      targetSuperheat: data.control.superheatTarget,
      targetSubcooling: 15,
      highPressureLimit: data.limits.highPressure,
      ratedAirFlow: data.units.reduce((sum, each) => sum + each.fan.flow, 0),
    };
  },
};
