/** The trainee's own sums: notes go in, the trainee works it out, the bench says whether it holds. */
import { type MarkedSum, type Note, SUM_KINDS, type SumKind } from '../../attempt';
import { SUM_RULES } from '../../attempt/sums';
import { fromShown, type Kind, parseNumber, type Text } from '../../i18n';
import { noteName, valueText } from '../kit/say';
import { useText } from '../kit/text';
import type { Drafts, Session } from '../session';
import { useSession } from '../session';
import { asTyped, PressureStrip } from '../strip/PressureStrip';

type Draft = NonNullable<Drafts['sum']>;

export function Sums() {
  const text = useText();
  const session = useSession();
  const draft = session.drafts.value.sum;
  return (
    <section class="stack sums" aria-label={text.t('panels.sums.title')}>
      <h3>{text.t('panels.sums.title')}</h3>
      {draft === null ? (
        <Begin />
      ) : (
        <Form draft={draft} set={(sum) => (session.drafts.value = { ...session.drafts.value, sum })} />
      )}
      <ol class="stack" reversed>
        {[...session.state.value.sums].reverse().map((sum) => (
          <Marked key={sum.action} sum={sum} />
        ))}
      </ol>
    </section>
  );
}

/** The two sums of nearly every job at once, the rest one tap further. */
const FIRST_SUMS: readonly SumKind[] = ['superheat', 'subcooling'];

function Begin() {
  const text = useText();
  return (
    <div class="sums-begin">
      <div class="wrap">
        {FIRST_SUMS.map((kind) => (
          <BeginButton key={kind} kind={kind} />
        ))}
      </div>
      <details>
        <summary>{text.t('panels.sums.other')}</summary>
        <div class="wrap">
          {SUM_KINDS.filter((kind) => !FIRST_SUMS.includes(kind)).map((kind) => (
            <BeginButton key={kind} kind={kind} />
          ))}
        </div>
      </details>
    </div>
  );
}

function BeginButton({ kind }: { readonly kind: SumKind }) {
  const text = useText();
  const session = useSession();
  return (
    <button
      type="button"
      class="first"
      onClick={() => {
        session.drafts.value = { ...session.drafts.value, sum: begun(kind, session) };
      }}
    >
      {text.t(`names.sum.${kind}`)}
    </button>
  );
}

/** An empty sum; an input of which there is only one note is that note. */
function begun(kind: SumKind, session: Session): Draft {
  const notes = slots(kind).map((slot) => {
    const fitting = candidates(session.state.value.notes, slot);
    return slots(kind).filter((other) => other === slot).length === 1 && fitting.length === 1
      ? fitting[0]!.index
      : null;
  });
  return { kind, notes, saturation: '', answer: '' };
}

type Slot = 'pressure' | 'temperature';

function slots(kind: SumKind): readonly Slot[] {
  const { temperatures } = SUM_RULES[kind];
  const hot = Array.from({ length: temperatures }, (): Slot => 'temperature');
  return temperatures < 2 ? ['pressure', ...hot] : hot;
}

/** The newest note of each place and instrument that can go into this slot. */
function candidates(notes: readonly Note[], slot: Slot): Note[] {
  const newest = new Map<string, Note>();
  for (const note of notes) {
    if (!note.struck && note.quantity === slot) newest.set(`${note.instrument}/${note.channel}/${note.place}`, note);
  }
  return [...newest.values()].sort((a, b) => b.index - a.index);
}

/** The kind of number that the answer is. */
function answerKind(kind: SumKind): Kind {
  if (kind === 'absolute-pressure') return 'pressure';
  return kind === 'saturation-temperature' ? 'temperature' : 'difference';
}

interface FormProps {
  readonly draft: Draft;
  readonly set: (draft: Draft | null) => void;
}

function Form({ draft, set }: FormProps) {
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
    <form class="stack sum-form" onSubmit={check}>
      <h4 class="first">{text.t(`names.sum.${draft.kind}`)}</h4>
      {wanted.map((slot, index) => (
        <SlotPicker
          // The order of the slots is fixed for a kind of sum.
          key={`${slot}${index}`}
          title={slotTitle(text, wanted, index)}
          options={candidates(notes, slot)}
          chosen={draft.notes[index] ?? null}
          choose={(note) => set({ ...draft, notes: draft.notes.map((old, i) => (i === index ? note : old)) })}
        />
      ))}
      {pressure && draft.kind !== 'absolute-pressure' && (
        <PressureStrip
          key={pressure.index}
          note={pressure}
          {...(usesLine && {
            onTake: (_line, t) => set({ ...draft, saturation: text.number(asTyped(t, text.system), 1) }),
          })}
        />
      )}
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

function slotTitle(text: Text, wanted: readonly Slot[], index: number): string {
  if (wanted[0] === 'pressure') return text.t(`panels.sums.input.${wanted[index]!}`);
  return text.t(index === 0 ? 'panels.sums.input.first' : 'panels.sums.input.second');
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
            <strong class="number">{valueText(text, note)}</strong> <span>{noteName(text, note)}</span>
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

function Marked({ sum }: { readonly sum: MarkedSum }) {
  const text = useText();
  const kind = answerKind(sum.sum);
  return (
    <li class="sum-marked">
      <p>
        <span class="first">{text.t(`names.sum.${sum.sum}`)}</span>{' '}
        {sum.right
          ? text.t('panels.sums.right', { value: text.quantity(kind, sum.answer) })
          : text.t('panels.sums.wrong', { slip: text.t(`panels.sums.slip.${sum.slip ?? 'arithmetic'}`) })}
      </p>
      {!sum.right && (
        <p class="soft">
          {sum.shown
            ? text.t('panels.sums.worked', { value: text.quantity(kind, sum.expected) })
            : text.t('panels.sums.once')}
        </p>
      )}
    </li>
  );
}
