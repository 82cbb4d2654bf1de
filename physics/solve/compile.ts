/**
 * From a setup (plant, refrigerant, conditions, faults, nuisance) to a circuit with its air streams.
 */
import { dryDensity, density as moistDensity, pressureAtAltitude } from '../air/moistAir';
import { applyFaults } from '../faults';
import { type FluidTable, fluidTable } from '../fluids/fluid';
import * as layout from '../fluids/layout';
import { exp, ln } from '../math/elementary';
import { AirStream, saturatedAt } from '../parts/airStream';
import type { CoilData } from '../parts/coil';
import type { Correlations } from '../parts/correlations';
import { type FanResult, fanFlow } from '../parts/fan';
import { airLost, passageFilled, throughLayer } from '../parts/ice';
import { machineData, plantDescription } from '../plants';
import type { Conditions, Controls, MachineSetup, Nuisance, OperatingMode, PlantDescription } from '../types';
import { Circuit } from './circuit';
import { checkConditions } from './conditions';
import { type DesignPoint, type Effective, healthy, type MachineData } from './effective';
import { solveSteady } from './steady';
import { Surroundings } from './surroundings';

const { CP_L, CP_V } = layout;

/** Density at which fan data are stated, kg/m3 of moist air. */
const DESIGN_DENSITY = 1.15;
/** Relative humidity of outdoor air that only carries heat: its moisture hardly matters. */
const DRY_ENOUGH = 0.5;

export const NOMINAL: Nuisance = {
  charge: 1,
  condenserAir: 1,
  evaporatorAir: 1,
  condenserUa: 1,
  evaporatorUa: 1,
  displacement: 1,
  meteringArea: 1,
  voltage: 1,
};

const NO_AIR: FanResult = { flow: 0, power: 0, filterDrop: 0, coilDrop: 0, supplyPressure: 0, delivered: 0 };

/** K by which a loft under its roof is warmer than outdoors on a cooling day; its air is as moist as outdoors (ours, no source). */
const LOFT = 8;

/** A circuit in its surroundings: what steady solver, time step and snapshot share. */
export class Rig {
  readonly env = new Surroundings();
  readonly circuit: Circuit;
  readonly pressure: number;
  readonly standardPressure: number;
  /** the room's air, K and kg/kg: what the indoor unit takes in may differ */
  roomTemp = 300.5;
  roomHumidity = 0.0105;
  outdoorFan: FanResult = NO_AIR;
  indoorFan: FanResult = NO_AIR;
  /** kg of ice between the fins of a cooler, or of the outdoor coil of a machine that heats; what calls `setAir` sets it */
  ice = 0;
  /** share of the time that a cycling condenser fan runs */
  fanDuty = 1;

  constructor(
    readonly fluid: FluidTable,
    readonly data: MachineData,
    readonly effective: Effective,
    readonly conditions: Conditions,
    /** opening of the healthy valve at the design point: where the controller starts */
    readonly designOpening: number,
  ) {
    this.pressure = pressureAtAltitude(conditions.altitude);
    this.standardPressure = fluid.pDew(298.15);
    const saturated = saturatedAt(this.pressure);
    this.circuit = new Circuit(
      fluid,
      data,
      effective,
      new AirStream(saturated),
      new AirStream(saturated),
      this.standardPressure,
    );
    this.env.outdoor = conditions.outdoor;
  }

