/** The one place where a callout's actions are applied, kept and announced. */
import { batch, computed, effect, signal } from '@preact/signals';
import {
  type Action,
  ActionRefused,
  type AttemptState,
  apply,
  currentChips,
  nextHint,
  snapshotAt,
} from '../../attempt';
import type { SaveState } from '../../attempt/autosave';
import { AttemptCodeError, encode, toFile } from '../../attempt/codes';
import type { Callout, Pack } from '../../attempt/pack/types';
import { describeBench, sentenceText } from '../../bench';
import { hintText } from '../../panels/hints/hintText';
import { optionsAt, type ReadingOption, readingAction } from '../../panels/place/options';
import type { Drafts, Lesson, Session, SheetId } from '../../panels/session';
import { ranking } from '../../panels/stakes/chips';
import { chalk, reducedMotion, text } from '../preferences';
import { attemptId, finishedBeside } from '../saved';
import { createAdvising } from './advising';
import { announce } from './announce';
import { loadDrafts, storeDrafts } from './drafts';
import type { Examining } from './examining';
import { asksChalk, createHead } from './head';
import { createLapse } from './lapse';
import { lessonsOf } from './lessons';
import { createTrying } from './trying';
import { followTwin } from './twin';

/** Every so manyth job is looked back on. */
const LOOK_BACK = 3;

export interface Opening {
  readonly pack: Pack;
  readonly callout: Callout;
  readonly state: AttemptState;
  readonly twin: AttemptState | null;
  /** keeps one action on the device, and says whether it is kept now */
  readonly keep: (state: AttemptState) => Promise<SaveState>;
  readonly examining: Examining;
  readonly found: string | null;
  readonly onClose: () => void;
}

export function createSession(opening: Opening): Session {
  const { pack, callout } = opening;
  const state = signal(opening.state);
  const twin = signal(opening.twin);
  const sheet = signal<SheetId | null>(null);
  const place = signal<string | null>(null);
  const placeOpen = signal(false);
  const held = signal<ReadingOption | null>(null);
  // Who learns and practises sees into the pipes (readings still have to be taken); an exam shows what a site would show.
  const inside = signal(callout.mode !== 'exam');
  const chalking = signal<ReadingOption | null>(null);
  const said = signal('');
  const kept = signal<SaveState>('saved');
  const draftsOf = attemptId(opening.state.attempt);
  const drafts = signal<Drafts>(loadDrafts(draftsOf));
  const { plant } = opening.state.site;

  const stopStoring = effect(() => storeDrafts(draftsOf, drafts.value));
  const stopChalking = effect(() => {
    if (!placeOpen.value) chalking.value = null;
  });
  const looksBack = signal(false);
  void finishedBeside(draftsOf).then((count) => {
    looksBack.value = count % LOOK_BACK === LOOK_BACK - 1;
  });
  const head = createHead(state, opening.examining.expectations);
  const stopExamining = effect(() => {
    if (state.value.verification) {
      opening.examining.judge(state.value);
      const closed = state.value;
      void import('../practice/returns').then(({ keepReturn }) => keepReturn(closed));
    } else if (state.value.verdicts.length > 0) opening.examining.prepare();
  });

  const advising = createAdvising(pack, state, opening.examining.expectations, (shown) => {
    if (shown.as === 'ready') said.value = hintText(text.value, shown.hint, state.peek().site.atmosphere).join(' ');
  });

  const lessons = signal<readonly Lesson[] | null>(null);
  if (callout.mode === 'guided') {
    void opening.examining.expectations().then(
      (packed) => {
        lessons.value = lessonsOf(opening.state, packed);
      },
      // The guide goes on without the sums; the debrief says what ails the examiner.
      () => {},
    );
  }

  const trying = createTrying(state);
  const lapse = createLapse(reducedMotion);
  const clock = computed(() => lapse.passing.value?.now ?? state.value.clock);
  const snapshot = computed(() => snapshotAt(state.value, clock.value));
  const seesInside = computed(() => inside.value || state.value.verification !== null);

  function dispatch(action: Action): boolean {
    // Who acts while time is played goes on from where the clock stands.
    lapse.arrive();
    let next: AttemptState;
    try {
      next = apply(state.value, action);
    } catch (error) {
      if (!(error instanceof ActionRefused)) throw error;
      said.value = text.value.t(`app.refusal.${error.code}`);
      return false;
    }
    // At once, so that nothing is shown at the end of the time before its beginning.
    batch(() => {
      const from = state.value.clock;
      state.value = next;
      if (twin.value) twin.value = followTwin(twin.value, action);
      const tell = () => {
        said.value = announce(text.value, action, next);
      };
      if (action.kind === 'wait' && lapse.play(from, next.clock, tell)) {
        said.value = text.value.t('app.said.passing', { minutes: action.seconds / 60 });
      } else tell();
    });
    void opening.keep(state.value).then((how) => {
      kept.value = how;
    });
    return true;
  }

  function readNow(at: string, option: ReadingOption): void {
    if (!dispatch(readingAction(at, option))) return;
    held.value = option;
    placeOpen.value = false;
  }

  return {
    pack,
    callout,
    plant,
    state,
    twin,
    clock,
    passing: lapse.passing,
    snapshot,
    inWords: computed(() =>
      describeBench(plant.drawing, snapshot.value, seesInside.value).map((line) => sentenceText(text.value, line)),
    ),
    stuck: computed(() => state.value.site.at(state.value.events, clock.value).stuck),
    lessons,
    judgement: opening.examining.judgement,
    advice: advising.advice,
    tried: trying.tried,
    tryCause: trying.tryCause,
    chalk,
    chalking,
    head: head.told,
    looksBack,
    sheet,
    place,
    placeOpen,
    held,
    inside,
    seesInside,
    drafts,
    said,
    kept,
    found: opening.found,
    dispatch,
    arrive: lapse.arrive,
    optionsAt(id) {
      const found = plant.places.find((one) => one.id === id);
      return found ? optionsAt(found, callout.toolbag) : [];
    },
    take(option) {
      if (place.value === null) return;
      if (chalk.value && asksChalk(option)) {
        chalking.value = option;
        placeOpen.value = true;
      } else readNow(place.value, option);
    },
    chalked(expect) {
      const option = chalking.value;
      if (place.value === null || option === null) return;
      const { instrument, quantity } = option;
      const chips = drafts.value.chips ?? currentChips(state.value);
      const cause = ranking(chips, callout)[0]!;
      if (expect !== null) dispatch({ kind: 'chalk', instrument, place: place.value, quantity, cause, expect });
      readNow(place.value, option);
    },
    askHint: () => dispatch({ kind: 'hint', level: nextHint(state.value) }),
    againHint: advising.again,
    judge: () => opening.examining.judge(state.value),
    code: () => codeOf(state.value),
    attemptFile: () => toFile(state.value.attempt),
    close() {
      lapse.arrive();
      stopStoring();
      stopChalking();
      head.stop();
      stopExamining();
      advising.stop();
      trying.stop();
      opening.examining.stop();
      opening.onClose();
    },
  };
}

/** Long attempts travel as a file: a code beyond the bound is refused unread. */
function codeOf(state: AttemptState): string | null {
  try {
    return encode(state.attempt);
  } catch (error) {
    if (error instanceof AttemptCodeError) return null;
    throw error;
  }
}
