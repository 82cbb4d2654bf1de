import type { DesignPoint, Effective, Nominal } from '../solve/effective';
import type { FaultFamily, SensorName, TransducerName } from '../types';

/** A fault: its scale (data for every layer) and what it changes in the machine. Severity 0 changes nothing at all. */
export interface Fault extends FaultFamily {
  /** of two metering stations it sits at the one that regulates in the mode that the machine is called to */
  readonly atValveInUse?: true;
  /**
   * @param severity in the family's unit, within [0, 1) for shares; validated before
   * @param design the healthy machine at its design point
   * @param target the sensor that drifts, where the family has targets
   */
  apply(
    machine: Effective,
    severity: number,
    design: DesignPoint,
    data: Nominal,
    target: SensorName | TransducerName | null,
  ): void;
}
