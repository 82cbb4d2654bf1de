import { PhysicsError } from '../errors';
import { exp, ln, pow } from '../math/elementary';

/**
 * Moist air: ASHRAE Handbook—Fundamentals (2017), chapter 1 "Psychrometrics". Perfect-gas relations.
 * SI: K, Pa, kg water per kg dry air, J per kg dry air (0 J/kg = dry air and liquid water at 0 °C).
 */

const ZERO_C = 273.15;
/** Where the saturation line changes from ice to liquid, K. */
const TRIPLE_POINT = 273.16;
/** Ratio of the molar masses of water and dry air. */
const MASS_RATIO = 0.621945;
/** Gas constant of dry air, J/(kg K). */
const R_DRY = 287.042;
const CP_DRY = 1006;
const CP_STEAM = 1860;
const LATENT_0 = 2501e3;
/** Limits of the saturation equations, K. */
const T_MIN = 173.15;
const T_MAX = 473.15;

/** Chapter 1, eq. 5 (ice, -100 ... 0 °C): C1 ... C7. */
const ICE = [-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019];
/** Chapter 1, eq. 6 (liquid, 0 ... 200 °C): C8 ... C13. */
const WATER = [-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673];

/** The published saturation pressure over ice or liquid, Pa. */
export function saturationCurve(t: number, ice: boolean): number {
  if (ice) {
    const [c1, c2, c3, c4, c5, c6, c7] = ICE;
    return exp(c1 / t + c2 + t * (c3 + t * (c4 + t * (c5 + t * c6))) + c7 * ln(t));
  }
  const [c8, c9, c10, c11, c12, c13] = WATER;
  return exp(c8 / t + c9 + t * (c10 + t * (c11 + t * c12)) + c13 * ln(t));
}

/** d ln(p_ws)/dT of the published equation. */
function lnSlope(t: number, ice: boolean): number {
  if (ice) {
    const [c1, , c3, c4, c5, c6, c7] = ICE;
    return -c1 / (t * t) + c3 + t * (2 * c4 + t * (3 * c5 + t * 4 * c6)) + c7 / t;
  }
  const [c8, , c10, c11, c12, c13] = WATER;
  return -c8 / (t * t) + c10 + t * (2 * c11 + t * 3 * c12) + c13 / t;
}

/**
 * Spline of the saturation pressure: cells of half a kelvin, each a cubic, ice up to the triple point and liquid above,
 * so that the kink stays sharp. Departs from the equation by less than 1e-7 of the value.
 */
const CELLS_PER_KELVIN = 2;
const ICE_CELLS = 201;
const CELLS = ICE_CELLS + 400;
const SPLINE_START = TRIPLE_POINT - ICE_CELLS / CELLS_PER_KELVIN;
const SPLINE = buildSpline();

function buildSpline(): Float64Array {
  const table = new Float64Array(CELLS * 4);
  const step = 1 / CELLS_PER_KELVIN;
  for (let i = 0; i < CELLS; i++) {
    const ice = i < ICE_CELLS;
    const t = SPLINE_START + i * step;
    const a = saturationCurve(t, ice);
    const b = saturationCurve(t + step, ice);
    const da = a * lnSlope(t, ice) * step;
    const db = b * lnSlope(t + step, ice) * step;
    table[4 * i] = a;
    table[4 * i + 1] = da;
    table[4 * i + 2] = 3 * (b - a) - 2 * da - db;
    table[4 * i + 3] = 2 * (a - b) + da + db;
  }
  return table;
}

/** Saturation pressure of water (ice below 0.01 °C), Pa. Throws `range` outside -100 ... 200 °C. */
export function pWaterSat(temperature: number): number {
  if (!(temperature >= T_MIN && temperature <= T_MAX)) throw outside(temperature);
  const u = (temperature - SPLINE_START) * CELLS_PER_KELVIN;
  const cell = u | 0;
  const k = 4 * cell;
  const t = u - cell;
  return SPLINE[k] + t * (SPLINE[k + 1] + t * (SPLINE[k + 2] + t * SPLINE[k + 3]));
}

