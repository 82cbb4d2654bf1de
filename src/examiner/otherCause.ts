/**
 * The replay of a debrief: the very machine of the callout, in its weather, with another cause in it, and what the
 * trainee's readings would have been then.
 */
import type { CauseId, FaultFamily, Snapshot } from '../../physics/types';
import type { AttemptState, Saturation, World } from '../attempt';
import { machineNuisance } from '../attempt/seeds';
import { classOf, type Sense, senseOf, TOUCH } from '../instruments/looks';
import { channelValue } from '../instruments/places';
import { discrepancyOf } from './discrepancy';
import { driftOf } from './drift';
import { readQuanta, valueOfSum } from './explain/quanta';
import { faultKeys } from './nodes';
import { observationsOf, takeNotes } from './observe';
import { INPUTS, isTellingSum } from './quanta';
import { statesOf } from './source';
import type { Cause, Channel, Classed, JudgedState, Quantum, ReadRow, Trial, TrialOutcome } from './types';

/** Steps of the slider from nothing to the end of the useful range. */
const STEPS = 40;
/** Standard deviations within which two values count as alike. */
const ALIKE = 2;

/** The causes that the work order names, those with several targets once each, the healthy machine first. */
export function causesToTry({ site }: AttemptState): Cause[] {
  const { tally } = site.callout;
  const named = site.world.families.filter(({ id }) => (tally[id] ?? 0) > 0);
  const healthy: Cause = { cause: 'no-fault', key: '', from: 0, to: 0, step: 1, unit: 'share' };
  const { units = [] } = site.plant;
  return [healthy, ...named.flatMap((family) => keysOf(family, units))];
}

function keysOf(family: FaultFamily, units: readonly string[]): Cause[] {
  const { id, max, signed, unit } = family;
  const range = { cause: id as CauseId, from: signed ? -max : 0, to: max, step: max / STEPS, unit };
  return faultKeys(family, units).map((key) => ({ ...range, key }));
}

/** This callout's machine with one fault of this size. */
export function trialOf(state: AttemptState, key: string, severity: number): Trial {
  const { site } = state;
  const { plant, refrigerant, conditions, machineSeed } = site.callout;
  const faults = key === '' || severity === 0 ? {} : { [key]: severity };
  const setup = { plant, refrigerant, conditions, faults, nuisance: machineNuisance(machineSeed) };
  // As found always, for the picture; other states only where something was read in them.
  return { setup, states: [...new Set<JudgedState>(['running', ...readRows(state).map((row) => row.state)])] };
}

/** Runs it, or says in the physics' own terms why it does not run. */
export function runTrial({ setup, states }: Trial, world: World): TrialOutcome {
  const snapshots: Partial<Record<JudgedState, Snapshot>> = {};
  for (const state of states) {
    try {
      const machine = world.createMachine(setup);
      if (state === 'standing') {
        snapshots[state] = machine.snapshot(machine.start('standing'));
        continue;
      }
      const snapshot = machine.steady(state === 'full-speed' ? { fixedSpeed: true } : {});
      if (!snapshot.controller.startsWith('stopped')) snapshots[state] = snapshot;
      else if (state === 'running') return { as: 'stops', limit: snapshot.controller.replace('stopped-on-', '') };
    } catch (error) {
      if (!(error instanceof Error && 'code' in error)) throw error;
      // Only the state as found decides; another one is missing where the machine does not come to it.
      if (state === 'running') return refused(error as Error & { code: unknown; details?: { limit?: unknown } });
    }
  }
  return { as: 'runs', snapshots };
}

function refused({ code, details }: { code: unknown; details?: { limit?: unknown } }): TrialOutcome {
  if (code === 'protection') return { as: 'stops', limit: String(details?.limit) };
  return { as: 'unsolved', code: String(code) };
}

/** Everything that was read before the verdict and can be compared, each place once, sums first. */
export function readRows(state: AttemptState): ReadRow[] {
  const verdict = state.verdicts.at(-1);
  const notes = state.notes.slice(0, verdict?.notes ?? state.notes.length);
  const { site } = state;
  const observations = observationsOf(takeNotes(notes, { atmosphere: site.atmosphere, drift: driftOf(state) }));
  const numbers = readQuanta(state, statesOf(site.plant), observations).map(
    (each): ReadRow => ({ as: 'number', ...each }),
  );
  const looks = observations
    .filter((each): each is Classed => each.kind === 'classed')
    .map(
      ({ channel, state: judged, value, note }): ReadRow => ({
        as: 'look',
        state: judged,
        notes: [note],
        quantum: { channel },
        read: value,
      }),
    );
  return [...numbers, ...looks];
}

/** What the other machine shows in place of what was read; null where it has no such state. */
export function wouldRead(
  row: ReadRow,
  snapshots: Readonly<Partial<Record<JudgedState, Snapshot>>>,
  saturation: Saturation,
): number | null {
  const snapshot = snapshots[row.state];
  if (!snapshot) return null;
  const { quantum } = row;
  if (quantum.sum === undefined) return shownBy(snapshot, row, quantum);
  if (!isTellingSum(quantum.sum)) return null;
  const [a, b] = INPUTS[quantum.sum].map((channel) => channelValue(snapshot, channel));
  return valueOfSum(quantum.sum, a, b, saturation);
}

function shownBy(snapshot: Snapshot, row: ReadRow, { channel }: Extract<Quantum, { channel: unknown }>): number {
  const value = channelValue(snapshot, channel);
  return row.as === 'look' ? classOf(senseBehind(channel), value) : value;
}

/** The sense behind a look or a touch; what a hand felt stands under the pipe's temperature. */
export function senseBehind(channel: Channel): Sense {
  return senseOf(channel) ?? TOUCH;
}

/** How the other machine's value lies to what was read, beyond what instruments and model leave open. */
export function comparison(row: ReadRow, would: number): 'alike' | 'higher' | 'lower' {
  const off = would - row.read;
  if (row.as === 'look') return off === 0 ? 'alike' : off > 0 ? 'higher' : 'lower';
  const own = row.quantum.sum === undefined ? discrepancyOf(row.quantum.channel, would) : 0;
  if (Math.abs(off) <= ALIKE * Math.sqrt(row.error * row.error + own * own)) return 'alike';
  return off > 0 ? 'higher' : 'lower';
}
