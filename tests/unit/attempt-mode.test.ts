/** The other mode of a heat pump, asked for at its thermostat in the middle of a callout. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Action, apply, replay, snapshotAt, start } from '../../src/attempt';
import { machineFacts } from '../../src/attempt/pack/facts';
import { readPack } from '../../src/attempt/pack/load';

const outcome = readPack(
  readFileSync(new URL('../../scenarios/larch-valley.pack.json', import.meta.url), 'utf8'),
  machineFacts,
);
if (!outcome.ok) throw new Error('the pack is not in order');
const { pack } = outcome;

test('the machine stops, turns over and cools; asked back, it is as found again', () => {
  const actions: Action[] = [
    { kind: 'control', change: { mode: 'cooling', setPoint: 290.15 } },
    { kind: 'wait', seconds: 900 },
    { kind: 'control', change: { mode: 'heating', setPoint: 295.15 } },
  ];
  const begun = start(pack, 'sawmill-office', 'mode');
  const { attempt } = actions.reduce(apply, begun);
  const state = replay(attempt, pack);
  const cooling = snapshotAt(state, state.clock - 30);
  expect(cooling.controller).toBe('cooling');
  expect(cooling.turnedOver).toBe(true);
  expect(state.controls).toEqual(begun.controls);
});

test('a room that asks for what it was called to is no change', () => {
  const begun = start(pack, 'sawmill-office', 'mode');
  expect(() => apply(begun, { kind: 'control', change: { mode: 'heating' } })).toThrow();
});
