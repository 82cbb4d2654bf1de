/** A coil that cools its air and draws part of it in again: the air at its face, as warm and as moist as the mixture. */
import { tFromEnthalpy } from '../air/moistAir';
import type { AirStream } from './airStream';

/** K (and K of the heat that moisture carries) within which the face is found, and marches spent on it at most. */
const CLOSE = 1e-9;
const TRIES = 24;
/** K that a kg/kg of moisture weighs beside a K: heat of evaporation over heat capacity */
const MOISTURE = 2485;

/** W and kg/s that the air loses in the coil. */
interface Lost {
  readonly heat: number;
  readonly water: number;
}

/**
 * Sets `air` to the state at the face of a coil that draws in the share `share` of its own outlet air, the rest being outdoor
 * air (K, kg/kg): with a share r the face has r/(1-r) times what the coil takes less than outdoors. One root in temperature
 * and moisture, nearly linear and with about the same slope in both: each guess is mixed with the one before.
 * @param march the coil in `air` as it is set
 */
export function faceOfOwnAir(
  air: AirStream,
  outdoor: number,
  humidity: number,
  share: number,
  march: () => Lost,
): void {
  air.setState(outdoor, humidity);
  const outdoorEnthalpy = air.enthalpy;
  const returned = share / ((1 - share) * air.massFlow);
  let before = { t: outdoor, w: humidity, missT: Number.NaN, missW: Number.NaN };
  for (let k = 0; k < TRIES; k++) {
    const { heat, water } = march();
    const { temperature: t, humidity: w } = air;
    const mixedW = humidity - returned * water;
    const missT = tFromEnthalpy(outdoorEnthalpy - returned * heat, mixedW) - t;
    const missW = mixedW - w;
    if (Math.abs(missT) < CLOSE && MOISTURE * Math.abs(missW) < CLOSE) return;
    const dT = missT - before.missT;
    const dW = MOISTURE * (missW - before.missW);
    const back = k === 0 ? 0 : (missT * dT + MOISTURE * missW * dW) / (dT * dT + dW * dW);
    const nextT = t + missT - back * (k === 0 ? 0 : t - before.t + missT - before.missT);
    const nextW = w + missW - back * (k === 0 ? 0 : w - before.w + missW - before.missW);
    before = { t, w, missT, missW };
    air.setState(nextT, nextW);
  }
}
