/**
 * Four-way valve that changes the coils' roles. Discharge and suction gas pass it side by side: each loses some pressure,
 * a little heat goes across, and a worn or stuck slide lets gas through from one to the other. The leak mixes in the valve's
 * body, so the pipe from it to the compressor warms while the pipe before it does not. Numbers are a machine's own.
 */
export interface ReversingValveData {
  /** Pa = drop · m² / rho, of the suction passage and of the discharge passage */
  readonly suctionDrop: number;
  readonly dischargeDrop: number;
  /** W/K from discharge gas to suction gas */
  readonly exchange: number;
}

/** Nominal heat capacity of the gas, J/(kg K). */
const GAS_CP = 1100;

/** W from discharge to suction gas: never more than the streams can carry. */
export function exchanged(valve: ReversingValveData, massFlow: number, difference: number): number {
  return (valve.exchange / (1 + valve.exchange / (massFlow * GAS_CP))) * difference;
}
