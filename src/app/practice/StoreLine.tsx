/** What a person must know of how the practice is kept; nothing where all is well. */
import { saveFile } from '../../panels/kit/file';
import { useText } from '../../panels/kit/text';
import { store } from './store';

export function StoreLine() {
  const text = useText();
  const { damage, aside, durable, record } = store.value;
  if (durable && aside === null) return null;
  const said =
    damage?.what === 'not-json'
      ? text.t('practice.store.damagedJson')
      : damage?.what === 'other-format'
        ? text.t('practice.store.damagedFormat')
        : damage && text.t('practice.store.damagedSome', { count: damage.lost });
  return (
    <div class="stack" role={durable && !damage ? 'note' : 'alert'}>
      {!durable && <p>{text.t('practice.store.memory')}</p>}
      {said && <p>{said}</p>}
      <div class="wrap">
        {aside !== null && (
          <button type="button" onClick={() => saveFile('practice-aside.txt', 'text/plain', aside)}>
            {text.t('practice.store.saveDamaged')}
          </button>
        )}
        {!durable && (
          <button type="button" onClick={() => saveFile('practice.json', 'application/json', JSON.stringify(record))}>
            {text.t('practice.store.saveAll')}
          </button>
        )}
      </div>
    </div>
  );
}
