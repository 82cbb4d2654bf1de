/** Keeps the visit to which the van has to come back, with what the last job sheet says. */
import type { AttemptState } from '../../attempt';
import type { Localized } from '../../attempt/pack/types';
import { addTexts, createText, LANGUAGES } from '../../i18n';
import { practiceTexts } from '../../i18n/practice';
import { returnVisit } from '../../practice/returnVisit';
import { keepPack } from './kept';

export function keepReturn(state: AttemptState): void {
  addTexts(practiceTexts);
  const verdict = state.verdicts.at(-1);
  const repair = state.repairs.at(-1);
  if (!verdict || !repair) return;
  const say = (write: (text: ReturnType<typeof createText>) => string): Localized => {
    const [en, es] = LANGUAGES.map((language) => write(createText(language, 'si')));
    return { en: en!, es: es! };
  };
  const pack = returnVisit(state, {
    title: say((text) => text.t('practice.van.title')),
    about: say((text) => text.t('practice.van.about')),
    history: say((text) =>
      text.t('practice.van.history', {
        cause: text.t(`names.cause.${verdict.cause}`),
        remedy: text.t(`names.remedy.${repair.remedy}`),
      }),
    ),
  });
  if (!pack) return;
  try {
    keepPack(pack);
  } catch {
    // The first screen says when nothing can be saved; this visit is lost with it.
  }
}
