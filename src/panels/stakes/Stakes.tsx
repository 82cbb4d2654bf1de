/** Twenty chips of belief. A tap on a cause takes one from "not sure yet"; a tap on its count gives one back. */
import type { CauseId } from '../../../physics/types';
import { causesOf } from '../kit/causes';
import { sentence } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';
import { CHIPS, type Chips, currentChips, given, isChanged, momentNow, takenBack, unsureChips } from './chips';

export function Stakes() {
  const text = useText();
  const session = useSession();
  const chips = currentChips(session);
  const moment = momentNow(session);
  const lay: Lay = (cause, move) => {
    session.drafts.value = { ...session.drafts.value, chips: move(chips, cause) };
  };
  return (
    <>
      <p>{text.t(`panels.stakes.due.${moment}`)}</p>
      <p class="soft">{text.t('panels.stakes.help')}</p>
      <ul class="stakes">
        {causesOf(session.callout).map((cause) => (
          <CauseRow key={cause} cause={cause} count={chips[cause] ?? 0} lay={lay} />
        ))}
        <li class="stakes-unsure">
          <span class="first">{text.t('panels.stakes.unsure')}</span>
          <ChipRow count={unsureChips(chips)} />
          <span class="number">{text.t('panels.stakes.count', { count: unsureChips(chips) })}</span>
        </li>
      </ul>
      <p class="soft">{text.t('panels.stakes.last')}</p>
      <button
        type="button"
        class="main"
        disabled={!isChanged(session) && moment === 'free'}
        onClick={() => {
          if (session.dispatch({ kind: 'stake', moment, chips })) {
            session.drafts.value = { ...session.drafts.value, chips: null };
          }
        }}
      >
        {text.t('panels.stakes.declare')}
      </button>
      <Trail />
    </>
  );
}

type Lay = (cause: CauseId, move: (chips: Chips, cause: CauseId) => Chips) => void;

interface RowProps {
  readonly cause: CauseId;
  readonly count: number;
  readonly lay: Lay;
}

function CauseRow({ cause, count, lay }: RowProps) {
  const text = useText();
  const name = text.t(`names.cause.${cause}`);
  const spoken = `${sentence(name)}, ${text.t('panels.stakes.count', { count })}`;
  return (
    <li>
      <button
        type="button"
        class="row"
        data-cause={cause}
        aria-label={`${text.t('panels.stakes.give', { cause: name })}. ${spoken}`}
        onClick={() => lay(cause, given)}
        onKeyDown={(event) =>
          onKey(
            event,
            () => lay(cause, given),
            () => lay(cause, takenBack),
          )
        }
      >
        <span class="first">{name}</span>
        <ChipRow count={count} />
      </button>
      <button
        type="button"
        class="number"
        disabled={count === 0}
        aria-label={`${text.t('panels.stakes.takeBack', { cause: name })}. ${spoken}`}
        onClick={() => lay(cause, takenBack)}
      >
        <span aria-hidden="true">
          {text.number(count)} <span class="soft">−</span>
        </span>
      </button>
    </li>
  );
}

/** ↑ ↓ choose a cause, → gives it a chip, ← takes one back. */
function onKey(event: KeyboardEvent, give: () => void, takeBack: () => void): void {
  const row = event.currentTarget as HTMLElement;
  const rows = [...(row.closest('.stakes')?.querySelectorAll<HTMLElement>('[data-cause]') ?? [])];
  const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (step !== undefined) rows[(rows.indexOf(row) + step + rows.length) % rows.length]?.focus();
  else if (event.key === 'ArrowRight') give();
  else if (event.key === 'ArrowLeft') takeBack();
  else return;
  event.preventDefault();
  event.stopPropagation();
}

function ChipRow({ count }: { readonly count: number }) {
  return (
    <svg class="chips" viewBox={`0 0 ${CHIPS * 10} 10`} aria-hidden="true" preserveAspectRatio="xMinYMid meet">
      {Array.from({ length: count }, (_, index) => (
        <circle key={index} cx={index * 10 + 5} cy={5} r={4} />
      ))}
    </svg>
  );
}

function Trail() {
  const text = useText();
  const session = useSession();
  const { stakes } = session.state.value;
  if (stakes.length === 0) return <p class="soft">{text.t('panels.stakes.fromTally')}</p>;
  return (
    <section>
      <h3>{text.t('panels.stakes.trail')}</h3>
      <ol class="trail">
        {stakes.map((stake) => (
          <li key={stake.action}>
            <span class="soft">
              {text.clock(stake.time)}, {text.t(`names.moment.${stake.moment}`)}:
            </span>{' '}
            {(Object.entries(stake.chips) as [CauseId, number][])
              .filter(([, count]) => count > 0)
              .sort(([, a], [, b]) => b - a)
              .slice(0, 3)
              .map(([cause, count]) => `${count} ${text.t(`names.cause.${cause}`)}`)
              .join(', ')}
          </li>
        ))}
      </ol>
    </section>
  );
}
