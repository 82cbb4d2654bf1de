import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { decode, encode } from '../../src/attempt';
import { type Golden, goldenResult } from './run';
import { GOLDEN_SCRIPTS } from './scripts';

function goldenOf(callout: string): Golden {
  return JSON.parse(readFileSync(new URL(`${callout}.golden.json`, import.meta.url), 'utf8'));
}

describe('golden replays (written by tests/golden/make.ts)', () => {
  it.each(GOLDEN_SCRIPTS.map(({ callout }) => callout))('%s gives the same digits and the same bits', (callout) => {
    const { attempt, result } = goldenOf(callout);
    // toEqual on numbers is Object.is: not one bit may differ.
    expect(goldenResult(attempt)).toEqual(result);
  });

  it('travel as codes', () => {
    for (const { callout } of GOLDEN_SCRIPTS) {
      const { attempt } = goldenOf(callout);
      expect(decode(encode(attempt))).toEqual(attempt);
    }
  });

  it('hold more than still machines', () => {
    for (const { callout } of GOLDEN_SCRIPTS) {
      const { notes, trace } = goldenOf(callout).result;
      expect(notes.length).toBeGreaterThanOrEqual(6);
      expect(new Set(trace.map(([, suction]) => suction)).size).toBeGreaterThan(4);
    }
  });
});
