import fc from 'fast-check';
import lz from 'lz-string';
import { describe, expect, it } from 'vitest';
import { canonicalJson, checkValue } from '../../src/attempt/canonical';
import { AttemptCodeError, decode, encode, fromFile, LONGEST_CODE, toFile } from '../../src/attempt/codes';
import { startAttempt } from '../../src/attempt/reducer';
import { replayAttempt } from '../../src/attempt/replay';
import type { AttemptState } from '../../src/attempt/state';
import type { Attempt } from '../../src/attempt/types';
import { actionOn, perform } from '../support/attempt-actions';
import { quickWorld } from '../support/fake-machine';
import { samplePack } from '../support/pack-fixture';

const pack = samplePack();
const callouts = ['back-office', 'front-shop'] as const;
const plantOf = { 'back-office': 'orifice-split', 'front-shop': 'inverter-split' } as const;

const anyWork = fc.constantFrom(...callouts).chain((callout) =>
  fc.record({
    callout: fc.constant(callout),
    seed: fc.string({ minLength: 1, maxLength: 12 }),
    actions: fc.array(actionOn(plantOf[callout]), { minLength: 4, maxLength: 20, size: 'max' }),
  }),
);

type Work = typeof anyWork extends fc.Arbitrary<infer T> ? T : never;
const worked = ({ callout, seed, actions }: Work) => perform(startAttempt(pack, callout, seed, quickWorld), actions);

/** What a screen or the examiner sees, without the machine behind it. */
function seen({ site: _site, ...rest }: AttemptState) {
  return rest;
}

function errorOf(work: () => unknown): AttemptCodeError | null {
  try {
    work();
    return null;
  } catch (error) {
    if (error instanceof AttemptCodeError) return error;
    throw error;
  }
}

const small: Attempt = {
  format: 1,
  pack: 'sample-street',
  packVersion: 1,
  callout: 'back-office',
  seed: 's',
  physics: 'fake-1',
  actions: [
    { t: 0, action: { kind: 'look', place: 'sight-glass' } },
    { t: 15, action: { kind: 'wait', seconds: 60 } },
  ],
};

