/** One quiet line: whether the page is ready without a network, and a later build that waits. */
import { useText } from '../../panels/kit/text';
import { keeping, laterBuild, takeLaterBuild } from './keeping';

export function OfflineLine() {
  const text = useText();
  if (laterBuild.value) {
    return (
      <p class="offline">
        {text.t('app.offline.later')}{' '}
        <button type="button" class="quiet" onClick={takeLaterBuild}>
          {text.t('app.offline.take')}
        </button>
      </p>
    );
  }
  const state = keeping.value;
  if (state === 'off' || state === 'impossible') return null;
  return (
    <p class="offline soft" data-offline={state}>
      {state === 'ready' && <span aria-hidden="true">✓ </span>}
      {text.t(`app.offline.${state}`)}
    </p>
  );
}
