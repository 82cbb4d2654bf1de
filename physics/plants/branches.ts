/**
 * Sizes of branches by their rated cooling: one row a kilowatt, taken from the smaller machines of this bench, whose
 * numbers were found against the trade's bands. Pipe diameters are common practice for the capacity, no source.
 */
import type { BranchData } from '../network/data';
import type { InstallRecord } from './types';

export interface UnitSize {
  readonly id: string;
  /** rated cooling, kW */
  readonly rated: number;
  /** pipe from the branching point, m, and m that the unit lies above it */
  readonly metres: number;
  readonly lift: number;
}

/** Refrigerant's own factors against R-410A: density of gas decides pipes' drop, volumetric cooling the flow, density of liquid what pipes hold. */
export interface FluidFactors {
  readonly drop: number;
  readonly flow: number;
  readonly liquid: number;
}

/** needle valves choke early: gas in their liquid costs them much of their flow */
const THROAT = 0.78;

/** A ceiling or wall unit. */
export function unitBranch({ id, rated, metres, lift }: UnitSize, fluid: FluidFactors): BranchData {
  const relative = 2.8 / rated;
  const flow = 0.0557 * rated;
  return {
    id,
    coil: {
      role: 'evaporator',
      segments: 6,
      volume: 0.326e-3 * rated,
      diameter: 6.2e-3,
      circuits: rated < 3 ? 2 : rated < 6 ? 4 : 6,
      innerArea: 0.16 * rated,
      enhancement: 1.45,
      airUa: 71 * rated,
      airFlow: flow,
      airExponent: 0.6,
      wallCapacity: 1000 * rated,
      pressureDrop: 7e9 * relative * relative * fluid.drop,
    },
    fan: { flow, pressure: 60, flatness: 0.5, power: 22 * rated, filterShare: 0.33, coilShare: 0.5, drift: 0.12 },
    fanLow: 0.7,
    valve: {
      drier: 0,
      line: 1.6e11 * relative * relative * (metres / 10) * fluid.drop,
      lift,
      area: 2.52e-7 * rated * fluid.flow,
      throat: THROAT,
    },
    gasDrop: 5e8 * relative * relative * (metres / 10) * fluid.drop,
    gasVolume: (rated < 5 ? 0.95e-4 : 1.6e-4) * metres,
    liquidVolume: (rated < 5 ? 1.8e-5 : 5e-5) * metres,
    roomCapacity: 9e5 * rated,
    roomAir: 42 * rated,
  };
}

/** An outdoor module; `lift` = m that it lies above the branching point. */
export function moduleBranch(id: string, rated: number, lift: number, fluid: FluidFactors): BranchData {
  const flow = 0.1213 * rated;
  const relative = 22.4 / rated;
  return {
    id,
    coil: {
      role: 'evaporator',
      segments: 8,
      volume: 0.417e-3 * rated,
      diameter: 7.2e-3,
      circuits: Math.round(0.7 * rated),
      innerArea: 0.21 * rated,
      enhancement: 1.4,
      airUa: 215 * rated,
      airFlow: flow,
      airExponent: 0.5,
      wallCapacity: 2000 * rated,
      pressureDrop: 1.6e8 * relative * relative * fluid.drop,
    },
    fan: { flow, pressure: 40, flatness: 0.5, power: 19 * rated, filterShare: 0, drift: 0.08 },
    fanLow: 0.7,
    valve: { drier: 0, line: 0, lift, area: 3.4e-7 * rated * fluid.flow, throat: THROAT },
    ice: { full: 0.4 * rated, resistance: 4.5e-4 / rated, melt: 120 * rated },
    gasDrop: 0,
    gasVolume: 0,
    liquidVolume: 0,
  };
}

/** kg of R-410A that the installer's rule adds a metre of a unit's liquid pipe, and a kW of rated cooling of the units */
const UNIT_METRE = 0.022;
const UNIT_KILOWATT = 0.02;

/** The charge rule of a machine: `base` kg of its modules, and kg by metre and size of the liquid main. */
export function installOf(
  units: readonly UnitSize[],
  base: number,
  mainMetres: number,
  mainMetre: number,
  fluid: FluidFactors,
): InstallRecord {
  return {
    units: units.map(({ id, rated, metres, lift }) => ({ id, rated: 1000 * rated, metres, lift })),
    mainMetres,
    base,
    perWatt: UNIT_KILOWATT / 1000,
    perMainMetre: fluid.liquid * mainMetre,
    perUnitMetre: fluid.liquid * UNIT_METRE,
  };
}

/** kg by the rule. */
export function chargeByRule({ units, base, mainMetres, ...per }: InstallRecord): number {
  const rated = units.reduce((sum, each) => sum + each.rated, 0);
  const metres = units.reduce((sum, each) => sum + each.metres, 0);
  return base + per.perWatt * rated + per.perMainMetre * mainMetres + per.perUnitMetre * metres;
}