describe('attempt codes', () => {
  it('give back the attempt, and the attempt the same state, for 10,000 generated attempts', () => {
    let actions = 0;
    let tooLong = 0;
    fc.assert(
      fc.property(anyWork, (work) => {
        const state = worked(work);
        const { attempt } = state;
        actions += attempt.actions.length;
        expect(fromFile(toFile(attempt))).toEqual(attempt);
        const refusal = errorOf(() => encode(attempt));
        if (refusal) {
          expect(refusal.code).toBe('too-long');
          tooLong += 1;
          return;
        }
        const decoded = decode(encode(attempt));
        expect(decoded).toEqual(attempt);
        expect(canonicalJson(seen(replayAttempt(decoded, pack, quickWorld)))).toBe(canonicalJson(seen(state)));
      }),
      { seed: 20_261, numRuns: 10_000 },
    );
    // The property is not passed by empty attempts.
    expect(actions / 10_000).toBeGreaterThan(5);
    expect(tooLong).toBe(0);
  }, 600_000);

  it('survive 100,000 mutations: a clear error or a valid attempt', () => {
    const codes = fc.sample(anyWork, { seed: 5, numRuns: 200 }).map((work) => encode(worked(work).attempt));
    const alphabet = 'ABCXYZabcxyz0189+-$._ é\u0000';
    const mutation = fc.record({
      which: fc.nat({ max: codes.length - 1 }),
      kind: fc.constantFrom('replace', 'cut', 'insert', 'swap', 'double', 'forge'),
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      to: fc.double({ min: 0, max: 1, noNaN: true }),
      letter: fc.constantFrom(...alphabet),
    });
    const tally = new Map<string, number>();
    fc.assert(
      fc.property(mutation, ({ which, kind, at, to, letter }) => {
        const code = codes[which]!;
        const i = Math.floor(at * code.length);
        const j = Math.floor(to * code.length);
        const text = {
          replace: () => code.slice(0, i) + letter + code.slice(i + 1),
          cut: () => code.slice(0, i),
          insert: () => code.slice(0, i) + letter + code.slice(i),
          swap: () =>
            code.slice(0, Math.min(i, j)) + code.slice(Math.max(i, j)) + code.slice(Math.min(i, j), Math.max(i, j)),
          double: () => code + code,
          // Altered text under a check value that is right again: only the shape can refuse it.
          forge: () => forged(code, i, letter),
        }[kind]!();
        let decoded: Attempt | null = null;
        const error = errorOf(() => {
          decoded = decode(text);
        });
        const outcome = error ? error.code : 'valid';
        tally.set(outcome, (tally.get(outcome) ?? 0) + 1);
        if (error) {
          expect(error.where.length).toBeGreaterThan(0);
          expect(error.what.length).toBeGreaterThan(0);
        } else expect(decode(encode(decoded!))).toEqual(decoded);
      }),
      { seed: 77, numRuns: 100_000 },
    );
    // All ways out were taken, so the property says something about each.
    expect([...tally.keys()].sort()).toEqual(
      expect.arrayContaining(['damaged', 'not-a-code', 'not-an-attempt', 'not-json', 'valid']),
    );
  }, 600_000);

  it('never begin to unpack a text that is too long, whatever it declares', () => {
    const bomb = 'A'.repeat(LONGEST_CODE);
    expect(errorOf(() => decode(`bench1.2s.00000000.${bomb}`))).toMatchObject({ code: 'too-long', where: 'code' });
    expect(errorOf(() => decode(`bench1.zzzzz.00000000.AAAA`))).toMatchObject({ code: 'too-long', where: 'length' });
  });

  it('find out a short text that unpacks to much more than it declares', () => {
    const bomb = lz.compressToEncodedURIComponent('a'.repeat(300_000));
    const code = `bench1.2s.${checkValue(`2s.${bomb}`)}.${bomb}`;
    expect(code.length).toBeLessThan(LONGEST_CODE);
    expect(errorOf(() => decode(code))).toMatchObject({ code: 'damaged', where: 'text' });
  });

  it('say where and what', () => {
    const code = encode(small);
    expect(errorOf(() => decode(''))).toMatchObject({ code: 'empty' });
    expect(errorOf(() => decode('hello'))).toMatchObject({ code: 'not-a-code', where: 'start' });
    expect(errorOf(() => decode(code.replace('bench1', 'bench2')))).toMatchObject({ code: 'other-version' });
    expect(errorOf(() => decode(code.slice(0, -4)))).toMatchObject({ code: 'damaged', where: 'check' });
    expect(errorOf(() => fromFile('{'))).toMatchObject({ code: 'not-json', where: 'file' });
    expect(errorOf(() => fromFile('{"format":2}'))).toMatchObject({ code: 'other-format', where: 'format' });
    const wrong = { ...small, actions: [{ t: 0, action: { kind: 'wait', seconds: -3 } }] };
    expect(errorOf(() => fromFile(JSON.stringify(wrong)))).toMatchObject({
      code: 'not-an-attempt',
      where: 'actions[0].action.seconds',
    });
    const extra = { ...small, note: 'x' };
    expect(errorOf(() => fromFile(JSON.stringify(extra)))).toMatchObject({ code: 'not-an-attempt' });
  });

  it('read a code that mail has broken into lines', () => {
    const code = encode(small);
    expect(decode(`  ${code.slice(0, 30)}\r\n${code.slice(30)} \n`)).toEqual(small);
  });

  it('do not let a key reach a prototype', () => {
    const text = JSON.stringify(small).replace('"format":1', '"format":1,"__proto__":{"polluted":true}');
    errorOf(() => fromFile(text));
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  it('ask for a file where the attempt is too long, and the file takes it', () => {
    const actions = Array.from({ length: 1500 }, (_, i) => ({
      t: i * 7,
      action: { kind: 'mark' as const, text: `${(i * 7919) % 10_007}-${(i * 104_729) % 99_991}` },
    }));
    const long = { ...small, actions };
    expect(errorOf(() => encode(long))).toMatchObject({ code: 'too-long' });
    expect(fromFile(toFile(long))).toEqual(long);
  });
});

function forged(code: string, at: number, letter: string): string {
  const [prefix, length, , text] = code.split('.') as [string, string, string, string];
  const json = lz.decompressFromEncodedURIComponent(text)!;
  const i = at % json.length;
  const altered = json.slice(0, i) + letter + json.slice(i + 1);
  const packed = lz.compressToEncodedURIComponent(altered);
  return [prefix, length, checkValue(`${length}.${packed}`), packed].join('.');
}
