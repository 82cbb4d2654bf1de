/**
 * One callout at work, as the panels see it. The app makes it; panels read its signals and dispatch actions, and never
 * change anything themselves. What is `Signal` here is of the moment (which sheet lies open, what is in the hand): it
 * is not part of the attempt.
 */
import type { ReadonlySignal, Signal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { CauseId, PlantDescription, Snapshot } from '../../physics/types';
import type {
  Action,
  AttemptState,
  Expectation,
  ProcedureStep,
  RemedyId,
  RootCause,
  SizeWord,
  SumKind,
} from '../attempt';
import type { SaveState } from '../attempt/autosave';
import type { Callout, Pack } from '../attempt/pack/types';
import type { TellingSum } from '../examiner/quanta';
import type { TrialAnswer } from '../examiner/trials';
import type { Channel, Debrief, Grade } from '../examiner/types';
import type { InstrumentId } from '../instruments/types';
import type { Advice } from './advice';
import type { ReadingOption } from './place/options';

export const SHEETS = ['job', 'notebook', 'stakes', 'machine', 'finish'] as const;
export type SheetId = (typeof SHEETS)[number];

/** The judgement of a finished attempt, made in a worker. */
export type Judgement =
  | { readonly as: 'none' }
  | { readonly as: 'working'; readonly done: number; readonly total: number }
  | { readonly as: 'ready'; readonly grade: Grade; readonly debrief: Debrief }
  | { readonly as: 'failed'; readonly reason: string };

/** Another cause tried in the callout's machine; `outcome` is null while it is worked out, `before` what stood there. */
export interface Tried {
  /** fault key; '' = no fault */
  readonly key: string;
  readonly severity: number;
  readonly outcome: TrialAnswer | null;
  readonly before: TrialAnswer | null;
}

/** Half-made choices: kept on the device like the attempt, but no part of it until they are declared. */
export interface Drafts {
  /** chips on causes; what is left of twenty lies on "not sure yet". Null = as last declared. */
  readonly chips: Readonly<Partial<Record<CauseId, number>>> | null;
  readonly sum: {
    readonly kind: SumKind;
    readonly notes: readonly (number | null)[];
    readonly saturation: string;
    readonly answer: string;
  } | null;
  readonly verdict: {
    readonly cause?: CauseId;
    readonly rival?: CauseId;
    readonly size?: SizeWord;
    readonly cites?: readonly number[];
    /** a second verdict is being given (two faults: mend one, read again) */
    readonly again?: boolean;
  };
  readonly repair: {
    readonly remedy?: RemedyId;
    readonly steps: readonly ProcedureStep[];
    readonly root?: RootCause | undefined;
  };
  /** notes picked as proof of the repair */
  readonly proof: readonly number[];
  readonly guide: { readonly twinSeen: boolean; readonly prediction: Prediction | null };
}

/** What a person expects of the next reading against the healthy twin's; never scored. */
export type Prediction = 'lower' | 'same' | 'higher';

/** One sum that the score of a guided callout asks for, and the readings it is made of. */
export interface Lesson {
  readonly sum: TellingSum;
  readonly readings: readonly { readonly instrument: InstrumentId; readonly place: string }[];
}

/** Minutes that are being played: from and to which simulated second, and the one that is shown. */
export interface Passing {
  readonly from: number;
  readonly to: number;
  readonly now: number;
}

/** What a person had in mind, beside what the machine does. */
export interface Head {
  readonly chalks: readonly {
    readonly note: number;
    readonly cause: CauseId;
    readonly expect: Expectation;
    readonly does: Expectation | null;
    readonly was: Expectation | null;
  }[];
  readonly because: {
    readonly shows: number;
    readonly rulesOut: number;
    readonly cause: CauseId;
    readonly rival: CauseId;
    readonly showsBits: number | null;
    readonly rulesOutBits: number | null;
  } | null;
  readonly reflection: {
    readonly cause: CauseId;
    readonly rival: CauseId;
    readonly sorted: readonly {
      readonly note: number;
      readonly side: 'verdict' | 'rival';
      readonly bits: number | null;
    }[];
    readonly missing: { readonly channel: Channel; readonly bits: number } | null;
    readonly best: Channel | null;
  } | null;
}

export interface Session {
  readonly pack: Pack;
  readonly callout: Callout;
  readonly plant: PlantDescription;
  readonly state: ReadonlySignal<AttemptState>;
  /** the simulated second that is shown; behind that of `state` only while time that passed is being played */
  readonly clock: ReadonlySignal<number>;
  readonly passing: ReadonlySignal<Passing | null>;
  /** the machine at the second that is shown */
  readonly snapshot: ReadonlySignal<Snapshot>;
  /** the drawing in plain sentences, in the order of the refrigerant */
  readonly inWords: ReadonlySignal<readonly string[]>;
  /** why the model cannot go on from here, or null */
  readonly stuck: ReadonlySignal<string | null>;
  /** the same acts on the healthy machine; only while the callout is guided */
  readonly twin: ReadonlySignal<AttemptState | null>;
  /** what the guide teaches; null while it is being worked out, and where nothing is guided */
  readonly lessons: ReadonlySignal<readonly Lesson[] | null>;
  readonly judgement: ReadonlySignal<Judgement>;
  /** what the examiner says while the job is open */
  readonly advice: ReadonlySignal<Advice>;
  /** the cause that is tried in the debrief; null before the first */
  readonly tried: ReadonlySignal<Tried | null>;

  /** a person predicts before each measured reading */
  readonly chalk: Signal<boolean>;
  /** what settles while a prediction is awaited */
  readonly chalking: Signal<ReadingOption | null>;
  /** predictions and reasons beside what the examiner makes of them; null while it is worked out */
  readonly head: ReadonlySignal<Head | null>;
  /** every third job on this device is looked back on before it is closed */
  readonly looksBack: ReadonlySignal<boolean>;

  readonly sheet: Signal<SheetId | null>;
  /** place under the hand, and whether its sheet of instruments lies open */
  readonly place: Signal<string | null>;
  readonly placeOpen: Signal<boolean>;
  /** instrument and quantity in the hand: the next place that it fits is one tap */
  readonly held: Signal<ReadingOption | null>;
  /** a person asked to see what runs inside the pipes; never in an exam */
  readonly inside: Signal<boolean>;
  /** it is shown: asked for, or the job is closed and nothing is given away any more */
  readonly seesInside: ReadonlySignal<boolean>;
  readonly drafts: Signal<Drafts>;
  /** what the polite live region says; at most one text an act */
  readonly said: Signal<string>;
  /** whether the device keeps the attempt, and if not, why */
  readonly kept: ReadonlySignal<SaveState>;
  /** what a person must know of how the attempt was found on the device; null = nothing */
  readonly found: string | null;

  /** Applies and keeps one action. False when it was refused; the reason is then in `said`. */
  dispatch(action: Action): boolean;
  /** Ends the playing of time that passed. */
  arrive(): void;
  /** What fits this place, in the order of the digits that take it. */
  optionsAt(place: string): readonly ReadingOption[];
  take(option: ReadingOption): void;
  /** Takes what settles, with a prediction or without. */
  chalked(expect: Expectation | null): void;
  /** Opens the next step of the hints, or says why not. */
  askHint(): boolean;
  /** Asks once more for a hint that could not be worked out. */
  againHint(action: number): void;
  /** Has the machine computed anew with one fault of this size. */
  tryCause(key: string, severity: number): void;
  /** Asks the examiner once more, after it failed. */
  judge(): void;
  /** The attempt as a code that can be pasted elsewhere; null when it has grown too long for one. */
  code(): string | null;
  attemptFile(): string;
  close(): void;
}

export const SessionContext = createContext<Session | null>(null);

export function useSession(): Session {
  const session = useContext(SessionContext);
  if (!session) throw new Error('a panel is drawn outside <SessionContext.Provider>');
  return session;
}
