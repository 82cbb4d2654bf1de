import { Caution } from '../panels/kit/Caution';
import { Dialog } from '../panels/kit/Dialog';
import { useText } from '../panels/kit/text';
import { keeping } from './offline/keeping';

export function About({ onClose }: { readonly onClose: () => void }) {
  const text = useText();
  return (
    <Dialog title={text.t('app.about.title')} close={text.t('app.about.close')} onClose={onClose}>
      <p>{text.t('app.about.what')}</p>
      <p>{text.t('app.about.score')}</p>
      <p>{text.t('app.about.privacy')}</p>
      {keeping.value !== 'off' && <p class="soft">{text.t(`app.offline.${keeping.value}`)}</p>}
      <Caution />
    </Dialog>
  );
}
