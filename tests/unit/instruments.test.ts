import { describe, expect, it } from 'vitest';
import { plantDescription } from '../../physics';
import type { Place, Snapshot } from '../../physics/types';
import {
  accuracyAt,
  biasSd,
  CATALOGUE,
  channelsAt,
  firstReadingCost,
  INSTRUMENTS,
  instrumentsAt,
  noiseSd,
  type ReadingRequest,
  read,
  type Scene,
  SENSES,
  stream,
  TOUCH,
} from '../../src/instruments';
import { FakeMachine } from '../support/fake-machine';

const setup = {
  plant: 'orifice-split',
  refrigerant: 'R-410A',
  conditions: { outdoor: 308.15, indoor: 300.15, wetBulb: 292.55, mode: 'cooling', altitude: 0 },
  faults: {},
} as const;

function sceneOf(snapshot: (t: number) => Snapshot, more: Partial<Scene> = {}): Scene {
  return { seed: 'seed-1', snapshot, atmosphere: 101_325, variableSpeed: false, ...more };
}

const machine = new FakeMachine(setup);
const steady = machine.steady();
const always = sceneOf(() => steady);

function placeOf(id: string, plant: 'orifice-split' | 'inverter-split' = 'orifice-split'): Place {
  const place = plantDescription(plant).places.find((each) => each.id === id);
  if (!place) throw new Error(`no place ${id}`);
  return place;
}

function ask(
  instrument: ReadingRequest['instrument'],
  place: Place,
  more: Partial<ReadingRequest> = {},
): ReadingRequest {
  const quantity = more.quantity ?? CATALOGUE[instrument].measures[0]!;
  const channel = channelsAt(instrument, place, quantity)[0]!;
  const { dwell } = CATALOGUE[instrument];
  const since = more.since ?? 1000;
  const defaults = { time: since + dwell, ordinal: 0, insulated: true, zeroed: true, compared: false };
  return { instrument, place, quantity, channel, since, ...defaults, ...more };
}

/** Mean error over many attempts: noise and bias go, what misuse adds stays. */
function meanError(scene: Scene, request: ReadingRequest, truth: number, attempts = 400): number {
  let sum = 0;
  for (let i = 0; i < attempts; i += 1) sum += read({ ...scene, seed: `many-${i}` }, request).value - truth;
  return sum / attempts;
}

describe('streams', () => {
  it('are uniform in [0, 1) and normal with variance one', () => {
    const source = stream('moments');
    const drawn = Array.from({ length: 20_000 }, () => source.normal());
    const mean = drawn.reduce((a, b) => a + b, 0) / drawn.length;
    const variance = drawn.reduce((a, b) => a + (b - mean) ** 2, 0) / drawn.length;
    // Four standard errors of 20,000 draws: 0.028 and 0.04.
    expect(Math.abs(mean)).toBeLessThan(0.03);
    expect(Math.abs(variance - 1)).toBeLessThan(0.05);
  });

  it('give pinned first values, so that old attempts keep their digits', () => {
    expect(stream('pinned').uniform()).toMatchInlineSnapshot(`0.4590905071236193`);
    expect(stream('pinned').normal()).toMatchInlineSnapshot(`0.18669877131469548`);
  });
});