  /** Set both air streams for these controls and this room. */
  setAir(controls: Controls, roomTemp: number, roomHumidity: number): void {
    const { data, effective, conditions, circuit } = this;
    const outdoor = circuit.outdoorAir;
    const { outdoorHumidity = DRY_ENOUGH } = data;
    outdoor.setState(conditions.outdoor, outdoorHumidity * outdoor.saturated.humidity(conditions.outdoor));
    const outdoorDensity = moistDensity(conditions.outdoor, outdoor.humidity, this.pressure) / DESIGN_DENSITY;
    this.outdoorFan = this.outdoorFlow(controls.outdoorFanRunning, outdoorDensity);
    outdoor.massFlow = this.outdoorFan.flow * dryDensity(conditions.outdoor, outdoor.humidity, this.pressure);
    this.env.outdoorHumidity = outdoor.humidity;
    const coils = circuit.heating
      ? ({ outdoor: data.evaporator, indoor: data.condenser } as const)
      : ({ outdoor: data.condenser, indoor: data.evaporator } as const);
    outdoor.ua = conductance(coils.outdoor, outdoor.massFlow, effective.condenserUa);
    if (data.outdoorIce) {
      outdoor.ua *= throughLayer(data.outdoorIce, passageFilled(data.outdoorIce, this.ice), outdoor.ua);
    }
    if (this.fanDuty < 1 && controls.outdoorFanRunning) this.blendFan(outdoorDensity);

    const indoor = circuit.indoorAir;
    const loft = effective.returnLeak;
    const intakeTemp = roomTemp + loft * (conditions.outdoor + LOFT - roomTemp);
    const intakeHumidity = roomHumidity + loft * (outdoor.humidity - roomHumidity);
    this.roomTemp = roomTemp;
    this.roomHumidity = roomHumidity;
    indoor.setState(intakeTemp, intakeHumidity);
    const indoorDensity = moistDensity(intakeTemp, intakeHumidity, this.pressure) / DESIGN_DENSITY;
    const step = controls.indoorFan === 'low' ? data.indoorFanLow : 1;
    const filled = data.ice ? passageFilled(data.ice, this.ice) : 0;
    const coilLost =
      filled > 0
        ? inSeries(effective.evaporatorLost, airLost(filled, data.indoorFan.flatness))
        : effective.evaporatorLost;
    this.indoorFan = fanFlow(
      data.indoorFan,
      effective.indoorFanSpeed * step,
      effective.filterLost,
      coilLost,
      effective.supplyLeak,
      effective.evaporatorAir,
      indoorDensity,
      controls.indoorFanRunning,
    );
    indoor.massFlow = this.indoorFan.flow * dryDensity(intakeTemp, intakeHumidity, this.pressure);
    indoor.ua = conductance(coils.indoor, indoor.massFlow, effective.evaporatorUa);
    if (data.ice && filled > 0) indoor.ua *= throughLayer(data.ice, filled, indoor.ua);
  }

  private outdoorFlow(running: boolean, density: number): FanResult {
    const { data, effective } = this;
    const filled = data.outdoorIce ? passageFilled(data.outdoorIce, this.ice) : 0;
    const lost =
      filled > 0
        ? inSeries(effective.condenserLost, airLost(filled, data.outdoorFan.flatness))
        : effective.condenserLost;
    return fanFlow(data.outdoorFan, effective.outdoorFanSpeed, 0, lost, 0, effective.condenserAir, density, running);
  }

  /** A fan that runs `fanDuty` of the time: flow, conductance and power on the mean over on and off. */
  private blendFan(density: number): void {
    const { data, effective, circuit, fanDuty } = this;
    const outdoor = circuit.outdoorAir;
    const off = this.outdoorFlow(false, density);
    const flowOff = (off.flow / this.outdoorFan.flow) * outdoor.massFlow;
    const uaOff = conductance(data.condenser, flowOff, effective.condenserUa);
    const mean = (on: number, without: number): number => fanDuty * on + (1 - fanDuty) * without;
    outdoor.massFlow = mean(outdoor.massFlow, flowOff);
    outdoor.ua = mean(outdoor.ua, uaOff);
    this.outdoorFan = {
      ...this.outdoorFan,
      flow: mean(this.outdoorFan.flow, off.flow),
      power: mean(this.outdoorFan.power, off.power),
    };
  }

  /**
   * What the room itself loses, W sensible and kg/s of water, while the coil takes `heat` (W in all) and `water` out of its
   * air: less what the loft brings in, and only the share that comes out of the grilles.
   */
  roomLoss(heat: number, water: number): { sensible: number; water: number } {
    const { massFlow, cp, temperature, humidity } = this.circuit.indoorAir;
    const arrives = 1 - this.effective.supplyLeak;
    const sensible = heat - water * WATER - this.indoorFan.power - massFlow * cp * (temperature - this.roomTemp);
    return { sensible: arrives * sensible, water: arrives * (water - massFlow * (humidity - this.roomHumidity)) };
  }
}

/** Share of clean flow that dirt and ice take away together, each given by what it takes alone. */
function inSeries(dirt: number, ice: number): number {
  const left = (lost: number): number => 1 / ((1 - lost) * (1 - lost));
  return 1 - 1 / Math.sqrt(left(dirt) + left(ice) - 1);
}

/** Heat of evaporation of water at 0 °C, J/kg (ASHRAE Fundamentals). */
const WATER = 2.501e6;

function conductance(
  coil: { airUa: number; airFlow: number; airExponent: number },
  massFlow: number,
  factor: number,
): number {
  const relative = massFlow / (coil.airFlow * DESIGN_DENSITY);
  return coil.airUa * factor * exp(coil.airExponent * ln(relative > 1e-3 ? relative : 1e-3));
}

export const RUNNING: Controls = {
  running: true,
  setPoint: 295.15,
  indoorFan: 'high',
  outdoorFanRunning: true,
  indoorFanRunning: true,
  fixedSpeed: false,
  valveHold: null,
};

/** A running machine whose thermostat is set as this plant's usually is. */
export function runningControls(plant: PlantDescription): Controls {
  return plant.setPoint ? { ...RUNNING, setPoint: plant.setPoint.found } : RUNNING;
}

