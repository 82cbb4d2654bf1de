/** The texts of practice in both languages, for whoever shows its screens. */
import { practice as en } from './en/practice';
import { practice as es } from './es/practice';

export const practiceTexts = { en: { practice: en }, es: { practice: es } };
