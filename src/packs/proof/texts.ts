/** Whether the words of a work order are there, in both languages. */
import type { Callout, Localized } from '../../attempt/pack/types';
import type { Finding } from './findings';

/** Texts that cannot read the same in both languages; a title may be a place's name. */
const SENTENCES = ['complaint', 'site', 'history'] as const;

export function textFindings({ id, text }: Callout): Finding[] {
  const found: Finding[] = [];
  const add = (why: string, mend: string) => found.push({ callout: id, rule: 'texts', weight: 'refused', why, mend });
  for (const [field, said] of Object.entries(text) as [string, Localized][]) {
    for (const [language, words] of Object.entries(said)) {
      if (!/\p{L}{2}/u.test(words)) add(`text.${field}.${language} holds no words`, 'write it');
    }
  }
  for (const field of SENTENCES) {
    const { en, es } = text[field];
    if (en.trim() === es.trim()) add(`text.${field} is the same in English and in Spanish`, 'translate it');
  }
  return found;
}
