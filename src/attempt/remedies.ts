/** What each remedy does to the machine, and what workmanship it asks for. */
import type { ProcedureStep } from './types';

/** How the chosen steps compare with those that the work needs. */
export interface Procedure {
  readonly needed: readonly ProcedureStep[];
  readonly missing: readonly ProcedureStep[];
  readonly outOfOrder: readonly ProcedureStep[];
  readonly needless: readonly ProcedureStep[];
  /** 0…1 */
  readonly share: number;
}
