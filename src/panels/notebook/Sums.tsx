/** The trainee's own sums: notes go in, the trainee works it out, the bench says whether it holds. */
import { type MarkedSum, SUM_KINDS, type SumKind } from '../../attempt';
import { sentence } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';
import { SumForm } from './SumForm';
import { answerKind, begun } from './sumDraft';

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
        <SumForm draft={draft} set={(sum) => (session.drafts.value = { ...session.drafts.value, sum })} />
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
      onClick={() => {
        session.drafts.value = { ...session.drafts.value, sum: begun(kind, session) };
      }}
    >
      {sentence(text.t(`names.sum.${kind}`))}
    </button>
  );
}

function Marked({ sum }: { readonly sum: MarkedSum }) {
  const text = useText();
  const kind = answerKind(sum.sum);
  return (
    <li class="sum-marked">
      <p>
        <strong>{sentence(text.t(`names.sum.${sum.sum}`))}</strong>{' '}
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
