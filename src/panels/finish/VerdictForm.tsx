/** Pre-filled from what was staked and starred: leading cause, its rival, the stars. Confirm, or change. */
import type { CauseId } from '../../../physics/types';
import { type Note, SIZE_WORDS } from '../../attempt';
import { causesOf } from '../kit/causes';
import { NoteTag } from '../kit/NoteTag';
import { sentence } from '../kit/say';
import { useText } from '../kit/text';
import { type Session, useSession } from '../session';
import { currentChips, ranking } from '../stakes/chips';

/** More would pay for reciting the notebook. */
const MOST_CITES = 3;

interface Filled {
  readonly cause: CauseId;
  readonly rival: CauseId;
  readonly cites: readonly number[];
}

function filled(session: Session): Filled {
  const draft = session.drafts.value.verdict;
  const order = ranking(currentChips(session), session.callout);
  const cause = draft.cause ?? order[0]!;
  const rival = draft.rival && draft.rival !== cause ? draft.rival : order.find((other) => other !== cause)!;
  const starred = session.state.value.notes.filter(({ star, struck }) => star === 'for' && !struck);
  const cites = draft.cites ?? starred.slice(0, MOST_CITES).map(({ index }) => index);
  return { cause, rival, cites };
}

export function VerdictForm() {
  const text = useText();
  const session = useSession();
  const { cause, rival, cites } = filled(session);
  const { size } = session.drafts.value.verdict;
  const edit = (change: Session['drafts']['value']['verdict']) => {
    session.drafts.value = { ...session.drafts.value, verdict: { ...session.drafts.value.verdict, ...change } };
  };
  const commit = () => {
    if (size === undefined) return;
    if (!declareStake(session)) return;
    if (session.dispatch({ kind: 'verdict', cause, size, rival, cites })) {
      session.drafts.value = { ...session.drafts.value, chips: null, verdict: {} };
    }
  };
  return (
    <div class="stack">
      <CauseSelect label={text.t('finish.verdict.cause')} value={cause} set={(value) => edit({ cause: value })} />
      <CauseSelect
        label={text.t('finish.verdict.rival')}
        value={rival}
        not={cause}
        set={(value) => edit({ rival: value })}
      />
      <p class="soft">{text.t('finish.verdict.rivalWhy')}</p>
      <fieldset class="slot">
        <legend>{text.t('finish.verdict.size')}</legend>
        <div class="pair">
          {SIZE_WORDS.map((word) => (
            <button type="button" key={word} aria-pressed={size === word} onClick={() => edit({ size: word })}>
              {text.t(`names.size.${word}`)}
            </button>
          ))}
        </div>
      </fieldset>
      <NotePicks
        legend={text.t('finish.verdict.cites')}
        empty={text.t('finish.verdict.citesNone')}
        notes={session.state.value.notes.filter(({ struck }) => !struck)}
        picked={cites}
        most={MOST_CITES}
        pick={(next) => edit({ cites: next })}
      />
      <p class="said">
        {sentence(
          text.t('finish.verdict.sentence', {
            cause: text.t(`names.cause.${cause}`),
            rival: text.t(`names.cause.${rival}`),
          }),
        )}
      </p>
      <button type="button" class="main" disabled={size === undefined} onClick={commit}>
        {text.t('finish.verdict.commit')}
      </button>
    </div>
  );
}

/** The chips as they lie are the stake before the verdict; they need no tap of their own. */
function declareStake(session: Session): boolean {
  const { stakes, verdicts } = session.state.value;
  if (verdicts.length > 0 || stakes.some(({ moment }) => moment === 'verdict')) return true;
  return session.dispatch({ kind: 'stake', moment: 'verdict', chips: currentChips(session) });
}

function CauseSelect(props: {
  readonly label: string;
  readonly value: CauseId;
  readonly not?: CauseId;
  readonly set: (cause: CauseId) => void;
}) {
  const text = useText();
  const { callout } = useSession();
  return (
    <label class="field">
      <span>{props.label}</span>
      <select value={props.value} onChange={(event) => props.set(event.currentTarget.value as CauseId)}>
        {causesOf(callout)
          .filter((cause) => cause !== props.not)
          .map((cause) => (
            <option key={cause} value={cause}>
              {sentence(text.t(`names.cause.${cause}`))}
            </option>
          ))}
      </select>
    </label>
  );
}

export function NotePicks(props: {
  readonly legend: string;
  readonly empty: string;
  readonly notes: readonly Note[];
  readonly picked: readonly number[];
  readonly most?: number;
  readonly pick: (notes: readonly number[]) => void;
}) {
  const { picked, most = Number.POSITIVE_INFINITY } = props;
  const toggle = (index: number) => {
    if (picked.includes(index)) props.pick(picked.filter((one) => one !== index));
    else props.pick([...picked, index].slice(-most));
  };
  return (
    <fieldset class="slot">
      <legend>{props.legend}</legend>
      {props.notes.length === 0 && <p class="soft">{props.empty}</p>}
      <div class="wrap">
        {[...props.notes].reverse().map((note) => (
          <button
            type="button"
            key={note.index}
            class="tag"
            aria-pressed={picked.includes(note.index)}
            onClick={() => toggle(note.index)}
          >
            <NoteTag note={note} timed />
          </button>
        ))}
      </div>
    </fieldset>
  );
}
