/** Base rates, printed: they are what the stake starts from and what the examiner counts from. */
import { causesOf } from '../kit/causes';
import { useText } from '../kit/text';
import { useSession } from '../session';

export function Tally() {
  const text = useText();
  const { callout } = useSession();
  const causes = causesOf(callout);
  const most = Math.max(...causes.map((cause) => callout.tally[cause] ?? 0));
  return (
    <section>
      <h3>{text.t('panels.job.tally')}</h3>
      <p class="soft">{text.t('panels.job.tallyHelp')}</p>
      <ul class="tally">
        {causes.map((cause) => {
          const count = callout.tally[cause] ?? 0;
          return (
            <li key={cause}>
              <span class="first">{text.t(`names.cause.${cause}`)}</span>
              <span class="number">{count}</span>
              <span class="tally-bar" aria-hidden="true" style={{ width: `${(100 * count) / most}%` }} />
            </li>
          );
        })}
      </ul>
    </section>
  );
}
