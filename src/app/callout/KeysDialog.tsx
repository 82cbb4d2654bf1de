import { Dialog } from '../../panels/kit/Dialog';
import { useText } from '../../panels/kit/text';
import { KEYS } from './keys';

const GROUPS = ['move', 'panels', 'stake', 'other'] as const;

export function KeysDialog({ onClose }: { readonly onClose: () => void }) {
  const text = useText();
  return (
    <Dialog title={text.t('app.keys.title')} close={text.t('app.about.close')} onClose={onClose}>
      <p class="soft">{text.t('app.keys.intro')}</p>
      {GROUPS.map((group) => (
        <section key={group}>
          <h3>{text.t(`app.keys.group.${group}`)}</h3>
          <dl class="keys">
            {KEYS.filter((row) => row.group === group).map((row) => (
              <div key={row.says}>
                <dt>
                  {row.keys.map((key) => (
                    <kbd key={key}>{key}</kbd>
                  ))}
                </dt>
                <dd>{text.t(row.says)}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </Dialog>
  );
}
