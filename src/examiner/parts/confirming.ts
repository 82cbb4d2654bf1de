/**
 * The act that proves a cause, beyond belief from readings; one of them is asked for where it is safe. Common
 * practice, no source: charge is proven by weighing, dirt and fans by looking, a valve by driving it, a sensor by a
 * second thermometer on the same pipe.
 */
import { type CauseId, unitOf } from '../../../physics/types';
import type { ProcedureStep } from '../../attempt';
import { familyOf } from '../../attempt/remedies';
import type { Case } from '../case';
import type { Taken } from '../observe';
import type { Channel } from '../types';

export type Proof =
  /** read (settled, rightly used) in any judged state; every one of the channels */
  | { readonly read: readonly Channel[] }
  /** the same pressure after a long stop */
  | { readonly standing: readonly Channel[] }
  /** done in the repair */
  | { readonly steps: readonly ProcedureStep[] }
  /** the valve held at an opening, or single rooms asked otherwise, and something read after it */
  | { readonly drive: 'valveHold' | 'units' };

/** null: no safe act proves it on site. */
export const PROOFS: Readonly<Record<CauseId, readonly Proof[] | null>> = {
  undercharge: [{ steps: ['recover', 'weigh-in'] }],
  'line-charge-not-added': [{ read: ['look:lineCharged'] }],
  'lines-too-long': [{ read: ['look:linesPlanned'] }],
  overcharge: [{ steps: ['recover'] }],
  'non-condensable': [{ standing: ['liquidPressure'] }, { standing: ['suctionPressure'] }],
  'drier-restriction': [
    { read: ['liquidLineTemp', 'liquidLineTempAfterDrier'] },
    { read: ['liquidPressure', 'liquidPressureAfterDrier'] },
  ],
  'liquid-line-kink': [{ read: ['look:liquidLineKink'] }, { read: ['liquidLineTempAfterDrier', 'meteringInletTemp'] }],
  'liquid-line-heated': [{ read: ['liquidLineTempAfterDrier', 'meteringInletTemp'] }],
  'suction-line-uninsulated': [{ read: ['evaporatorOutletTemp', 'suctionLineTemp'] }],
  'service-valve-throttled': [{ read: ['look:suctionValveOpen'] }],
  'condenser-dirty': [{ read: ['look:condenserDirt'] }],
  'condenser-fan-slow': [{ read: ['look:condenserFanSpeed'] }],
  'air-recirculation': [
    { read: ['outdoorAirTemp', 'condenserEnteringAirTemp'] },
    { read: ['outdoorAirTemp', 'outdoorEnteringAirTemp'] },
  ],
  'filter-dirty': [{ read: ['look:filterDust'] }, { read: ['filterPressureDrop'] }],
  'evaporator-dirty': [{ read: ['look:evaporatorDirt'] }, { read: ['coilPressureDrop'] }],
  'evaporator-fan-slow': [{ read: ['look:evaporatorFanSpeed'] }],
  'duct-leak': [{ read: ['supplyDuctPressure'] }],
  'return-duct-leak': [{ read: ['returnAirTemp', 'coilEnteringAirTemp'] }],
  'compressor-leak-by': null,
  'compressor-worn': null,
  'orifice-oversize': null,
  'orifice-undersize': null,
  'metering-valve-stuck-closing': [{ drive: 'valveHold' }],
  'metering-valve-stuck-opening': [{ drive: 'valveHold' }],
  'metering-valve-coil-unplugged': [{ read: ['valveCoilResistance'] }],
  'bulb-charge-lost': null,
  'bulb-loose': [{ read: ['look:bulbContact'] }],
  'metering-valve-superheat-set': null,
  'solenoid-stuck-open': null,
  'solenoid-stuck-closed': [{ read: ['liquidLineTempAfterDrier', 'meteringInletTemp'] }],
  'fan-cycling-control-failed': null,
  'defrost-not-starting': [{ read: ['look:evaporatorIce', 'defrostHeaterResistance'] }, { read: ['look:outdoorIce'] }],
  'defrost-not-ending': [{ read: ['look:outdoorSensorContact'] }],
  'defrost-heater-dead': [{ read: ['defrostHeaterResistance'] }],
  'capacitor-weak': [{ read: ['compressorCapacitance'] }],
  'fan-capacitor-weak': [{ read: ['fanCapacitance'] }],
  'supply-voltage-low': [{ read: ['supplyVoltage'] }],
  'contactor-burnt': [{ read: ['contactorDrop'] }],
  'phase-lost': [{ read: ['supplyVoltage'] }],
  'thermistor-drift': [
    { read: ['suctionLineTemp', 'sensor:suctionLine'] },
    { read: ['dischargeLineTemp', 'sensor:dischargeLine'] },
    { read: ['outdoorAirTemp', 'sensor:outdoorAir'] },
    { read: ['returnAirTemp', 'sensor:returnAir'] },
    { read: ['evaporatorOutletTemp', 'sensor:evaporatorCoil'] },
    { read: ['evaporatorOutletTemp', 'sensor:suctionLine'] },
    { read: ['liquidLineTemp', 'sensor:evaporatorCoil'] },
  ],
  'thermistor-out-of-its-pocket': [{ read: ['look:suctionSensorContact'] }, { read: ['look:coilSensorContact'] }],
  'thermistor-open': [{ read: ['suctionSensorResistance'] }, { read: ['coilSensorResistance'] }],
  'thermistor-shorted': [{ read: ['suctionSensorResistance'] }, { read: ['coilSensorResistance'] }],
  'pressure-transducer-offset': [
    { read: ['suctionPressure', 'sensor:suctionPressure'] },
    { read: ['dischargePressure', 'sensor:dischargePressure'] },
  ],
  'thermostat-misplaced': [{ read: ['returnAirTemp', 'thermostatAirTemp'] }],
  'drain-blocked': [{ read: ['look:condensatePan'] }],
  'check-valve-leaking': null,
  'reversing-valve-leak': [{ read: ['reversingValveSuctionInTemp', 'compressorSuctionTemp'] }],
  'reversing-valve-half-shifted': [{ read: ['reversingValveSuctionInTemp', 'compressorSuctionTemp'] }],
  'changeover-ports-crossed': [{ drive: 'units' }],
  'unit-address-crossed': [{ drive: 'units' }],
  'module-valve-shut': [{ read: ['condenserLeavingAirTemp@module2'] }],
  'metering-valve-not-closing': [{ drive: 'units' }],
  'communication-lost': [{ read: ['busVoltage'] }],
  'unit-capacity-set-wrong': [{ drive: 'valveHold' }],
  'no-fault': null,
};

