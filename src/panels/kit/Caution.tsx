/** The caution that the first screen, About and every report carry. */
import { useText } from './text';

export function Caution() {
  const text = useText();
  return (
    <aside class="caution" aria-label={text.t('app.caution.title')}>
      <h2>{text.t('app.caution.title')}</h2>
      <p>{text.t('app.caution.body')}</p>
    </aside>
  );
}
