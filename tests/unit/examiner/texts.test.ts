/** What the examiner says is short, plain and complete: read by people who read little, on a phone, in a plant room. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FAMILIES, LOOKS } from '../../../physics/types';
import { HAZARD_ACTS, SUM_SLIPS } from '../../../src/attempt';
import { PROOFS } from '../../../src/examiner/parts/confirming';
import { examiner as english } from '../../../src/i18n/en/examiner';
import { names } from '../../../src/i18n/en/names';
import { examiner as spanish } from '../../../src/i18n/es/examiner';
import { names as nombres } from '../../../src/i18n/es/names';

type Tree = { readonly [key: string]: string | Tree };

function leaves(tree: Tree, path = ''): [string, string][] {
  return Object.entries(tree).flatMap(([key, value]) =>
    typeof value === 'string' ? [[path + key, value] as [string, string]] : leaves(value, `${path}${key}.`),
  );
}

/** Texts with their longest likely fillings. */
function filled(text: string, words: { cause: string; channel: string; sum: string; step: string }): string {
  return text
    .replace(/\{\{(said|was|rival|cause|other|one)\}\}/g, words.cause)
    .replace('{{what}}', words.channel)
    .replace('{{sum}}', words.sum)
    .replace('{{state}}', 'standing still')
    .replace('{{size}}', 'severe')
    .replace(/\{\{(remedy|step|place|instrument|seen)\}\}/g, words.step)
    .replace(
      /\{\{(low|high|value|belief|share|rest|from|to|minutes|used|best|bits|handled|met|pressure|saturation|pipe|before|after)\}\}/g,
      '12',
    );
}

const WORDS = {
  en: { cause: names.cause.undercharge, channel: names.channel.subcooling, sum: names.sum.superheat, step: 'weigh' },
  es: {
    cause: nombres.cause.undercharge,
    channel: nombres.channel.subcooling,
    sum: nombres.sum.superheat,
    step: 'pesar',
  },
};
const sentencesOf = (text: string) => text.split(/(?<=[.?!])\s+/).filter((sentence) => sentence !== '');
const wordsIn = (sentence: string) => sentence.split(/[\s:()]+/).filter((word) => /\p{L}|\d/u.test(word));

const LANGUAGES = [
  ['English', leaves(english as unknown as Tree), WORDS.en],
  ['Spanish', leaves(spanish as unknown as Tree), WORDS.es],
] as const;

describe.each(LANGUAGES)('%s', (_language, texts, words) => {
  it('has at most twelve words and two numbers a sentence', () => {
    for (const [key, text] of texts) {
      for (const sentence of sentencesOf(filled(text, words))) {
        // A name that is put in may itself be long: it counts as it stands for "too little refrigerant".
        expect(wordsIn(sentence).length, `${key}: ${sentence}`).toBeLessThanOrEqual(13);
        expect(sentence.match(/\d+/g)?.length ?? 0, `${key}: ${sentence}`).toBeLessThanOrEqual(2);
      }
    }
  });
});

describe('English', () => {
  const texts = leaves(english as unknown as Tree);

  it('hides nobody behind a passive', () => {
    for (const [key, text] of texts) {
      expect(text, key).not.toMatch(/\b(is|are|was|were|been|being|be)\s+(not\s+)?\w+(ed|wn|ught)\b/i);
    }
  });

  it('says "fits" and never speaks of likelihood, probability or posterior', () => {
    for (const [key, text] of texts) expect(text, key).not.toMatch(/likelihood|probab|posterior|hypothes/i);
  });

  it('reads at grade 6 or below (Flesch–Kincaid, words of the drawn glossary counted as two syllables)', () => {
    const glossary =
      /refrigerant|compressor|capacitor|superheat|subcooling|saturation|condense|temperature|controller/gi;
    let sentences = 0;
    let words = 0;
    let syllables = 0;
    for (const [, text] of texts) {
      const plain = filled(text.replace(glossary, 'fitting'), WORDS.en).replace(glossary, 'fitting');
      for (const sentence of sentencesOf(plain)) {
        sentences += 1;
        for (const word of wordsIn(sentence)) {
          words += 1;
          syllables += Math.max(
            1,
            word
              .toLowerCase()
              .replace(/e\b/, '')
              .match(/[aeiouy]+/g)?.length ?? 1,
          );
        }
      }
    }
    const grade = 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;
    expect(grade).toBeLessThan(6);
  });
});

describe('keys', () => {
  const keys = new Set(leaves(english as unknown as Tree).map(([key]) => key));

  it('of every message that the examiner writes are in the catalogue', () => {
    const files = ['', 'parts/', 'explain/', 'hints/'].flatMap((folder) =>
      readdirSync(`src/examiner/${folder}`)
        .filter((file) => file.endsWith('.ts'))
        .map((file) => `src/examiner/${folder}${file}`),
    );
    const written = files.flatMap((file) =>
      [
        ...readFileSync(file, 'utf8').matchAll(
          /'((?:reason|verdict|care|alike|tells|together|next|why|callBack|working|hint)\.[\w.-]+)'/g,
        ),
      ]
        .map(([, key]) => key)
        .filter((key) => !key.endsWith('.')),
    );
    expect(written.length).toBeGreaterThan(40);
    expect(written.filter((key) => !keys.has(key))).toEqual([]);
  });

  it('made of ids are in the catalogue for every id', () => {
    const causes = ['no-fault', ...FAMILIES];
    const made = [
      ...causes.map((cause) => `why.${cause}`),
      ...causes
        .filter((cause) => PROOFS[cause as keyof typeof PROOFS] !== null)
        .map((cause) => `reason.proof.${cause}`),
      ...SUM_SLIPS.map((slip) => `reason.working.slip.${slip}`),
      ...HAZARD_ACTS.map((act) => `reason.care.${act}`),
      ...['right', 'secondTry', 'missing', 'wrong', 'spoilt'].map((word) => `reason.working.${word}`),
      ...['untouched', 'close', 'partly', 'far'].map((word) => `reason.belief.${word}`),
      ...['strong', 'partly', 'weak'].map((word) => `reason.evidence.${word}`),
      ...['leak-left', 'cause-left'].flatMap((word) => [`reason.repair.${word}`, `callBack.${word}`]),
      ...['unsupported', 'thrifty', 'dear'].map((word) => `reason.economy.${word}`),
    ];
    expect(made.filter((key) => !keys.has(key))).toEqual([]);
    for (const look of LOOKS) expect(names.channel).toHaveProperty([`look:${look}`]);
  });
});
