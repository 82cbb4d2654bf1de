/** What has become of the machine since a note was taken. */
import type { AttemptState, Note } from '../../attempt';
import type { Text } from '../../i18n';
import { sentence } from './say';

/** In words, since colour alone tells nobody; null while the note still holds. */
export function beforeText(text: Text, note: Note, { epoch, repairs }: AttemptState): string | null {
  const change =
    repairs.length > 0 && note.state !== 'repaired' ? 'beforeRepair' : note.epoch < epoch ? 'beforeChange' : null;
  return change && sentence(text.t('panels.note.before', { change: text.t(`panels.note.${change}`) }));
}
