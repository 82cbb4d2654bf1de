/**
 * The machine's own controller: what its sensors report and what it wants of valve and speed.
 * The same errors drive the steady state (as complementarity residuals) and the time step (as a velocity-form PI).
 */
import { PhysicsError } from '../errors';
import * as L from '../fluids/layout';
import { reading } from '../parts/thermistor';
import { lift } from '../parts/thermostaticValve';
import type { Circuit } from './circuit';

export interface Sensed {
  suctionLine: number;
  evaporatorCoil: number;
  dischargeLine: number;
}

/** True temperatures at the controller's refrigerant-side sensors, K. The coil sensor sits in the first eighth of the evaporator, where it stays wetted. */
export function sensorTruth(circuit: Circuit): Sensed {
  const { fluid, outlet, out, evaporator } = circuit;
  fluid.setPressure(circuit.pServiceSuction, outlet);
  fluid.state(outlet, circuit.hServiceSuction, out);
  return {
    suctionLine: out[L.OUT_T],
    evaporatorCoil: evaporator.temperature[0],
    dischargeLine: circuit.compressor.tDischarge,
  };
}

/**
 * What they feel, drift included: each pulled to the air round it as far as it has come out of its pocket. Pipe sensors sit
 * in the outdoor unit, the coil's sensor in the air that enters the coil.
 */
export function felt({ effective, indoorAir }: Circuit, outdoor: number, truth: Sensed): Sensed {
  const { drift, loose } = effective;
  return {
    suctionLine: truth.suctionLine + loose.suctionLine * (outdoor - truth.suctionLine) + drift.suctionLine,
    evaporatorCoil:
      truth.evaporatorCoil +
      loose.evaporatorCoil * (indoorAir.temperature - truth.evaporatorCoil) +
      drift.evaporatorCoil,
    dischargeLine: truth.dischargeLine + loose.dischargeLine * (outdoor - truth.dischargeLine) + drift.dischargeLine,
  };
}

/** What the controller takes them for, through plug and sleeve. */
export function reported(circuit: Circuit, outdoor: number, truth: Sensed): Sensed {
  const { sensorCircuit } = circuit.effective;
  const own = felt(circuit, outdoor, truth);
  return {
    suctionLine: reading(own.suctionLine, sensorCircuit.suctionLine),
    evaporatorCoil: reading(own.evaporatorCoil, sensorCircuit.evaporatorCoil),
    dischargeLine: reading(own.dischargeLine, sensorCircuit.dischargeLine),
  };
}

/** K of superheat above target as the controller sees it: positive asks for a wider valve. */
export function valveError(circuit: Circuit, seen: Sensed): number {
  return seen.suctionLine - seen.evaporatorCoil - circuit.data.control.superheatTarget;
}

/** K by which the coil is warmer than its target, capped by the step-down limits: positive asks for more speed. */
export function speedError(circuit: Circuit, seen: Sensed): number {
  const limits = circuit.data.limits;
  let error = seen.evaporatorCoil - circuit.data.control.coilTarget;
  const heat = (limits.slowDownTemp - seen.dischargeLine) * 0.5;
  if (heat < error) error = heat;
  const pressure = (limits.slowDownPressure - circuit.pDischarge) / 5e4;
  return pressure < error ? pressure : error;
}

/** K that the bulb of a thermostatic valve tends to: its pipe, or the air around its coil as far as it has come loose. */
export function bulbTruth(circuit: Circuit, pipe: number): number {
  return pipe + circuit.effective.bulbLoose * (circuit.evaporatorAir.temperature - pipe);
}

/** Opening that a thermostatic valve tends to: its lift within its stops. */
export function thermostaticOpening(circuit: Circuit, bulb: number, pEvaporatorOut: number): number {
  const { control, valve } = circuit.data;
  if (valve === undefined) throw new PhysicsError('bad-input', 'valve: a thermostatic machine needs its numbers');
  // a stiffer spring is a bulb that feels so much colder
  const felt = bulb - circuit.effective.superheatSet;
  const share = lift(circuit.fluid, valve, felt, circuit.effective.bulbLost, pEvaporatorOut);
  return share < control.minOpening ? control.minOpening : share > 1 ? 1 : share;
}