describe('the bag', () => {
  it('names accuracy and display step for everything that an instrument measures, but for the senses', () => {
    for (const id of INSTRUMENTS.filter((each) => each !== 'eyes' && each !== 'hand')) {
      for (const quantity of CATALOGUE[id].measures) {
        expect(CATALOGUE[id].resolution[quantity], `${id} ${quantity}`).toBeGreaterThan(0);
        if (quantity === 'speed' || quantity === 'opening') continue;
        expect(accuracyAt(id, quantity, 1), `${id} ${quantity}`).toBeGreaterThan(0);
      }
    }
  });

  it('splits the accuracy band into bias and noise that add up to half of it (2 SD)', () => {
    const bias = biasSd('pipe-clamp', 'temperature', 290);
    const noise = noiseSd('pipe-clamp', 'temperature', 290);
    // 0.35 K; rounding to 0.1 K adds 0.029 K in quadrature.
    expect(Math.hypot(bias, noise)).toBeCloseTo(0.351, 2);
  });

  it('gives superheat of R-410A at about ±1.2 K (field figures: suction 0.83 K, thermometer 0.75 to 0.9 K)', () => {
    const kelvinPerPascal = 1 / 29.0e3;
    const pressure = accuracyAt('low-gauge', 'pressure', 1e6) * kelvinPerPascal;
    expect(pressure).toBeCloseTo(0.83, 1);
    const combined = Math.hypot(pressure, accuracyAt('pipe-clamp', 'temperature', 285));
    expect(combined).toBeGreaterThan(1);
    expect(combined).toBeLessThan(1.3);
  });

  it('offers every instrument that fits a place, the unwise ones too', () => {
    expect(instrumentsAt(placeOf('liquid-port'))).toEqual(['low-gauge', 'high-gauge']);
    expect(instrumentsAt(placeOf('suction-line'))).toEqual(['hand', 'pipe-clamp', 'air-probe']);
    expect(instrumentsAt(placeOf('outdoor-air'))).toEqual(['pipe-clamp', 'air-probe']);
    expect(instrumentsAt(placeOf('data-link', 'inverter-split'))).toEqual(['data-link']);
  });

  it('leaves no place of either machine without an instrument', () => {
    for (const plant of ['orifice-split', 'inverter-split'] as const) {
      for (const place of plantDescription(plant).places) {
        expect(instrumentsAt(place).length, `${plant} ${place.id}`).toBeGreaterThan(0);
      }
    }
  });

  it('counts caps, panels and wrapping into the first reading', () => {
    expect(firstReadingCost('pipe-clamp', placeOf('suction-line'))).toBe(15 + 30 + 90 + 5);
    expect(firstReadingCost('low-gauge', placeOf('suction-port'))).toBe(20 + 90 + 15 + 10);
    const lead = placeOf('compressor-lead');
    expect(firstReadingCost('clamp-ammeter', lead) - firstReadingCost('clamp-ammeter', lead, true)).toBe(60);
  });
});

describe('a reading', () => {
  const suctionLine = placeOf('suction-line');
  const clamp = ask('pipe-clamp', suctionLine);

  it('is the same whenever it is asked for', () => {
    expect(read(always, clamp)).toEqual(read(always, clamp));
  });

  it('differs by its own noise when taken again, by its bias in another attempt', () => {
    const values = Array.from({ length: 12 }, (_, ordinal) => read(always, { ...clamp, ordinal }).value);
    expect(new Set(values).size).toBeGreaterThan(1);
    const spread = Math.max(...values) - Math.min(...values);
    expect(spread).toBeLessThan(6 * noiseSd('pipe-clamp', 'temperature', 287));
    const other = Array.from({ length: 12 }, (_, i) => read({ ...always, seed: `s${i}` }, clamp).value);
    expect(Math.max(...other) - Math.min(...other)).toBeGreaterThan(spread);
  });

  it('lies within its accuracy in 95 of 100 attempts, and without a mean error', () => {
    const truth = steady.probes.suctionLineTemp.value;
    const errors = Array.from({ length: 2000 }, (_, i) => read({ ...always, seed: `a${i}` }, clamp).value - truth);
    const within = errors.filter((error) => Math.abs(error) <= 0.7).length / errors.length;
    expect(within).toBeGreaterThan(0.93);
    expect(within).toBeLessThan(0.97);
    // What six time constants leave of the step from the air to the pipe, and nothing else.
    const left = 0.0025 * (steady.probes.outdoorAirTemp.value - truth);
    expect(Math.abs(errors.reduce((a, b) => a + b, 0) / errors.length - left)).toBeLessThan(0.03);
  });

  it('is rounded to whole tenths of a degree Celsius and whole kilopascals', () => {
    const celsius = (read(always, clamp).value - 273.15) * 10;
    expect(Math.abs(celsius - Math.round(celsius))).toBeLessThan(1e-6);
    const gauge = read(always, ask('low-gauge', placeOf('suction-port'))).value / 1000;
    expect(Math.abs(gauge - Math.round(gauge))).toBeLessThan(1e-9);
  });

  it('shows gauge pressure by the air pressure of the site', () => {
    const request = ask('high-gauge', placeOf('liquid-port'));
    const truth = steady.probes.liquidPressure.value;
    expect(read(always, request).gauge).toBe(true);
    expect(meanError({ ...always, atmosphere: 84_000 }, request, truth - 84_000)).toBeGreaterThan(-4e3);
    expect(meanError({ ...always, atmosphere: 84_000 }, request, truth - 84_000)).toBeLessThan(4e3);
  });

  it('moves no other reading by being taken', () => {
    const next = { ...clamp, ordinal: 1 };
    const alone = read(always, next).value;
    read(always, clamp);
    read(always, ask('air-probe', placeOf('return-air')));
    expect(read(always, next).value).toBe(alone);
    // Another place, another instrument: other streams.
    const elsewhere = read(always, { ...clamp, place: placeOf('liquid-line'), channel: 'liquidLineTemp' });
    expect(elsewhere.value - steady.probes.liquidLineTemp.value).not.toBeCloseTo(
      alone - steady.probes.suctionLineTemp.value,
      6,
    );
  });
});

