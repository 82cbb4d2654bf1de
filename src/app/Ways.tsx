/** Ways to practise besides the callouts, in the order in which a learner meets them. */
import { useText } from '../panels/kit/text';
import { practiceLink } from './route';

const SHOWN = ['path', 'quarrel', 'closed-circuit', 'short-bag', 'radio', 'trap'] as const;

export function Ways() {
  const text = useText();
  return (
    <section class="stack" aria-labelledby="ways">
      <h2 id="ways">{text.t('app.ways.title')}</h2>
      <ul class="ways">
        {SHOWN.map((way) => (
          <li key={way}>
            <a href={practiceLink(way)}>
              <span class="home-title">{text.t(`app.ways.${way}.name`)}</span>
              <span class="soft">{text.t(`app.ways.${way}.what`)}</span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
