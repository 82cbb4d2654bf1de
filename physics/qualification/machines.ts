/** The machines under test and what is read off them, in the units of the trade. */
import { type Controls, createMachine, type MachineSetup, type Snapshot } from '../index';

export interface Variant {
  readonly id:
    | 'orifice-r410a'
    | 'orifice-r22'
    | 'inverter-free'
    | 'inverter-fixed'
    | 'cold-room'
    | 'cold-room-r448a'
    | 'cold-room-r290'
    | 'heat-pump-r410a'
    | 'heat-pump-r454b';
  readonly plant: MachineSetup['plant'];
  readonly refrigerant: MachineSetup['refrigerant'];
  readonly controls: Partial<Controls>;
  /** °C of the air at its design point; left out = 35 °C outdoors, 27/19 °C indoors */
  readonly design?: { readonly outdoor: number; readonly indoor: number; readonly wetBulb: number };
}

/** +2 °C and about 85 % in the room. */
const COLD_STORE = { outdoor: 32, indoor: 2, wetBulb: 1.05 } as const;

export const ORIFICE_R410A: Variant = {
  id: 'orifice-r410a',
  plant: 'orifice-split',
  refrigerant: 'R-410A',
  controls: {},
};
export const ORIFICE_R22: Variant = { id: 'orifice-r22', plant: 'orifice-split', refrigerant: 'R-22', controls: {} };
export const INVERTER_FREE: Variant = {
  id: 'inverter-free',
  plant: 'inverter-split',
  refrigerant: 'R-32',
  controls: { fixedSpeed: false },
};
export const INVERTER_FIXED: Variant = {
  id: 'inverter-fixed',
  plant: 'inverter-split',
  refrigerant: 'R-32',
  controls: { fixedSpeed: true },
};
export const COLD_ROOM: Variant = {
  id: 'cold-room',
  plant: 'cold-room',
  refrigerant: 'R-134a',
  controls: {},
  design: COLD_STORE,
};
export const COLD_ROOM_R448A: Variant = {
  id: 'cold-room-r448a',
  plant: 'cold-room',
  refrigerant: 'R-448A',
  controls: {},
  design: COLD_STORE,
};
export const COLD_ROOM_R290: Variant = {
  id: 'cold-room-r290',
  plant: 'cold-room',
  refrigerant: 'R-290',
  controls: {},
  design: COLD_STORE,
};
export const WITH_RECEIVER: readonly Variant[] = [COLD_ROOM, COLD_ROOM_R448A];
export const COLD_ROOMS: readonly Variant[] = [...WITH_RECEIVER, COLD_ROOM_R290];
const HEAT_PUMP = { plant: 'thermostatic-heat-pump', controls: {} } as const;
export const HEAT_PUMP_R410A: Variant = { ...HEAT_PUMP, id: 'heat-pump-r410a', refrigerant: 'R-410A' };
export const HEAT_PUMP_R454B: Variant = { ...HEAT_PUMP, id: 'heat-pump-r454b', refrigerant: 'R-454B' };
export const HEAT_PUMPS: readonly Variant[] = [HEAT_PUMP_R410A, HEAT_PUMP_R454B];
export const ORIFICES: readonly Variant[] = [ORIFICE_R410A, ORIFICE_R22];
export const VARIANTS: readonly Variant[] = [ORIFICE_R410A, ORIFICE_R22, INVERTER_FREE, INVERTER_FIXED];

/** What to change of the design point of a mode (left out: cooling): °C of the air, faults, nuisance multipliers. */
export interface Case {
  readonly mode?: 'cooling' | 'heating';
  readonly outdoor?: number;
  readonly indoor?: number;
  readonly wetBulb?: number;
  readonly faults?: MachineSetup['faults'];
  readonly nuisance?: MachineSetup['nuisance'];
}

const ZERO = 273.15;
const RATING = {
  cooling: { outdoor: 35, indoor: 27, wetBulb: 19 },
  heating: { outdoor: 7, indoor: 20, wetBulb: 14 },
} as const;

export function setupOf(variant: Variant, change: Case = {}): MachineSetup {
  const { mode = 'cooling' } = change;
  const rating = RATING[mode];
  return {
    plant: variant.plant,
    refrigerant: variant.refrigerant,
    conditions: {
      outdoor: ZERO + (change.outdoor ?? variant.design?.outdoor ?? rating.outdoor),
      indoor: ZERO + (change.indoor ?? variant.design?.indoor ?? rating.indoor),
      wetBulb: ZERO + (change.wetBulb ?? variant.design?.wetBulb ?? rating.wetBulb),
      mode,
      altitude: 0,
    },
    faults: change.faults ?? {},
    nuisance: change.nuisance,
  };
}