describe('misuse', () => {
  const suctionLine = placeOf('suction-line');
  const truth = steady.probes.suctionLineTemp.value;
  const air = steady.probes.outdoorAirTemp.value;

  it('a bare clamp in the wind is pulled to the air by the exposure of the place, half as far in still air', () => {
    const bare = ask('pipe-clamp', suctionLine, { insulated: false, time: 1300 });
    const pull = suctionLine.exposure! * (air - truth);
    expect(meanError(always, bare, truth)).toBeCloseTo(pull, 1);
    expect(read(always, bare).misuse).toEqual(['wind-on-clamp']);

    const stopped = machine.snapshot(machine.start('settled', { outdoorFanRunning: false }));
    const calm = sceneOf(() => stopped);
    expect(meanError(calm, bare, truth)).toBeCloseTo(pull / 2, 1);
    expect(read(calm, bare).misuse).toEqual(['uninsulated-clamp']);
    expect(read(always, ask('pipe-clamp', suctionLine)).misuse).toEqual([]);
  });

  it('read too early, a clamp is still between the air and the pipe; the words say how far', () => {
    const { lag } = CATALOGUE['pipe-clamp'];
    const at = (factor: number) => ask('pipe-clamp', suctionLine, { time: 1000 + Math.round(factor * lag) });
    const errors = [0, 1, 2, 5].map((factor) => meanError(always, at(factor), truth));
    // First order: 100, 37, 14 and 1 % of the step from the air to the pipe.
    const step = air - truth;
    errors.forEach((error, i) => {
      expect(error / step).toBeCloseTo([1, 0.368, 0.135, 0.007][i]!, 2);
    });
    const words = [0, 1, 2, 5].map((factor) => read(always, at(factor)).settled);
    expect(words).toEqual(['fresh', 'moving', 'nearly', 'settled']);
    expect(read(always, at(1)).misuse).toContain('instrument-not-settled');
    expect(read(always, at(5)).misuse).toEqual([]);
  });

  it('after a change of the machine the reading lags behind and says that the machine moves', () => {
    const states = [machine.start('standing')];
    for (let t = 1; t <= 900; t += 1) states.push(machine.step(states[t - 1]!, machine.defaultControls, 1));
    const starting = sceneOf((t) => machine.snapshot(states[Math.min(t, 900)]!));
    const early = read(starting, ask('pipe-clamp', suctionLine, { since: 0, time: 120 }));
    expect(early.settled).toBe('moving');
    expect(early.misuse).toContain('machine-not-settled');
    const late = read(starting, ask('pipe-clamp', suctionLine, { since: 0, time: 900 }));
    expect(late.settled).toBe('settled');
    // The sensor follows with its lag: it is behind the cooling pipe, on the warm side.
    const now = machine.snapshot(states[120]!).probes.suctionLineTemp.value;
    expect(meanError(starting, ask('pipe-clamp', suctionLine, { since: 0, time: 120 }), now)).toBeGreaterThan(0.5);
  });

  it('a gauge that was not zeroed carries the drift of its zero, and the altitude', () => {
    const request = ask('low-gauge', placeOf('suction-port'), { zeroed: false });
    const high = { ...always, atmosphere: 84_000 };
    const right = steady.probes.suctionPressure.value - 84_000;
    expect(meanError(high, request, right)).toBeGreaterThan(-17_325 - 2500);
    expect(meanError(high, request, right)).toBeLessThan(-17_325 + 2500);
    expect(read(high, request).misuse).toEqual(['not-zeroed']);
    expect(read(high, { ...request, zeroed: true }).misuse).toEqual([]);
  });

  it('over its span a gauge shows the end of the scale', () => {
    const hot = machine.snapshot(machine.start('settled', { outdoorFanRunning: false }));
    const reading = read(
      sceneOf(() => hot),
      ask('low-gauge', placeOf('liquid-port')),
    );
    expect(reading.value).toBe(3.5e6);
    expect(reading.misuse).toContain('over-range');
  });

  it('an ammeter on the output of an inverter reads high; on the supply, or on a fixed-speed machine, it does not', () => {
    const inverter = { ...always, variableSpeed: true };
    const amps = steady.probes.compressorCurrent.value;
    const lead = ask('clamp-ammeter', placeOf('compressor-lead', 'inverter-split'));
    expect(meanError(inverter, lead, amps) / amps).toBeCloseTo(0.12, 1);
    expect(read(inverter, lead).misuse).toEqual(['inverter-output']);
    const supply = ask('clamp-ammeter', placeOf('supply-lead', 'inverter-split'));
    expect(Math.abs(meanError(inverter, supply, amps) / amps)).toBeLessThan(0.01);
    expect(read(always, ask('clamp-ammeter', placeOf('compressor-lead'))).misuse).toEqual([]);
  });

  it('the wrong thermometer: a probe on a pipe is pulled to the air, a clamp in the air is slow', () => {
    const probe = ask('air-probe', suctionLine, { quantity: 'temperature', time: 1300 });
    expect(meanError(always, probe, truth)).toBeCloseTo(0.4 * (air - truth), 1);
    expect(read(always, probe).misuse).toEqual(['wrong-tool']);
    const hung = ask('pipe-clamp', placeOf('supply-air'));
    const supply = steady.probes.supplyAirTemp.value;
    expect(meanError(always, hung, supply)).toBeGreaterThan(2);
    expect(read(always, hung).settled).not.toBe('settled');
  });

  it('comparing thermometers brings each within the ice-bath tolerance', () => {
    let corrected = 0;
    for (let i = 0; i < 3000; i += 1) {
      const scene = { ...always, seed: `c${i}` };
      const plain = ask('pipe-clamp', suctionLine);
      const before = read(scene, plain).value - truth;
      const after = read(scene, { ...plain, compared: true }).value - truth;
      expect(Math.abs(after)).toBeLessThanOrEqual(Math.abs(before) + 1e-9);
      if (Math.abs(after) < Math.abs(before)) corrected += 1;
    }
    expect(corrected).toBeGreaterThan(0);
  });
});