/** Humidity ratio of saturated air, kg/kg. Throws `range` where water would boil. */
export function wSaturated(temperature: number, p: number): number {
  const pw = pWaterSat(temperature);
  if (!(p > pw)) throw boiling(temperature, p);
  return (MASS_RATIO * pw) / (p - pw);
}

/** Enthalpy of saturated air, J per kg dry air. */
export function hSaturated(temperature: number, p: number): number {
  return enthalpy(temperature, wSaturated(temperature, p));
}

/** Specific enthalpy of moist air, J per kg dry air (eq. 30). */
export function enthalpy(temperature: number, w: number): number {
  const t = temperature - ZERO_C;
  return CP_DRY * t + w * (LATENT_0 + CP_STEAM * t);
}

/** Dry-bulb temperature from enthalpy and humidity ratio, K. */
export function tFromEnthalpy(h: number, w: number): number {
  return ZERO_C + (h - LATENT_0 * w) / (CP_DRY + CP_STEAM * w);
}

/** Specific heat of moist air, J/(K kg dry air). */
export function cpMoist(w: number): number {
  return CP_DRY + CP_STEAM * w;
}

/** Partial pressure of the vapour, Pa. */
export function vapourPressure(w: number, p: number): number {
  return (p * w) / (MASS_RATIO + w);
}

/** Humidity ratio from relative humidity 0 ... 1. Throws `bad-input`. */
export function humidityRatioFromRelHum(temperature: number, relativeHumidity: number, p: number): number {
  if (!(relativeHumidity >= 0 && relativeHumidity <= 1)) {
    throw new PhysicsError('bad-input', `relative humidity ${relativeHumidity} is outside 0 to 1`, {
      relativeHumidity,
    });
  }
  const pw = relativeHumidity * pWaterSat(temperature);
  if (!(p > pw)) throw boiling(temperature, p);
  return (MASS_RATIO * pw) / (p - pw);
}

/** Relative humidity; above 1 where the air is supersaturated. */
export function relHum(temperature: number, w: number, p: number): number {
  return vapourPressure(w, p) / pWaterSat(temperature);
}

/** Right side of eq. 33 (liquid on the wick) or 35 (ice): humidity ratio from both bulbs; may come out negative. */
function wetBulbRelation(temperature: number, wetBulbTemp: number, p: number, ice: boolean): number {
  const t = temperature - ZERO_C;
  const wb = wetBulbTemp - ZERO_C;
  const ws = wSaturated(wetBulbTemp, p);
  return ice
    ? ((2830 - 0.24 * wb) * ws - 1.006 * (t - wb)) / (2830 + 1.86 * t - 2.1 * wb)
    : ((2501 - 2.326 * wb) * ws - 1.006 * (t - wb)) / (2501 + 1.86 * t - 4.186 * wb);
}

/** Humidity ratio from dry and wet bulb. Throws `range` where no air can have both. */
export function humidityRatioFromWetBulb(temperature: number, wetBulbTemp: number, p: number): number {
  if (!(wetBulbTemp <= temperature)) {
    throw new PhysicsError('range', `wet bulb ${wetBulbTemp} K lies above the dry bulb ${temperature} K`, {
      temperature,
      wetBulb: wetBulbTemp,
    });
  }
  const w = wetBulbRelation(temperature, wetBulbTemp, p, wetBulbTemp < ZERO_C);
  if (w < 0) {
    throw new PhysicsError('range', `wet bulb ${wetBulbTemp} K is below that of dry air at ${temperature} K`, {
      temperature,
      wetBulb: wetBulbTemp,
    });
  }
  return w;
}

