/** A network in its surroundings: branches with their air, tasks of the mode, control errors. */
import { dryDensity, density as moistDensity, pressureAtAltitude } from '../air/moistAir';
import type { FluidTable } from '../fluids/fluid';
import { exp, ln } from '../math/elementary';
import { AirStream, saturatedAt } from '../parts/airStream';
import { fanFlow } from '../parts/fan';
import { airLost, passageFilled, throughLayer } from '../parts/ice';
import type { Effective } from '../solve/effective';
import type { Conditions } from '../types';
import { Branch } from './branch';
import type { BranchData, NetworkData } from './data';
import { Drive, Network } from './network';

/** Density at which fan data are stated, kg/m3 of moist air. */
const DESIGN_DENSITY = 1.15;

export interface RoomAir {
  readonly temperature: number;
  readonly humidity: number;
}

/** What faults make of the machine with its outdoor modules, and of each unit. */
export interface NetworkEffective {
  readonly machine: Effective;
  readonly units: readonly Effective[];
}

export class NetworkRig {
  readonly network: Network;
  readonly drive = new Drive();
  readonly pressure: number;
  readonly standardPressure: number;
  /** kg of ice on every module */
  ice: readonly number[];

  constructor(
    readonly fluid: FluidTable,
    readonly data: NetworkData,
    readonly effective: NetworkEffective,
    readonly conditions: Conditions,
  ) {
    this.pressure = pressureAtAltitude(conditions.altitude);
    this.standardPressure = fluid.pDew(298.15);
    const saturated = saturatedAt(this.pressure);
    const branch = (each: BranchData, own: Effective): Branch => new Branch(each, own, new AirStream(saturated), fluid);
    this.network = new Network(
      fluid,
      data,
      effective.machine,
      data.modules.map((each) => branch(each, effective.machine)),
      data.units.map((each, i) => branch(each, effective.units[i])),
      this.standardPressure,
    );
    this.drive.outdoor = conditions.outdoor;
    this.ice = this.iceFound();
  }

  /** kg on every module as found: none but where a defrost has not come. */
  iceFound(): number[] {
    return this.data.modules.map(() => this.effective.machine.ice);
  }

  /** Humidity ratio of the rooms as found. */
  roomFound(): RoomAir {
    const { air } = this.network.units[0];
    air.setWetBulb(this.conditions.indoor, this.conditions.wetBulb);
    return { temperature: this.conditions.indoor, humidity: air.humidity };
  }

  /** Outdoor air of every module at this share of the fans' speed, through the ice that lies on it. */
  setOutdoorAir(share: number, running: boolean): void {
    const { conditions, network, ice } = this;
    network.modules.forEach((b, i) => {
      b.air.setState(conditions.outdoor, OUTDOOR_HUMIDITY * b.air.saturated.humidity(conditions.outdoor));
      const { effective, data } = b;
      const filled = data.ice ? passageFilled(data.ice, ice[i]) : 0;
      const kept = 1 - (filled > 0 ? airLost(filled, data.fan.flatness) : 0);
      const lost = 1 - (1 - effective.condenserLost) * kept;
      this.blow(b, effective.outdoorFanSpeed * share, 0, lost, effective.condenserAir, effective.condenserUa, running);
      if (data.ice && filled > 0) b.air.ua *= throughLayer(data.ice, filled, b.air.ua);
    });
  }

  /** Air of one unit's room through its coil. */
  setUnitAir(index: number, room: RoomAir, low: boolean, running: boolean): void {
    const b = this.network.units[index];
    const { effective } = b;
    b.air.setState(room.temperature, room.humidity);
    const step = low ? b.data.fanLow : 1;
    this.blow(
      b,
      effective.indoorFanSpeed * step,
      effective.filterLost,
      effective.evaporatorLost,
      effective.evaporatorAir,
      effective.evaporatorUa,
      running,
    );
  }

  private blow(
    b: Branch,
    speed: number,
    filterLost: number,
    coilLost: number,
    factor: number,
    ua: number,
    running: boolean,
  ): void {
    const { air, data } = b;
    const { temperature, humidity } = air;
    const relative = moistDensity(temperature, humidity, this.pressure) / DESIGN_DENSITY;
    b.fan = fanFlow(data.fan, speed, filterLost, coilLost, 0, factor, relative, running);
    air.massFlow = b.fan.flow * dryDensity(temperature, humidity, this.pressure);
    const share = air.massFlow / (data.coil.airFlow * DESIGN_DENSITY);
    air.ua = data.coil.airUa * ua * exp(data.coil.airExponent * ln(share > 1e-3 ? share : 1e-3));
  }
}

/** Relative humidity outdoors that frost and wet bulb at the rating points stand for (7/6 °C is 87 %, ISO 5151). */
const OUTDOOR_HUMIDITY = 0.85;
