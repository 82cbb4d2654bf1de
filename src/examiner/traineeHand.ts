/** The hand of a scripted trainee: it dispatches the same actions as a person at the bench. */
import type { CauseId } from '../../physics/types';
import type { Note } from '../attempt';
import { type Action, type AttemptState, apply, REMEDY_RULES, refusalOf, safetyStepsFor } from '../attempt';
import { USUAL_ROOT } from '../attempt/roots';
import { CATALOGUE } from '../instruments/catalogue';
import { DEAD_CHANNELS } from './candidates';
import { remedyFor } from './grade';
import { INPUTS, TELLING_SUMS, type TellingSum } from './quanta';
import type { Candidate, Channel, JudgedState } from './types';

export interface Habits {
  /** lets instrument and machine settle before noting; the hasty one waits half as long and looks no second time */
  readonly patient: boolean;
  /** what it takes a gauge's figure for */
  readonly gaugeAs: 'gauge' | 'absolute';
  /** whether superheat comes from the dew line and subcooling from the bubble line, or the other way round; left out = right */
  readonly lines?: 'right' | 'swapped';
}

const SETTLING = 600;
const MOST_TRIES = 8;

/** Places whose readings show without a hose that the machine is well again. */
const PROOF: readonly Channel[] = ['supplyAirTemp', 'suctionLineTemp', 'liquidLineTemp', 'condenserLeavingAirTemp'];

export class Hand {
  constructor(
    public state: AttemptState,
    readonly habits: Habits,
  ) {}

  act(action: Action): void {
    this.state = apply(this.state, action);
  }

  /** False where the bench refuses it. */
  try(action: Action): boolean {
    if (refusalOf(this.state, action)) return false;
    this.act(action);
    return true;
  }

  takeCare(): void {
    for (const step of safetyStepsFor(this.state)) this.act({ kind: 'safety', step, taken: true });
  }

  /** Takes a reading in its operating state; the number of the note, or null where it cannot be had. */
  read(candidate: Candidate): number | null {
    if (!this.into(candidate.state, candidate.channel)) return null;
    const { instrument, place, quantity, channel } = candidate;
    if (instrument === 'eyes') return this.try({ kind: 'look', place }) ? this.lastNote().index : null;
    const link = instrument === 'data-link' ? { channel } : {};
    const hasty = this.habits.patient ? {} : { dwell: Math.floor(CATALOGUE[instrument].dwell / 3) };
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      if (!this.try({ kind: 'read', instrument, place, quantity, ...link, ...hasty })) return null;
      const note = this.lastNote();
      const good = note.settled === 'settled' && (note.state === candidate.state || note.state === 'repaired');
      if (good || !this.habits.patient) return note.index;
      this.act({ kind: 'wait', seconds: 180 });
    }
    return null;
  }

  /** Works out every sum whose inputs were read under way, once. */
  workOut(): void {
    for (const sum of TELLING_SUMS) {
      if (this.state.sums.some((done) => done.sum === sum)) continue;
      const [a, b] = INPUTS[sum].map((channel) => this.noteOf(channel, 'running'));
      if (a && b) this.workOutSum(sum, a, b);
    }
  }

  private workOutSum(sum: TellingSum, a: Note, b: Note): void {
    const { saturation, atmosphere } = this.state.site;
    const notes = [a.index, b.index];
    if (sum === 'superheat' || sum === 'subcooling') {
      const pressure = a.value + (this.habits.gaugeAs === 'gauge' ? atmosphere : 0);
      const fromDew = (sum === 'superheat') === (this.habits.lines !== 'swapped');
      const line = fromDew ? saturation.tDew(pressure) : saturation.tBubble(pressure);
      if (line === null) return;
      const answer = sum === 'superheat' ? b.value - line : line - b.value;
      this.try({ kind: 'sum', sum, notes, saturation: line, answer });
      return;
    }
    const falls = sum === 'air-drop' || sum === 'line-difference';
    this.try({ kind: 'sum', sum, notes, answer: falls ? a.value - b.value : b.value - a.value });
  }

  /** The remedy that belongs to the cause, in all its steps. */
  mend(cause: CauseId): void {
    const remedy = remedyFor(cause);
    this.act({ kind: 'repair', remedy, steps: REMEDY_RULES[remedy].steps, root: USUAL_ROOT[cause] });
  }

  /** The proof that the machine is well. */
  verify(proof: readonly Candidate[]): void {
    this.act({ kind: 'wait', seconds: 1800 });
    const wanted = PROOF.flatMap((channel) => proof.find((each) => each.channel === channel) ?? []).slice(0, 3);
    const notes = wanted.flatMap((candidate) => this.read(candidate) ?? []);
    this.act({ kind: 'verified', notes });
  }

  /** Holds the valve at an opening and reads the pipe: proof that it does, or does not, answer. */
  driveValve(pipe: Candidate | undefined): void {
    if (!pipe || !this.try({ kind: 'control', change: { valveHold: 0.5 } })) return;
    this.act({ kind: 'wait', seconds: SETTLING });
    const { instrument, place, quantity } = pipe;
    this.try({ kind: 'read', instrument, place, quantity });
    this.act({ kind: 'control', change: { valveHold: null } });
  }

  /** Brings the machine into the state; waits where the trainee has the patience and the channel needs it. */
  private into(wanted: JudgedState, channel: Channel): boolean {
    const running = wanted !== 'standing';
    const fixedSpeed = wanted === 'full-speed';
    const { controls } = this.state;
    if (controls.running === running && controls.fixedSpeed === fixedSpeed) return true;
    const change = this.state.site.plant.variableSpeed ? { running, fixedSpeed } : { running };
    if (!this.try({ kind: 'control', change })) return false;
    if (this.habits.patient && !DEAD_CHANNELS.includes(channel)) {
      this.act({ kind: 'wait', seconds: running ? 2 * SETTLING : 3 * SETTLING });
    }
    return true;
  }

  noteOf(channel: Channel, state: JudgedState): Note | undefined {
    return this.state.notes.findLast((note) => !note.struck && note.channel === channel && note.state === state);
  }

  private lastNote(): Note {
    return this.state.notes[this.state.notes.length - 1];
  }
}
