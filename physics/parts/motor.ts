/**
 * Compressor motors: current from power, supply voltage and (single-phase) run capacitor.
 *
 * Permanent-split-capacitor motor, lumped: the active current carries the power, the reactive one is what magnetising
 * needs less what the run capacitor supplies; a weak capacitor unbalances the windings and adds losses and slip.
 * The shape is common practice, no source: half the capacitance gone costs about 25 % more current.
 * Inverter: rectified supply, power factor held; the clamp goes on the supply, not on the motor's leads.
 */
export interface MotorData {
  readonly kind: 'run-capacitor' | 'inverter';
  readonly voltage: number;
  readonly ratedPower: number;
  /** reactive current at rated voltage with a sound capacitor, A (run-capacitor) */
  readonly reactive: number;
  /** further reactive current with the whole capacitance gone, A */
  readonly uncompensated: number;
  readonly ratedSlip: number;
  /** F; null without a run capacitor */
  readonly capacitance: number | null;
  readonly powerFactor: number;
  readonly inverterEfficiency: number;
  /** supply phases; left out = one. `voltage` is between conductors */
  readonly phases?: 3;
}

const ROOT_THREE = 1.7320508075688772;

/** Extra losses (factor on power) of a motor whose capacitor has lost share `weak` (0…1). */
export function motorLossFactor(motor: MotorData, weak: number, voltage: number): number {
  if (motor.kind === 'inverter') return 1 / motor.inverterEfficiency;
  const sag = motor.voltage / voltage - 1;
  return 1 + 0.05 * weak + 0.1 * weak * weak + 0.15 * sag * sag;
}

/** Line current, A. */
export function motorCurrent(motor: MotorData, power: number, weak: number, voltage: number): number {
  const active = power / voltage;
  if (motor.kind === 'inverter') return active / (motor.powerFactor * (motor.phases === 3 ? ROOT_THREE : 1));
  const reactive = (motor.reactive + motor.uncompensated * weak) * (voltage / motor.voltage);
  return Math.sqrt(active * active + reactive * reactive);
}

/** Relative loss of speed per watt: slip grows with load, with a weak capacitor and with the square of low voltage. */
export function slipPerWatt(motor: MotorData, weak: number, voltage: number): number {
  if (motor.kind === 'inverter') return 0;
  const v = motor.voltage / voltage;
  return (motor.ratedSlip / motor.ratedPower) * v * v * (1 + 0.8 * weak);
}
