/** The form of one sum: its inputs, the strip beside them, what the trainee read off and worked out. */
import { useState } from 'preact/hooks';
import { type Note, SUM_RULES } from '../../attempt';
import { fromShown, type Kind, parseNumber, type Text } from '../../i18n';
import { NoteTag } from '../kit/NoteTag';
import { sentence } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';
import { asTyped, PressureStrip } from '../strip/PressureStrip';
import { answerKind, candidates, type Slot, type SumDraft, slots } from './sumDraft';

interface FormProps {
  readonly draft: SumDraft;
  readonly set: (draft: SumDraft | null) => void;
}

export function SumForm({ draft, set }: FormProps) {
  const text = useText();
  const session = useSession();
  const { notes } = session.state.value;
  const wanted = slots(draft.kind);
  const usesLine = SUM_RULES[draft.kind].line !== null && SUM_RULES[draft.kind].temperatures === 1;
  const pressure = wanted[0] === 'pressure' ? notes.find(({ index }) => index === draft.notes[0]) : undefined;
  const kind = answerKind(draft.kind);
  const answer = typed(draft.answer, kind, text);
  const saturation = usesLine ? typed(draft.saturation, 'temperature', text) : undefined;
  const complete = draft.notes.every((note) => note !== null) && answer !== null && saturation !== null;
  const check = (event: Event) => {
    event.preventDefault();
    if (!complete) return;
    const done = session.dispatch({
      kind: 'sum',
      sum: draft.kind,
      notes: draft.notes as number[],
      ...(saturation !== undefined && { saturation }),
      answer,
    });
    if (done) set(session.state.value.sums.at(-1)?.right ? null : { ...draft, answer: '' });
  };
  return (
    <form class="stack sum-form" onSubmit={check} onFocusIn={keepInView}>
      <h3 class="first">{text.t(`names.sum.${draft.kind}`)}</h3>
      <Inputs draft={draft} set={set} />
      {pressure && draft.kind !== 'absolute-pressure' && (
        <PressureStrip
          key={pressure.index}
          note={pressure}
          {...(usesLine && {
            onTake: (_line, t) => set({ ...draft, saturation: text.number(asTyped(t, text.system), 1) }),
          })}
        />
      )}
      <div class="sum-fields">
        {usesLine && (
          <NumberField
            label={text.t('panels.sums.saturation')}
            kind="temperature"
            value={draft.saturation}
            set={(value) => set({ ...draft, saturation: value })}
          />
        )}
        <NumberField
          label={text.t('panels.sums.answer')}
          kind={kind}
          value={draft.answer}
          set={(value) => set({ ...draft, answer: value })}
        />
      </div>
      <div class="wrap">
        <button type="submit" class="main" disabled={!complete}>
          {text.t('panels.sums.check')}
        </button>
        <button type="button" class="quiet" onClick={() => set(null)}>
          {text.t('panels.sums.cancel')}
        </button>
      </div>
    </form>
  );
}

/** Window in which a phone's keyboard is open, px; also in panels.css. */
const LITTLE_HEIGHT = 560;

/** A browser puts a focused field in the middle; here the notes and the strip above it must stay in view with it. */
function keepInView(event: FocusEvent): void {
  const field = event.target as HTMLElement;
  if (field.matches('input[inputmode]') && innerHeight <= LITTLE_HEIGHT) {
    field.closest('form')?.scrollIntoView({ block: 'start' });
  }
}

/** What goes in. Once everything is chosen only that is shown, so that it stays in view beside the strip. */
function Inputs({ draft, set }: FormProps) {
  const text = useText();
  const { notes } = useSession().state.value;
  const [open, setOpen] = useState<number | null>(null);
  const wanted = slots(draft.kind);
  const choose = (index: number, note: number) => {
    setOpen(null);
    set({ ...draft, notes: draft.notes.map((old, i) => (i === index ? note : old)) });
  };
  const complete = draft.notes.every((note) => note !== null);
  if (complete && open === null) {
    return (
      <div class="wrap sum-inputs">
        {draft.notes.map((chosen, index) => {
          const note = notes[chosen ?? -1];
          return (
            note && (
              <button type="button" key={note.index} class="tag" aria-pressed onClick={() => setOpen(index)}>
                <NoteTag note={note} />
              </button>
            )
          );
        })}
      </div>
    );
  }
  return (
    <>
      {wanted.map((slot, index) =>
        open !== null && open !== index ? null : (
          <SlotPicker
            // The order of the slots is fixed for a kind of sum.
            key={`${slot}${index}`}
            title={slotTitle(text, wanted, index)}
            options={candidates(notes, slot)}
            chosen={draft.notes[index] ?? null}
            choose={(note) => choose(index, note)}
          />
        ),
      )}
    </>
  );
}

function slotTitle(text: Text, wanted: readonly Slot[], index: number): string {
  if (wanted[0] === 'pressure') return sentence(text.t(`panels.sums.input.${wanted[index]!}`));
  return sentence(text.t(index === 0 ? 'panels.sums.input.first' : 'panels.sums.input.second'));
}

/** Shown number → SI; null where it is no number. */
function typed(value: string, kind: Kind, text: Text): number | null {
  const number = parseNumber(value);
  return number === null ? null : fromShown(kind, number, text.system);
}

function SlotPicker(props: {
  readonly title: string;
  readonly options: readonly Note[];
  readonly chosen: number | null;
  readonly choose: (note: number) => void;
}) {
  const text = useText();
  return (
    <fieldset class="slot">
      <legend>{props.title}</legend>
      {props.options.length === 0 && <p class="soft">{text.t('panels.sums.none')}</p>}
      <div class="wrap">
        {props.options.map((note) => (
          <button
            type="button"
            key={note.index}
            class="tag"
            aria-pressed={props.chosen === note.index}
            onClick={() => props.choose(note.index)}
          >
            <NoteTag note={note} timed />
          </button>
        ))}
      </div>
    </fieldset>
  );
}

function NumberField(props: {
  readonly label: string;
  readonly kind: Kind;
  readonly value: string;
  readonly set: (value: string) => void;
}) {
  const text = useText();
  const number = parseNumber(props.value);
  const wrong = props.value.trim() !== '' && number === null;
  return (
    <label class="field">
      <span>{props.label}</span>
      <span class="field-line">
        <input
          inputMode="decimal"
          autoComplete="off"
          size={8}
          value={props.value}
          aria-invalid={wrong}
          onInput={(event) => props.set(event.currentTarget.value)}
        />
        <span>{text.unit(props.kind)}</span>
      </span>
      {wrong && <small role="alert">{text.t('panels.sums.notNumber')}</small>}
    </label>
  );
}
