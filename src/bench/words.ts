/** The bench's words from the catalogues. */
import type { Place } from '../../physics/types';
import type { Text } from '../i18n';
import { branchParts, nameAt } from '../i18n/branches';
import type { BenchWords } from './types';

/** A place that no catalogue knows is shown by its id, so that a pack with a new plant stays usable. */
function nameOf(text: Text, place: Place): string {
  return nameAt(text, place.id, 'bench.place') ?? place.id;
}

/** `room@unit3` and `outdoor@module2` are called by their number. */
function viewName(text: Text, view: string): string {
  const [name, branch] = view.split('@') as [string, string | undefined];
  const parts = branch === undefined ? null : branchParts(branch);
  if (parts) return text.t(parts.kind === 'unit' ? 'bench.view.room' : 'bench.view.module', { number: parts.number });
  return text.maybe(`bench.view.${name}`) ?? name;
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
    view: (view) => viewName(text, view),
  };
}
