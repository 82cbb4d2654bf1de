import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import * as air from '../../physics/air/moistAir';
import { PhysicsError } from '../../physics/errors';
import { stream, Worst } from './fluids/reference';

/** The reference implementation of the same handbook chapter, in °C; it ships no types. */
type Psychrolib = Record<`Get${string}`, (...values: number[]) => number> & {
  SI: number;
  SetUnitSystem(system: number): void;
};
const psychrolib = createRequire(import.meta.url)('psychrolib') as Psychrolib;
psychrolib.SetUnitSystem(psychrolib.SI);

const K = 273.15;

/** Air states from -20 to 55 °C, 2 to 100 % humidity, sea level to 3000 m. */
function eachState(check: (t: number, w: number, p: number, humidity: number) => void): void {
  const random = stream(21);
  for (let i = 0; i < 1000; i++) {
    const t = -20 + 75 * random();
    const p = psychrolib.GetStandardAtmPressure(3000 * random());
    const humidity = 0.02 + 0.98 * random();
    check(t, psychrolib.GetHumRatioFromRelHum(t, humidity, p), p, humidity);
  }
}

test('saturation pressure agrees with psychrolib to 2e-7 of the value from -100 to 200 °C, over ice and liquid', () => {
  const worst = new Worst();
  for (let t = -99.9; t <= 200; t += 0.37) {
    worst.note('spline', air.pWaterSat(t + K) / psychrolib.GetSatVapPres(t) - 1);
    worst.note('equation', air.saturationCurve(t + K, t <= 0.01) / psychrolib.GetSatVapPres(t) - 1);
  }
  expect(worst.over({ spline: 2e-7, equation: 1e-13 })).toEqual([]);
});

// ASHRAE Handbook—Fundamentals (2017), chapter 1, table 3: 0.6112 kPa at 0 °C, 2.3389 at 20 °C, 7.3838 at 40 °C,
// 101.42 at 100 °C (figures from memory; they print four to five digits).
test.each([
  [0, 611.2, 0.1],
  [20, 2338.9, 0.4],
  [40, 7383.8, 1],
  [100, 101420, 15],
])('water boils at %d °C under %d Pa', (t, p, tolerance) => {
  expect(Math.abs(air.pWaterSat(t + K) - p)).toBeLessThan(tolerance);
});

test('humidity, enthalpy and density agree with psychrolib', () => {
  const worst = new Worst();
  eachState((t, w, p, humidity) => {
    worst.note('w', air.humidityRatioFromRelHum(t + K, humidity, p) / w - 1);
    worst.note('relHum', air.relHum(t + K, w, p) / psychrolib.GetRelHumFromHumRatio(t, w, p) - 1);
    worst.note('wSaturated', air.wSaturated(t + K, p) / psychrolib.GetSatHumRatio(t, p) - 1);
    worst.note('h', air.enthalpy(t + K, w) - psychrolib.GetMoistAirEnthalpy(t, w));
    worst.note('hSaturated', air.hSaturated(t + K, p) - psychrolib.GetSatAirEnthalpy(t, p));
    worst.note('density', air.density(t + K, w, p) / psychrolib.GetMoistAirDensity(t, w, p) - 1);
    worst.note('dryDensity', air.dryDensity(t + K, w, p) * psychrolib.GetMoistAirVolume(t, w, p) - 1);
    worst.note('t', air.tFromEnthalpy(air.enthalpy(t + K, w), w) - t - K);
    worst.note('vapour', air.vapourPressure(w, p) / psychrolib.GetVapPresFromHumRatio(w, p) - 1);
  });
  expect(worst.over({ w: 1e-6, relHum: 1e-6, wSaturated: 1e-6, vapour: 1e-12 })).toEqual([]);
  expect(worst.over({ h: 1e-6, hSaturated: 0.01, density: 1e-6, dryDensity: 1e-6, t: 1e-9 })).toEqual([]);
});

// psychrolib bisects to 0.001 K, so that is what can be compared. Just below 0 °C the handbook's relations for liquid and
// for ice overlap and both bulbs satisfy them: there this module takes the liquid one, and psychrolib either.
test('wet bulb and dew point agree with psychrolib to 0.001 K', () => {
  const worst = new Worst();
  let overlapping = 0;
  eachState((t, w, p) => {
    const ours = air.wetBulb(t + K, w, p) - K;
    const theirs = psychrolib.GetTWetBulbFromHumRatio(t, w, p);
    if (ours >= 0 && theirs < 0) overlapping++;
    else worst.note('wetBulb', ours - theirs);
    worst.note('dewPoint', Math.min(air.dewPoint(w, p) - K, t) - psychrolib.GetTDewPointFromHumRatio(t, w, p));
  });
  expect(worst.over({ wetBulb: 1e-3, dewPoint: 1e-3 })).toEqual([]);
  expect(overlapping).toBeLessThan(20);
});

test('humidity from both bulbs agrees with psychrolib and inverts the wet bulb', () => {
  const worst = new Worst();
  eachState((t, w, p) => {
    const bulb = air.wetBulb(t + K, w, p);
    worst.note('inverse', air.humidityRatioFromWetBulb(t + K, bulb, p) - w);
    const theirs = psychrolib.GetHumRatioFromTWetBulb(t, bulb - K, p);
    worst.note('psychrolib', air.humidityRatioFromWetBulb(t + K, bulb, p) - theirs);
  });
  expect(worst.over({ inverse: 1e-10, psychrolib: 1e-8 })).toEqual([]);
});

test('dew point inverts the saturation line, through the triple point too', () => {
  for (const t of [-99, -20, -0.2, 0, 0.005, 0.01, 0.02, 0.3, 12, 40, 180]) {
    const p = 2e6;
    expect(air.dewPoint(air.wSaturated(t + K, p), p)).toBeCloseTo(t + K, 3);
  }
});

test('specific heat of moist air is the slope of its enthalpy', () => {
  expect(air.cpMoist(0.01)).toBeCloseTo((air.enthalpy(310, 0.01) - air.enthalpy(300, 0.01)) / 10, 9);
});

test('pressure of the standard atmosphere agrees with psychrolib', () => {
  for (const altitude of [-300, 0, 250, 1600, 3000]) {
    expect(air.pressureAtAltitude(altitude) / psychrolib.GetStandardAtmPressure(altitude)).toBeCloseTo(1, 13);
  }
});

test.each<[string, string, () => number]>([
  ['air below -100 °C', 'range', () => air.pWaterSat(170)],
  ['air above 200 °C', 'range', () => air.wSaturated(480, 2e6)],
  ['no number', 'bad-input', () => air.pWaterSat(Number.NaN)],
  ['boiling water', 'range', () => air.wSaturated(380, 101325)],
  ['a humidity above 1', 'bad-input', () => air.humidityRatioFromRelHum(300, 1.01, 101325)],
  ['a wet bulb above the dry bulb', 'range', () => air.humidityRatioFromWetBulb(300, 301, 101325)],
  ['a wet bulb that not even dry air has', 'range', () => air.humidityRatioFromWetBulb(310, 280, 101325)],
  ['a wet bulb of supersaturated air', 'range', () => air.wetBulb(290, 0.03, 101325)],
  ['the dew point of dry air', 'range', () => air.dewPoint(0, 101325)],
  ['an altitude in space', 'range', () => air.pressureAtAltitude(5e4)],
])('refuses %s', (_what, code, run) => {
  expect(run).toThrow(PhysicsError);
  expect(run).toThrow(expect.objectContaining({ code }));
});
