/** Shown over the machine while minutes are played: the clock that runs, how far it is, and the way to the end. */
import { useText } from '../../panels/kit/text';
import { useSession } from '../../panels/session';

export function PassingTime() {
  const text = useText();
  const session = useSession();
  const passing = session.passing.value;
  if (!passing) return null;
  const { from, to, now } = passing;
  return (
    <div class="passing">
      <p aria-hidden="true">
        <strong class="number">{text.clock(now)}</strong>
        <span class="soft">{text.t('app.passing.until', { clock: text.clock(to) })}</span>
      </p>
      <button type="button" onClick={() => session.arrive()}>
        {text.t('app.passing.skip')}
      </button>
      <span class="passing-bar" aria-hidden="true">
        <span style={{ inlineSize: `${(100 * (now - from)) / (to - from)}%` }} />
      </span>
    </div>
  );
}