/** What was done for a proof: the notes, as the examiner takes them, with their numbers. */
export interface Shown {
  readonly taken: readonly Taken[];
  readonly notes: readonly number[];
}

/** The notes before the verdict. */
export function shownAtVerdict({ plain, judgedNotes }: Case): Shown {
  return { taken: plain.taken, notes: Array.from({ length: judgedNotes }, (_, index) => index) };
}

export function confirmation(
  one: Case,
  cause: CauseId,
  shown: Shown = shownAtVerdict(one),
): 'done' | 'missing' | 'none-needed' {
  const possible = possibleProofs(one, cause);
  if (possible.length === 0) return 'none-needed';
  const branches = branchesOf(one, cause);
  return possible.some((proof) => isDone(one, proof, shown, branches)) ? 'done' : 'missing';
}

/** Whether a reading could be the proof; charge is proven only in the repair, by weighing. */
export function provenByReading(one: Case, cause: CauseId): boolean {
  return possibleProofs(one, cause).some((proof) => !('steps' in proof));
}

function possibleProofs(one: Case, cause: CauseId): readonly Proof[] {
  const branches = branchesOf(one, cause);
  return (PROOFS[cause] ?? []).filter((proof) => canBeDone(one, proof, branches));
}

/**
 * Where a proof by reading has to be read: on the machine itself (null), in the units that have the fault, or in any unit
 * or module where the cause named is not what is wrong.
 */
function branchesOf({ state, bench }: Case, cause: CauseId): readonly (string | null)[] {
  const faulty = Object.keys(state.site.callout.faults).filter((key) => familyOf(key) === cause);
  const named = faulty.flatMap((key) => unitOf(key) ?? []);
  if (named.length > 0) return named;
  return [null, ...new Set(bench.plant.places.flatMap(({ id }) => unitOf(id) ?? []))];
}

const inBranch = (channel: Channel, branch: string | null): Channel =>
  branch === null ? channel : (`${channel}@${branch}` as Channel);

function canBeDone({ candidates, bench }: Case, proof: Proof, branches: readonly (string | null)[]): boolean {
  const readable = (channel: Channel) => candidates.some((each) => each.channel === channel);
  const readableIn = (branch: string | null) =>
    'read' in proof && proof.read.every((channel) => readable(inBranch(channel, branch)));
  if ('read' in proof) return branches.some(readableIn);
  if ('standing' in proof) return proof.standing.every(readable);
  if ('steps' in proof) return true;
  return proof.drive === 'units' ? bench.plant.units !== undefined : bench.plant.metering === 'electronic-valve';
}

function isDone({ state }: Case, proof: Proof, { taken, notes }: Shown, branches: readonly (string | null)[]): boolean {
  const good = taken.flatMap((each) => ('observation' in each ? [each.observation] : []));
  const isRead = (channel: Channel) => good.some((each) => each.channel === channel);
  if ('read' in proof) {
    return branches.some((branch) => proof.read.every((channel) => isRead(inBranch(channel, branch))));
  }
  if ('standing' in proof) {
    return good.some((each) => each.state === 'standing' && proof.standing.includes(each.channel));
  }
  if ('steps' in proof) {
    return state.repairs.some(({ steps }) => proof.steps.every((step) => steps.includes(step)));
  }
  const driven = state.attempt.actions.findIndex(
    ({ action }) =>
      action.kind === 'control' &&
      typeof action.change[proof.drive] === (proof.drive === 'units' ? 'object' : 'number'),
  );
  const after = (index: number) => !state.notes[index].struck && state.notes[index].action > driven;
  return driven >= 0 && notes.some(after);
}
