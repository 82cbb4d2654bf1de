import { describe, expect, it } from 'vitest';
import type { MarkedSum } from '../../src/attempt/state';
import { markSum, type SumAction } from '../../src/attempt/sums';
import type { Note, SumKind } from '../../src/attempt/types';
import type { ChannelName, InstrumentId, PhysicalQuantity } from '../../src/instruments';
import { fakeSaturation } from '../support/fake-machine';

// The fake table: dew 280 K at 1 MPa, 1 K per 30 kPa; bubble 2 K lower.
const SITE = 85_000;
const world = { saturation: fakeSaturation, atmosphere: SITE };

function note(
  index: number,
  instrument: InstrumentId,
  quantity: PhysicalQuantity,
  channel: ChannelName,
  value: number,
): Note {
  return {
    index,
    action: index,
    instrument,
    place: 'somewhere',
    quantity,
    channel,
    value,
    gauge: quantity === 'pressure',
    time: 100,
    settled: 'settled',
    misuse: [],
    star: 'none',
    state: 'running',
    epoch: 0,
    cost: 60,
    spilt: 0,
    struck: false,
  };
}

/** 915 kPa gauge + 85 kPa = 1 MPa: dew 280 K. 2715 kPa gauge = 2.8 MPa: bubble 338 K. */
const notes: readonly Note[] = [
  note(0, 'low-gauge', 'pressure', 'suctionPressure', 915_000),
  note(1, 'pipe-clamp', 'temperature', 'suctionLineTemp', 287.0),
  note(2, 'high-gauge', 'pressure', 'liquidPressure', 2_715_000),
  note(3, 'pipe-clamp', 'temperature', 'liquidLineTemp', 331.5),
  note(4, 'air-probe', 'temperature', 'returnAirTemp', 300.1),
  note(5, 'air-probe', 'temperature', 'supplyAirTemp', 289.0),
  note(6, 'eyes', 'look', 'look:sightGlass', 0),
];

function mark(sum: SumKind, inputs: readonly number[], answer: number, saturation?: number, earlier: MarkedSum[] = []) {
  const action: SumAction = {
    kind: 'sum',
    sum,
    notes: inputs,
    answer,
    ...(saturation !== undefined && { saturation }),
  };
  return markSum(action, notes, earlier, world, { time: 200, action: 9 });
}

describe('sums', () => {
  it('marks each kind right when it is right', () => {
    expect(mark('superheat', [0, 1], 7, 280)).toMatchObject({ right: true, credit: 1, slip: null, inputsFit: true });
    expect(mark('superheat', [1, 0], 7)).toMatchObject({ right: true, expected: 7 });
    expect(mark('subcooling', [2, 3], 6.5, 338)).toMatchObject({ right: true, inputsFit: true });
    expect(mark('saturation-temperature', [0], 280)).toMatchObject({ right: true });
    expect(mark('saturation-temperature', [2], 338)).toMatchObject({ right: true });
    expect(mark('absolute-pressure', [0], 1_000_000)).toMatchObject({ right: true });
    expect(mark('air-drop', [4, 5], 11.1)).toMatchObject({ right: true });
    expect(mark('air-drop', [5, 4], 11.1)).toMatchObject({ right: true });
  });

  it('takes its tolerance from display steps and table reading, not from the instruments', () => {
    // Table to half a degree, gauge half a kPa (0.017 K), clamp half a tenth, answer to a tenth: 0.63 K.
    expect(mark('superheat', [0, 1], 7.6)).toMatchObject({ right: true });
    expect(mark('superheat', [0, 1], 7.7)).toMatchObject({ right: false });
    expect(mark('superheat', [0, 1], 6.3)).toMatchObject({ right: false });
  });

  it('marks the subtraction from the saturation temperature that the trainee read off', () => {
    expect(mark('superheat', [0, 1], 6.6, 280.4)).toMatchObject({ right: true, expected: 287 - 280.4 });
    expect(mark('superheat', [0, 1], 7, 280.4)).toMatchObject({ right: false, slip: 'arithmetic' });
  });

  it('names the slip', () => {
    // Bubble for dew: 278 K.
    expect(mark('superheat', [0, 1], 9)).toMatchObject({ slip: 'wrong-saturation-line' });
    expect(mark('superheat', [0, 1], 9, 278)).toMatchObject({ slip: 'wrong-saturation-line' });
    // 915 kPa taken as absolute: 277.17 K.
    expect(mark('superheat', [0, 1], 9.83, 277.17)).toMatchObject({ slip: 'gauge-for-absolute' });
    expect(mark('absolute-pressure', [0], 915_000)).toMatchObject({ slip: 'gauge-for-absolute' });
    // Sea level at 1,400 m: 1.0163 MPa.
    expect(mark('absolute-pressure', [0], 1_016_325)).toMatchObject({ slip: 'altitude' });
    // 7 K said as 12.6 (°F left standing), 3.9 (turned twice), −13.9 (as a temperature).
    for (const answer of [12.6, 3.9, -13.9]) {
      expect(mark('superheat', [0, 1], answer)).toMatchObject({ slip: 'difference-as-temperature' });
    }
    expect(mark('subcooling', [2, 3], -6.5)).toMatchObject({ slip: 'reversed' });
    expect(mark('superheat', [0, 1], 30)).toMatchObject({ slip: 'arithmetic' });
    expect(mark('superheat', [0, 1], 7, 283)).toMatchObject({ right: false, slip: 'saturation-misread' });
  });

  it('gives the first answer full credit, the second half, then shows the sum', () => {
    const first = mark('superheat', [0, 1], 30);
    expect(first).toMatchObject({ trial: 1, credit: 0, shown: false });
    const second = mark('superheat', [0, 1], 7, undefined, [first]);
    expect(second).toMatchObject({ trial: 2, credit: 0.5, shown: true });
    const wrongAgain = mark('superheat', [0, 1], 20, undefined, [first]);
    expect(wrongAgain).toMatchObject({ trial: 2, credit: 0, shown: true });
    expect(mark('superheat', [0, 1], 7, undefined, [first, wrongAgain])).toMatchObject({ trial: 3, credit: 0 });
    // A right one cannot be earned twice.
    expect(mark('superheat', [0, 1], 7, undefined, [mark('superheat', [0, 1], 7)])).toMatchObject({ credit: 0 });
  });

  it('says when the notes are not those that the sum is made of, and marks the arithmetic all the same', () => {
    expect(mark('superheat', [2, 1], -53, 340)).toMatchObject({ inputsFit: false, right: true });
  });

  it('refuses what no sum can be made of', () => {
    expect(() => mark('superheat', [0], 1)).toThrow('bad-inputs');
    expect(() => mark('superheat', [0, 6], 1)).toThrow('bad-inputs');
    expect(() => mark('air-drop', [4], 1)).toThrow('bad-inputs');
    expect(() => mark('air-drop', [4, 99], 1)).toThrow('no-such-note');
    expect(() => mark('air-drop', [], 1)).toThrow('bad-inputs');
  });
});