describe('eye and hand', () => {
  it('say a word and never a number of the machine', () => {
    const glass = read(always, ask('eyes', placeOf('sight-glass')));
    expect(glass).toMatchObject({ channel: 'look:sightGlass', value: 0, word: 'clear', quantity: 'look' });
    const pipe = read(always, ask('hand', placeOf('discharge-pipe')));
    expect(pipe).toMatchObject({ channel: 'touch:dischargeLineTemp', word: 'too-hot-to-hold', quantity: 'touch' });
    expect(pipe.value).toBe(TOUCH.classes.length - 1);
  });

  it('see more dirt as more dirt, and the same at a second look', () => {
    const words = [0, 0.12, 0.3, 0.6].map((dirt) => {
      const snapshot = new FakeMachine({ ...setup, faults: { 'filter-dirty': dirt } }).steady();
      const scene = sceneOf(() => snapshot);
      const request = ask('eyes', placeOf('filter-face'));
      expect(read(scene, request).value).toBe(read(scene, { ...request, ordinal: 5, time: 2000 }).value);
      return read(scene, request).value;
    });
    expect(words).toEqual([0, 1, 2, 3]);
    expect(SENSES.filterDust.classes).toHaveLength(4);
  });
});

describe('the data link', () => {
  it('shows what the controller believes: a drifted sensor is shown drifted', () => {
    const snapshot = new FakeMachine({
      ...setup,
      plant: 'inverter-split',
      faults: { 'thermistor-drift:suctionLine': 5 },
    }).steady();
    const request = ask('data-link', placeOf('data-link', 'inverter-split'), {
      quantity: 'temperature',
      channel: 'sensor:suctionLine',
    });
    const scene = sceneOf(() => snapshot);
    expect(meanError(scene, request, snapshot.probes.suctionLineTemp.value)).toBeCloseTo(5, 1);
  });
});