/** Thermodynamic wet-bulb temperature, K, to 1e-9 K. Throws `range` for supersaturated air. */
export function wetBulb(temperature: number, w: number, p: number): number {
  const dry = wSaturated(temperature, p);
  if (!(w >= 0 && w <= dry * (1 + 1e-9))) {
    throw new PhysicsError('range', `humidity ratio ${w} is outside 0 to ${dry} (saturation at ${temperature} K)`, {
      temperature,
      humidityRatio: w,
      saturated: dry,
    });
  }
  if (w >= dry) return temperature;
  // Just below 0 °C the two relations overlap; liquid is taken where it has a solution.
  const ice = temperature < ZERO_C || wetBulbRelation(temperature, ZERO_C, p, false) > w;
  let low = ice ? T_MIN : ZERO_C;
  let high = ice ? Math.min(temperature, ZERO_C) : temperature;
  let fLow = wetBulbRelation(temperature, low, p, ice) - w;
  let fHigh = wetBulbRelation(temperature, high, p, ice) - w;
  // Illinois false position.
  for (let i = 0; i < 100 && high - low > 1e-9; i++) {
    const middle = high - (fHigh * (high - low)) / (fHigh - fLow);
    const f = wetBulbRelation(temperature, middle, p, ice) - w;
    if (f === 0 || Math.abs(f) < 1e-15) return middle;
    if (f > 0) {
      if (fHigh > 0 && middle === high) break;
      high = middle;
      fHigh = f;
      fLow *= 0.5;
    } else {
      low = middle;
      fLow = f;
      fHigh *= 0.5;
    }
  }
  return 0.5 * (low + high);
}

/** Dew-point (below 0.01 °C frost-point) temperature, K. Throws `range` outside -100 ... 200 °C. */
export function dewPoint(w: number, p: number): number {
  const pw = vapourPressure(w, p);
  let low = 0;
  let high = CELLS - 1;
  if (!(pw >= SPLINE[0] && pw <= pWaterSat(T_MAX))) {
    throw new PhysicsError('range', `no dew point between ${T_MIN} and ${T_MAX} K at humidity ratio ${w}, ${p} Pa`, {
      humidityRatio: w,
      pressure: p,
    });
  }
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (SPLINE[4 * middle] <= pw) low = middle;
    else high = middle - 1;
  }
  const k = 4 * low;
  let t = 0.5;
  for (let i = 0; i < 12; i++) {
    const value = SPLINE[k] + t * (SPLINE[k + 1] + t * (SPLINE[k + 2] + t * SPLINE[k + 3])) - pw;
    const step = value / (SPLINE[k + 1] + t * (2 * SPLINE[k + 2] + 3 * t * SPLINE[k + 3]));
    t -= step;
    if (Math.abs(step) < 1e-13) break;
  }
  // Between the ends of the ice and the liquid line lies a gap of some millipascal.
  return SPLINE_START + (low + Math.min(t, 1)) / CELLS_PER_KELVIN;
}

/** Mass of dry air in a cubic metre of moist air, kg/m3 (eq. 26). */
export function dryDensity(temperature: number, w: number, p: number): number {
  return p / (R_DRY * temperature * (1 + w / MASS_RATIO));
}

/** Mass of a cubic metre of moist air, kg/m3. */
export function density(temperature: number, w: number, p: number): number {
  return dryDensity(temperature, w, p) * (1 + w);
}

/** Standard-atmosphere pressure at an altitude, Pa (eq. 3). Throws `range` outside -5000 ... 11000 m. */
export function pressureAtAltitude(altitude: number): number {
  if (!(altitude >= -5000 && altitude <= 11000)) {
    throw new PhysicsError('range', `altitude ${altitude} m is outside -5000 to 11000 m`, { altitude });
  }
  return 101325 * pow(1 - 2.25577e-5 * altitude, 5.2559);
}

function outside(temperature: number): PhysicsError {
  return new PhysicsError(
    Number.isNaN(temperature) ? 'bad-input' : 'range',
    `air temperature ${temperature} K is outside ${T_MIN} to ${T_MAX} K`,
    { temperature, tMin: T_MIN, tMax: T_MAX },
  );
}

function boiling(temperature: number, p: number): PhysicsError {
  return new PhysicsError('range', `saturated air is impossible at ${temperature} K and ${p} Pa: water boils`, {
    temperature,
    pressure: p,
  });
}
