import { PhysicsError } from '../errors';
import * as L from './layout';
import type { RefrigerantId } from './refrigerantData';

/** What a table says when it is asked for something beyond it. */

interface Limits {
  readonly id: RefrigerantId;
  readonly pMin: number;
  readonly pMax: number;
  readonly tMin: number;
  readonly tMax: number;
}

export function notANumber(id: RefrigerantId, what: string, value: number): PhysicsError {
  return new PhysicsError('bad-input', `${id}: ${what} is not a number`, { fluid: id, [what]: value });
}

export function tableEnd({ id, pMin, pMax }: Limits, p: number): PhysicsError {
  if (Number.isNaN(p)) return notANumber(id, 'pressure', p);
  return new PhysicsError(
    'table-end',
    `${id}: pressure ${p} Pa is outside the tables, ${pMin.toFixed(0)} to ${pMax.toFixed(0)} Pa`,
    { fluid: id, pressure: p, pMin, pMax },
  );
}

export function beyondSaturation(id: RefrigerantId, temperature: number, tMin: number, tMax: number): PhysicsError {
  if (Number.isNaN(temperature)) return notANumber(id, 'temperature', temperature);
  return new PhysicsError(
    'table-end',
    `${id}: saturation temperature ${temperature} K is outside the tables, ${tMin.toFixed(2)} to ${tMax.toFixed(2)} K`,
    { fluid: id, temperature, tMin, tMax },
  );
}

export function outOfRange({ id, tMin, tMax }: Limits, block: Float64Array, h: number): PhysicsError {
  const pressure = block[L.P];
  const hMin = block[L.H_L] + 1 / block[L.INV_SPAN_L];
  const hMax = block[L.H_V] + 1 / block[L.INV_SPAN_V];
  const limits = `${hMin.toFixed(0)} to ${hMax.toFixed(0)} J/kg (${tMin} to ${tMax} K)`;
  return new PhysicsError('range', `${id}: enthalpy ${h} J/kg at ${pressure} Pa is outside ${limits}`, {
    fluid: id,
    pressure,
    enthalpy: h,
    hMin,
    hMax,
    tMin,
    tMax,
  });
}

export function frozen({ id, tMin }: Limits, block: Float64Array, temperature: number): PhysicsError {
  const pressure = block[L.P];
  return new PhysicsError(
    'range',
    `${id}: liquid at ${temperature.toFixed(3)} K, ${pressure} Pa would be below its triple point, ${tMin} K`,
    { fluid: id, pressure, temperature, tMin },
  );
}

export function wrongSide(
  { id, tMin, tMax }: Limits,
  block: Float64Array,
  temperature: number,
  side: 'vapour' | 'liquid',
): PhysicsError {
  if (Number.isNaN(temperature)) return notANumber(id, 'temperature', temperature);
  const pressure = block[L.P];
  const from = side === 'vapour' ? block[L.T_DEW] : tMin;
  const to = side === 'vapour' ? tMax : block[L.T_BUB];
  const limits = `${from.toFixed(3)} to ${to.toFixed(3)} K`;
  return new PhysicsError('range', `${id}: ${temperature} K at ${pressure} Pa is outside the ${side} side, ${limits}`, {
    fluid: id,
    pressure,
    temperature,
    tMin: from,
    tMax: to,
  });
}

export function beyondSide(
  id: RefrigerantId,
  pressure: number,
  name: 'entropy' | 'temperature',
  value: number,
  limit: number,
): PhysicsError {
  if (Number.isNaN(value)) return notANumber(id, name, value);
  return new PhysicsError('range', `${id}: ${name} ${value} at ${pressure} Pa is beyond ${limit}`, {
    fluid: id,
    pressure,
    [name]: value,
    limit,
  });
}
