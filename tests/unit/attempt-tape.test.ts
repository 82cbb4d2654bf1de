import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CsvError, csvText, parseCsv } from '../../src/attempt/csv';
import { applyAction, startAttempt } from '../../src/attempt/reducer';
import type { AttemptState } from '../../src/attempt/state';
import { liveValues, parseTapeCsv, tapeCsv, tapeOf } from '../../src/attempt/tape';
import type { Action } from '../../src/attempt/types';
import { fakeWorld } from '../support/fake-machine';
import { samplePack } from '../support/pack-fixture';

const play = (state: AttemptState, ...actions: Action[]) => actions.reduce(applyAction, state);
const begin = () => startAttempt(samplePack(), 'front-shop', 'seed', fakeWorld);

const recorded = play(
  begin(),
  { kind: 'tape', on: true },
  { kind: 'wait', seconds: 60 },
  { kind: 'mark', text: 'compressor off, "now"' },
  { kind: 'control', change: { running: false } },
  { kind: 'wait', seconds: 120 },
  { kind: 'tape', on: false },
  { kind: 'wait', seconds: 60 },
);

describe('the tape', () => {
  it('holds a sample every five seconds while it ran, and none else', () => {
    const { samples } = tapeOf(recorded);
    const times = samples.map(({ time }) => time);
    expect(times[0]).toBe(185);
    expect(times.at(-1)).toBe(380);
    expect(times.every((time, i) => i === 0 || time - times[i - 1]! === 5)).toBe(true);
  });

  it('shows what happened to the machine', () => {
    const { channels, samples } = tapeOf(recorded);
    const speed = channels.findIndex(({ channel }) => channel === 'compressorSpeed');
    expect(samples[0]!.values[speed]).toBe(60);
    expect(samples.at(-1)!.values[speed]).toBeLessThan(20);
  });

  it('is computed: the same from the record, and live values are those of the tape', () => {
    expect(tapeOf(recorded)).toEqual(tapeOf(play(begin(), ...recorded.attempt.actions.map(({ action }) => action))));
    expect(liveValues(recorded, 200)).toEqual(tapeOf(recorded).samples.find(({ time }) => time === 200));
    expect(liveValues(begin())).toBeNull();
  });

  it('goes into CSV with names and units and comes back the same', () => {
    const tape = tapeOf(recorded);
    const text = tapeCsv(tape);
    expect(text.split('\r\n')[0]).toContain('compressorSpeed [Hz]');
    const back = parseTapeCsv(text);
    expect(back.columns).toEqual(tape.channels.map(({ channel, unit }) => ({ channel, unit })));
    expect(back.samples.map(({ time, values }) => ({ time, values }))).toEqual(tape.samples);
    expect(back.samples.filter(({ mark }) => mark !== '').map(({ time, mark }) => [time, mark])).toEqual([
      [245, 'compressor off, "now"'],
    ]);
  });

  it('does not hand a formula to a spreadsheet', () => {
    const state = play(
      recorded,
      { kind: 'tape', on: true },
      { kind: 'mark', text: '=1+1' },
      { kind: 'wait', seconds: 10 },
    );
    expect(tapeCsv(tapeOf(state))).toContain(",'=1+1\r\n");
  });

  it('says where a text is not a tape', () => {
    expect(() => parseTapeCsv('a,b\r\n')).toThrow('row 1, column 1');
    expect(() => parseTapeCsv('time [s],x [K],mark\r\n5,280\r\n')).toThrow('row 2');
    expect(() => parseTapeCsv('time [s],x [K],mark\r\n5,warm,\r\n')).toThrow('row 2, column 2');
    expect(() => parseTapeCsv('time [s],x,mark\r\n')).toThrow(CsvError);
  });
});

describe('CSV (RFC 4180)', () => {
  it('comes back the same whatever the fields hold', () => {
    const field = fc.string({ unit: fc.constantFrom('a', '"', ',', '\r', '\n', ' ', 'ñ') });
    const row = fc.array(field, { minLength: 1, maxLength: 5 }).filter((fields) => fields.join('') !== '');
    fc.assert(
      fc.property(fc.array(row, { maxLength: 6 }), (rows) => {
        expect(parseCsv(csvText(rows))).toEqual(rows);
      }),
      { seed: 3, numRuns: 2000 },
    );
  });

  it('takes files with or without a last line break, and refuses an open quote', () => {
    expect(parseCsv('a,b\r\nc,d')).toEqual(parseCsv('a,b\nc,d\n'));
    expect(parseCsv('a,')).toEqual([['a', '']]);
    expect(() => parseCsv('a,"b')).toThrow('row 1, column 2: a quote that is never closed');
    expect(() => parseCsv('"a"b')).toThrow('after a closing quote');
  });
});
