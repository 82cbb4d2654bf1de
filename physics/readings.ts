/**
 * What can be read off a machine: probes (true values with their units), the sensors of its own controller, and what a person
 * sees or hears. Names are stable; part of the contract in `types.ts`.
 */

/** The closed list of unit strings that a quantity may carry. '-' is dimensionless. */
export type UnitName = 'Pa' | 'K' | 'kg/s' | 'W' | 'm3/s' | 'kg' | 'A' | 'V' | 'Hz' | 'F' | 'Ohm' | '-';

export interface Quantity {
  readonly value: number;
  readonly unit: UnitName;
}

/** Stable probe names (architecture contract). Every name is defined for every plant of this version. */
export const PROBES = {
  suctionPressure: 'Pa',
  dischargePressure: 'Pa',
  liquidPressure: 'Pa',
  liquidPressureAfterDrier: 'Pa',
  evaporatorOutletPressure: 'Pa',
  compressorSuctionPressure: 'Pa',
  filterPressureDrop: 'Pa',
  coilPressureDrop: 'Pa',
  supplyDuctPressure: 'Pa',
  standingPressure: 'Pa',
  vapourLinePressure: 'Pa',
  evaporatingTemp: 'K',
  condensingTemp: 'K',
  condensingTempDew: 'K',
  condensingTempBubble: 'K',
  suctionLineTemp: 'K',
  compressorSuctionTemp: 'K',
  reversingValveSuctionInTemp: 'K',
  vapourLineTemp: 'K',
  dischargeLineTemp: 'K',
  liquidLineTemp: 'K',
  liquidLineTempAfterDrier: 'K',
  meteringInletTemp: 'K',
  evaporatorOutletTemp: 'K',
  superheat: 'K',
  compressorSuperheat: 'K',
  evaporatorSuperheat: 'K',
  subcooling: 'K',
  dischargeSuperheat: 'K',
  outdoorAirTemp: 'K',
  condenserEnteringAirTemp: 'K',
  condenserLeavingAirTemp: 'K',
  outdoorEnteringAirTemp: 'K',
  outdoorLeavingAirTemp: 'K',
  returnAirTemp: 'K',
  returnAirWetBulb: 'K',
  coilEnteringAirTemp: 'K',
  thermostatAirTemp: 'K',
  supplyAirTemp: 'K',
  supplyAirWetBulb: 'K',
  supplyAirFlow: 'm3/s',
  condenserAirFlow: 'm3/s',
  outdoorAirFlow: 'm3/s',
  compressorCurrent: 'A',
  compressorPower: 'W',
  totalPower: 'W',
  compressorSpeed: 'Hz',
  /** between the two phases that have the least between them, where there are three */
  supplyVoltage: 'V',
  contactorDrop: 'V',
  /** of the signal bus at an indoor unit (as a machine's own: at the first) */
  busVoltage: 'V',
  compressorCapacitance: 'F',
  fanCapacitance: 'F',
  defrostHeaterResistance: 'Ohm',
  /** at the plugs of an electronic valve's controller; 0 on other machines */
  suctionSensorResistance: 'Ohm',
  coilSensorResistance: 'Ohm',
  valveCoilResistance: 'Ohm',
  valveOpening: '-',
  refrigerantMassFlow: 'kg/s',
  capacityTotal: 'W',
  capacitySensible: 'W',
  cop: '-',
  refrigerantCharge: 'kg',
} as const satisfies Record<string, UnitName>;

export type ProbeName = keyof typeof PROBES;
/** A probe of the machine, or of one indoor unit of several: `evaporatorSuperheat@unit3`. */
export type ProbeKey = ProbeName | `${ProbeName}@${string}`;
export type Probes = Readonly<Record<ProbeName, Quantity>> & Readonly<Record<`${ProbeName}@${string}`, Quantity>>;

/** The probe's name without its unit's. */
export function probeName(key: ProbeKey): ProbeName {
  const at = key.indexOf('@');
  return (at < 0 ? key : key.slice(0, at)) as ProbeName;
}

/** The indoor unit that a probe belongs to, or null. */
export function unitOf(key: string): string | null {
  const at = key.indexOf('@');
  return at < 0 ? null : key.slice(at + 1);
}

/** Sensors of the machine's own controller; what its data link reports (drift included), as against the true probes. */
export type SensorKey = SensorName | TransducerName | `${SensorName}@${string}`;
export type SensorName = 'suctionLine' | 'evaporatorCoil' | 'dischargeLine' | 'outdoorAir' | 'returnAir';
/** Pressure sensors of a controller that regulates by pressure, Pa. */
export type TransducerName = 'suctionPressure' | 'dischargePressure';

/** What the controller's sensors report: K, those of single indoor units among them, and Pa where it reads pressures. */
export type Sensors = Readonly<Record<SensorName, number>> &
  Readonly<Partial<Record<TransducerName, number>>> &
  Readonly<Record<`${SensorName}@${string}`, number>>;

/** What a person sees or hears without an instrument; each is a number 0…1 that the model computes. */
export const LOOKS = [
  /** share of gas by volume at the sight glass of the liquid line: 0 clear … 1 all foam */
  'sightGlass',
  /** share of the indoor coil that carries ice */
  'evaporatorFrost',
  /** share of clean air flow that the filter's dust takes away */
  'filterDust',
  /** share of clean air flow that dirt on the outdoor coil takes away */
  'condenserDirt',
  /** share of clean air flow that dirt on the indoor coil takes away */
  'evaporatorDirt',
  /** outdoor fan speed over its rated speed */
  'condenserFanSpeed',
  /** indoor fan speed over its rated speed for the chosen step */
  'evaporatorFanSpeed',
  /** share of the receiver that liquid fills; 0 without a receiver */
  'receiverLevel',
  /** share of its thermal contact that the bulb of a thermostatic valve has; 1 without one */
  'bulbContact',
  /** share of its bore that a kink takes from the liquid line */
  'liquidLineKink',
  /** free area of the suction service valve over that of the open valve */
  'suctionValveOpen',
  /** share of the passage between the cooler's fins that ice fills */
  'evaporatorIce',
  /** share of the liquid line for which the charge label shows an allowance */
  'lineCharged',
  /** planned length of the lines over the length that a tape measure finds */
  'linesPlanned',
  /** share of its thermal contact that the controller's suction sensor, and its indoor coil sensor, have */
  'suctionSensorContact',
  'coilSensorContact',
  /** the same passage of the outdoor coil of a machine that heats, and the contact that the sensor on that coil has */
  'outdoorIce',
  'outdoorSensorContact',
  /** share of the condensate pan that water fills */
  'condensatePan',
  /** what the thermostat's or the unit's display says is amiss: see `DISPLAYED` in `looks.ts` */
  'display',
] as const;
export type LookName = (typeof LOOKS)[number];
/** A look at the machine, or at one indoor unit or outdoor module of several: `filterDust@unit3`. */
export type LookKey = LookName | `${LookName}@${string}`;
export type Looks = Readonly<Record<LookName, number>> & Readonly<Partial<Record<`${LookName}@${string}`, number>>>;
