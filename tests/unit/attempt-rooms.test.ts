/** What single rooms ask, as an action of an attempt on a machine with many indoor units. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Action, ActionRefused, type AttemptState, apply, replay, start } from '../../src/attempt';
import { decode, encode } from '../../src/attempt/codes';
import type { Pack } from '../../src/attempt/pack/types';

const pack = (id: string) =>
  JSON.parse(readFileSync(new URL(`../../scenarios/${id}.pack.json`, import.meta.url), 'utf8')) as Pack;
const MILL = pack('river-mill');
const SCHOOL = pack('canal-school');
const studio = () => start(MILL, 'weaving-studio', 'rooms');
const music = () => start(SCHOOL, 'music-room', 'rooms');

const ask = (units: Record<string, 'off' | 'cooling' | 'heating'>): Action => ({ kind: 'control', change: { units } });
const noteOf = (state: AttemptState) => state.notes.at(-1)!;

describe('a room of several', () => {
  test('is switched off and on again: the unit follows, and as found is as found once more', () => {
    const off = apply(studio(), ask({ unit3: 'off' }));
    expect(off.controls.units).toEqual({ unit3: 'off' });
    const later = apply(off, { kind: 'wait', seconds: 300 });
    const unit = later.site.snapshot(later.events, later.clock).units?.find(({ id }) => id === 'unit3');
    expect(unit?.state).toBe('off');
    const on = apply(later, ask({ unit3: 'cooling' }));
    expect(on.controls.units).toBeUndefined();
    expect(on.controls).toEqual(studio().controls);
  });

  test('several are kept apart, one action after the other', () => {
    const both = [ask({ unit3: 'off' }), ask({ unit5: 'off' }), ask({ unit3: 'cooling' })].reduce(apply, studio());
    expect(both.controls.units).toEqual({ unit5: 'off' });
  });

  test('readings while a room is off are another state, as found again they are judged', () => {
    const read: Action = { kind: 'read', instrument: 'air-probe', place: 'supply-air@unit1', quantity: 'temperature' };
    expect(noteOf(apply(studio(), read)).state).toBe('running');
    expect(noteOf(apply(apply(studio(), ask({ unit3: 'off' })), read)).state).toBe('other');
  });

  test.each([
    ['a unit that is not there', studio, ask({ unit9: 'off' })],
    ['heat on two pipes that cool', studio, ask({ unit1: 'heating' })],
    ['what it asks already', studio, ask({ unit1: 'cooling' })],
  ])('refuses %s', (_what, begin, action) => {
    expect(() => apply(begin(), action)).toThrow(ActionRefused);
  });

  test('on three pipes it may ask for the other', () => {
    const turned = apply(music(), ask({ unit1: 'heating' }));
    expect(turned.controls.units).toEqual({ unit1: 'heating' });
  });

  test('goes through a code and comes back the same, places with their units too', () => {
    const acts: Action[] = [
      ask({ unit3: 'off' }),
      { kind: 'read', instrument: 'pipe-clamp', place: 'gas-pipe@unit3', quantity: 'temperature' },
      { kind: 'read', instrument: 'data-link', place: 'data-link', quantity: 'opening', channel: 'valveOpening@unit2' },
    ];
    const done = acts.reduce(apply, studio());
    const again = replay(decode(encode(done.attempt)), MILL);
    expect(again.notes).toEqual(done.notes);
    expect(again.controls).toEqual(done.controls);
  });
});

test('a sum of air is made of one unit, not of two', () => {
  const acts: Action[] = [
    { kind: 'read', instrument: 'air-probe', place: 'return-air@unit1', quantity: 'temperature' },
    { kind: 'read', instrument: 'air-probe', place: 'supply-air@unit1', quantity: 'temperature' },
    { kind: 'read', instrument: 'air-probe', place: 'supply-air@unit2', quantity: 'temperature' },
  ];
  const read = acts.reduce(apply, studio());
  const drop = (a: number, b: number) =>
    apply(read, {
      kind: 'sum',
      sum: 'air-drop',
      notes: [a, b],
      answer: read.notes[a]!.value - read.notes[b]!.value,
    }).sums.at(-1)!;
  expect(drop(0, 1)).toMatchObject({ right: true, inputsFit: true });
  expect(drop(0, 2).inputsFit).toBe(false);
});