const designs = new Map<string, { point: DesignPoint; x: Float64Array }>();

/** The healthy machine at its design point, free-running; computed once per variant. */
export function designPoint(
  plant: MachineSetup['plant'],
  refrigerant: MachineSetup['refrigerant'],
  mode: OperatingMode,
  correlations?: Correlations,
): { point: DesignPoint; x: Float64Array } {
  const key = `${plant}/${refrigerant}/${mode}/${correlations ?? 'own'}`;
  const known = designs.get(key);
  if (known) return known;
  const description = plantDescription(plant, mode, refrigerant);
  const conditions = description.modes[mode] ?? description.designConditions;
  const data = following(machineData(plant, refrigerant, mode), correlations);
  const rig = new Rig(fluidTable(refrigerant), data, healthy(data), conditions, 1);
  const { indoor, wetBulb } = conditions;
  rig.circuit.indoorAir.setWetBulb(indoor, wetBulb);
  rig.setAir(RUNNING, indoor, rig.circuit.indoorAir.humidity);
  const regulated = data.control.metering !== 'fixed';
  const solution = solveSteady(
    rig.circuit,
    rig.env,
    { opening: regulated ? null : 1, speed: data.control.variableSpeed ? null : 1 },
    null,
  );
  const c = rig.circuit;
  const design = {
    point: {
      massFlow: c.massFlow,
      dischargeFlow: c.compressor.cylinderFlow,
      liquidFlow: c.massFlow,
      pHigh: c.pLiquid,
      pLow: c.pEvaporatorIn,
      pDischarge: c.pDischarge,
      pSuction: c.pSuction,
      rhoDischarge: c.compressor.rhoDischarge,
      rhoLiquid: c.path.rhoIn,
      rhoSuction: c.rhoSuction,
      carried: {
        tLiquid: c.tLiquidPort,
        cpLiquid: c.port[CP_L],
        tEvaporatorOut: c.tEvaporatorOut,
        cpVapour: c.outlet[CP_V],
        outdoor: description.designConditions.outdoor,
      },
      opening: rig.env.opening,
    },
    x: solution.x,
  };
  designs.set(key, design);
  return design;
}

function coolingPoint({ plant, refrigerant, correlations }: MachineSetup): DesignPoint {
  return designPoint(plant, refrigerant, 'cooling', correlations).point;
}

/** Compile a setup. Throws `bad-input` for unknown plants, refrigerants, faults or impossible conditions. */
export function compile(setup: MachineSetup): Rig {
  return compileFor(setup, setup.conditions.mode, false);
}

/**
 * The same machine in a mode that need not be the one it was called to.
 * @param slideMoved the slide of a reversing valve that had stopped half way has moved home since
 */
export function compileFor(setup: MachineSetup, mode: OperatingMode, slideMoved: boolean): Rig {
  const data = following(machineData(setup.plant, setup.refrigerant, mode), setup.correlations);
  checkConditions(plantDescription(setup.plant), setup.conditions);
  const effective = healthy(data);
  const nuisance = { ...NOMINAL, ...setup.nuisance };
  effective.charge *= nuisance.charge;
  effective.condenserAir *= nuisance.condenserAir;
  effective.evaporatorAir *= nuisance.evaporatorAir;
  effective.condenserUa *= nuisance.condenserUa;
  effective.evaporatorUa *= nuisance.evaporatorUa;
  effective.displacement *= nuisance.displacement;
  effective.metering *= nuisance.meteringArea;
  effective.voltage *= nuisance.voltage;
  const own = designPoint(setup.plant, setup.refrigerant, mode, setup.correlations).point;
  const design = data.mode === 'heating' ? { ...own, cooling: coolingPoint(setup) } : own;
  const { 'reversing-valve-half-shifted': _home, ...others } = setup.faults;
  const faults = slideMoved ? others : setup.faults;
  applyFaults(setup.plant, setup.refrigerant, faults, effective, design, data, mode === setup.conditions.mode);
  if (data.outdoorIce && !freezes(setup.conditions)) effective.ice = 0;
  return new Rig(fluidTable(setup.refrigerant), data, effective, setup.conditions, design.opening);
}

/** The same machine with coils that follow these correlations. */
function following(data: MachineData, correlations: Correlations = 'own'): MachineData {
  if (correlations === 'own') return data;
  const coil = (each: CoilData): CoilData => ({ ...each, correlations });
  return { ...data, condenser: coil(data.condenser), evaporator: coil(data.evaporator) };
}

/** Ice on an outdoor coil that evaporates keeps up to about this outdoor temperature, K (from memory). */
const THAWS = 283.15;

function freezes({ mode, outdoor }: Conditions): boolean {
  return mode === 'heating' && outdoor < THAWS;
}
