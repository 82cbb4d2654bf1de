/**
 * Air through a coil: what one coil's air side needs to know for one evaluation, and saturated-air look-ups for a wet coil.
 * Source of the wet-coil method: enthalpy potential with Lewis number 1, ASHRAE Handbook—HVAC Systems and Equipment
 * (air-cooling and dehumidifying coils), from memory.
 */
import {
  cpMoist,
  dewPoint,
  enthalpy,
  hSaturated,
  humidityRatioFromWetBulb,
  tFromEnthalpy,
  wSaturated,
} from '../air/moistAir';

const T_LOW = 223.15;
const T_HIGH = 343.15;
const STEP = 0.5;
const COUNT = Math.round((T_HIGH - T_LOW) / STEP) + 1;

/** Enthalpy (J/kg dry air) and humidity ratio of saturated air at one pressure: Hermite tables, −50…70 °C, held beyond. */
export class SaturatedAir {
  private readonly h = new Float64Array(COUNT);
  private readonly dh = new Float64Array(COUNT);
  private readonly w = new Float64Array(COUNT);
  private readonly dw = new Float64Array(COUNT);

  constructor(readonly pressure: number) {
    const d = 0.05;
    for (let i = 0; i < COUNT; i++) {
      const t = T_LOW + i * STEP;
      this.h[i] = hSaturated(t, pressure);
      this.dh[i] = ((hSaturated(t + d, pressure) - hSaturated(t - d, pressure)) / (2 * d)) * STEP;
      this.w[i] = wSaturated(t, pressure);
      this.dw[i] = ((wSaturated(t + d, pressure) - wSaturated(t - d, pressure)) / (2 * d)) * STEP;
    }
  }

  enthalpy(t: number): number {
    return hermite(this.h, this.dh, t);
  }

  humidity(t: number): number {
    return hermite(this.w, this.dw, t);
  }

  /** dh_sat/dT, J/(kg K) */
  slope(t: number): number {
    return (hermite(this.h, this.dh, t + 0.05) - hermite(this.h, this.dh, t - 0.05)) * 10;
  }
}

const tables = new Map<number, SaturatedAir>();

/** The tables of one air pressure (Pa), made once. */
export function saturatedAt(pressure: number): SaturatedAir {
  let air = tables.get(pressure);
  if (air === undefined) {
    air = new SaturatedAir(pressure);
    tables.set(pressure, air);
  }
  return air;
}

function hermite(values: Float64Array, slopes: Float64Array, t: number): number {
  const held = t < T_LOW ? T_LOW : t > T_HIGH - 1e-9 ? T_HIGH - 1e-9 : t;
  const position = (held - T_LOW) / STEP;
  const i = position | 0;
  const f = position - i;
  const g = 1 - f;
  return (
    (1 + 2 * f) * g * g * values[i] +
    f * g * g * slopes[i] +
    f * f * (3 - 2 * f) * values[i + 1] -
    f * f * g * slopes[i + 1]
  );
}

/** State and conductance of the air that enters one coil. */
export class AirStream {
  /** dry-air mass flow, kg/s */
  massFlow = 0.5;
  temperature = 300.5;
  humidity = 0.0105;
  enthalpy = 50000.5;
  dewPoint = 285.5;
  cp = 1020.5;
  /** air-side conductance of the whole coil at this flow, W/K */
  ua = 500.5;

  constructor(readonly saturated: SaturatedAir) {}

  setState(temperature: number, humidity: number): void {
    this.temperature = temperature;
    this.humidity = humidity;
    this.enthalpy = enthalpy(temperature, humidity);
    this.dewPoint = dewPoint(humidity, this.saturated.pressure);
    this.cp = cpMoist(humidity);
  }

  setWetBulb(temperature: number, wetBulb: number): void {
    this.setState(temperature, humidityRatioFromWetBulb(temperature, wetBulb, this.saturated.pressure));
  }
}

/** Temperature of air leaving after losing `heat` (W) in total and `water` (kg/s). */
export function leavingTemperature(air: AirStream, heat: number, water: number): number {
  return tFromEnthalpy(air.enthalpy - heat / air.massFlow, air.humidity - water / air.massFlow);
}