/** Pressures kPa absolute, temperatures °C, differences K, W, A, g/s, Hz, filter Pa. */
export function readingsOf(snapshot: Snapshot) {
  const { probes } = snapshot;
  const kPa = (name: 'suctionPressure' | 'dischargePressure' | 'liquidPressure' | 'standingPressure') =>
    probes[name].value / 1000;
  return {
    ps: kPa('suctionPressure'),
    pd: kPa('dischargePressure'),
    Te: probes.evaporatingTemp.value - ZERO,
    Tc: probes.condensingTemp.value - ZERO,
    /** at the service valve; at the evaporator's outlet; at the compressor */
    SH: probes.superheat.value,
    SHout: probes.evaporatorSuperheat.value,
    SHcomp: probes.compressorSuperheat.value,
    SC: probes.subcooling.value,
    Td: probes.dischargeLineTemp.value - ZERO,
    DSH: probes.dischargeSuperheat.value,
    rise: probes.condenserLeavingAirTemp.value - probes.condenserEnteringAirTemp.value,
    /** air onto the outdoor coil, °C, and the condensing temperature over it */
    face: probes.condenserEnteringAirTemp.value - ZERO,
    TcOverFace: probes.condensingTemp.value - probes.condenserEnteringAirTemp.value,
    drop: probes.returnAirTemp.value - probes.supplyAirTemp.value,
    /** supply air, °C; fall of the outdoor air over its coil; rise of the suction pipe over a reversing valve */
    supply: probes.supplyAirTemp.value - ZERO,
    outdoorFall: probes.outdoorAirTemp.value - probes.outdoorLeavingAirTemp.value,
    valveRise: probes.compressorSuctionTemp.value - probes.reversingValveSuctionInTemp.value,
    capacity: probes.capacityTotal.value,
    power: probes.compressorPower.value,
    totalPower: probes.totalPower.value,
    cop: probes.cop.value,
    current: probes.compressorCurrent.value,
    flow: probes.refrigerantMassFlow.value * 1000,
    speed: probes.compressorSpeed.value,
    opening: probes.valveOpening.value,
    /** W of compressor power a W of cooling */
    effort: probes.compressorPower.value / probes.capacityTotal.value,
    drierFall: probes.liquidLineTemp.value - probes.liquidLineTempAfterDrier.value,
    drierDrop: (probes.liquidPressure.value - probes.liquidPressureAfterDrier.value) / 1000,
    /** between drier and metering device */
    kinkFall: probes.liquidLineTempAfterDrier.value - probes.meteringInletTemp.value,
    stem: snapshot.looks.suctionValveOpen,
    /** what the suction gas warms on its way to the service valve */
    suctionWarming: probes.suctionLineTemp.value - probes.evaporatorOutletTemp.value,
    sensorSeat: snapshot.looks.suctionSensorContact,
    label: snapshot.looks.lineCharged,
    planned: snapshot.looks.linesPlanned,
    filterDrop: probes.filterPressureDrop.value,
    coilDrop: probes.coilPressureDrop.value,
    ductPressure: probes.supplyDuctPressure.value,
    /** air onto the indoor coil over the room's, K */
    intakeOver: probes.coilEnteringAirTemp.value - probes.returnAirTemp.value,
    liquidOverAir: probes.liquidLineTemp.value - probes.condenserEnteringAirTemp.value,
    standing: kPa('standingPressure'),
    capacitance: probes.compressorCapacitance.value * 1e6,
    voltage: probes.supplyVoltage.value,
    poleDrop: probes.contactorDrop.value,
    /** air at the thermostat over the room's, K */
    thermostatOver: probes.thermostatAirTemp.value - probes.returnAirTemp.value,
    fanCapacitance: probes.fanCapacitance.value * 1e6,
    /** what the controller's suction sensor says over what a clamp says */
    sensorError: snapshot.sensors.suctionLine - probes.suctionLineTemp.value,
    glass: snapshot.looks.sightGlass,
    level: snapshot.looks.receiverLevel,
    frost: snapshot.looks.evaporatorFrost,
    ice: snapshot.looks.evaporatorIce,
    outdoorIce: snapshot.looks.outdoorIce,
    ohm: probes.defrostHeaterResistance.value,
    charge: probes.refrigerantCharge.value,
  };
}

export type Readings = ReturnType<typeof readingsOf>;
export type Reading = keyof Readings;

export function steadySnapshot(variant: Variant, change: Case = {}): Snapshot {
  return createMachine(setupOf(variant, change)).steady(variant.controls);
}

export function steadyReadings(variant: Variant, change: Case = {}): Readings {
  return readingsOf(steadySnapshot(variant, change));
}
