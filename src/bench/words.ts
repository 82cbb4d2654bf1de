/** The bench's words from the catalogues. */
import type { Place } from '../../physics/types';
import type { Text } from '../i18n';
import type { BenchWords } from './types';

/** A place that no catalogue knows is shown by its id, so that a pack with a new plant stays usable. */
function nameOf(text: Text, place: Place): string {
  return text.maybe(`bench.place.${place.id}`) ?? place.id;
}

export function benchWords(text: Text): BenchWords {
  return {
    machine: text.t('bench.name'),
    help: text.t('bench.help'),
    chooseView: text.t('bench.view.choose'),
    loading: text.t('bench.loading'),
    failed: text.t('bench.failed'),
    shortPlace: (place) => nameOf(text, place),
    place: (place) =>
      [nameOf(text, place), ...(place.needs ?? []).map((need) => text.t(`bench.needs.${need}`))].join(', '),
    view: (view) => (view === 'whole' ? text.t('bench.name') : text.t(`bench.view.${view}`)),
  };
}
