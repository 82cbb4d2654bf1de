import { ln, pow } from '../../math/elementary';
import { flattenIdeal } from '../ideal';
import type { HelmholtzEquation, IdealTerm } from '../refrigerantData';
import { type BlendModel, GAS_CONSTANT } from './blendModel';
import { MixingRules } from './mixingRules';

/**
 * A blend at its own composition as one equation: since all components of the multi-fluid model share tau and delta,
 * their terms only need to be weighed and strung together. Exactly the model, at the price of one long fluid.
 */
export function blendEquation(model: BlendModel): HelmholtzEquation {
  const { components, moleFractions: x, pairs: mixing } = model;
  const rules = new MixingRules(model);
  rules.set(Float64Array.from(x));
  const { tReducing, vReducing } = rules;
  const rhoReducing = 1 / vReducing;
  const power: [number, number, number, number][] = [];
  const gaussian: [number, number, number, number, number, number, number][] = [];
  const double: [number, number, number, number, number][] = [];
  const critical: [number, number, number, number, number, number, number, number][] = [];
  const ideal: IdealTerm[] = [];
  components.forEach(({ equation }, i) => {
    for (const [n, ...rest] of equation.residualPower) power.push([x[i] * n, ...rest]);
    for (const [n, ...rest] of equation.residualGaussian) gaussian.push([x[i] * n, ...rest]);
    for (const [n, ...rest] of equation.residualDouble ?? []) double.push([x[i] * n, ...rest]);
    for (const [n, ...rest] of equation.residualCritical ?? []) critical.push([x[i] * n, ...rest]);
    ideal.push(...weighedIdeal(equation, x[i], equation.tReducing / tReducing, rhoReducing / equation.rhoReducing));
  });
  let k = 0;
  for (let i = 0; i < components.length; i++) {
    for (let j = i + 1; j < components.length; j++, k++) {
      const weight = x[i] * x[j] * mixing[k].factor;
      for (const [n, ...rest] of mixing[k].departure) power.push([weight * n, ...rest]);
    }
  }
  return {
    molarMass: components.reduce((sum, { equation }, i) => sum + x[i] * equation.molarMass, 0),
    gasConstant: GAS_CONSTANT,
    tReducing,
    rhoReducing,
    ideal,
    residualPower: power,
    residualGaussian: gaussian,
    residualDouble: double,
    residualCritical: critical,
  };
}

/** Ideal-gas terms of a component, times its share, in the blend's tau and delta. */
function weighedIdeal(equation: HelmholtzEquation, x: number, tauRatio: number, deltaRatio: number): IdealTerm[] {
  const { base, power, planck } = flattenIdeal(equation);
  // ln(delta) itself comes once with every equation; the shares sum to 1.
  const constant = base[0] + base[2] * ln(tauRatio) + ln(deltaRatio) + ln(x);
  return [
    { kind: 'offset', a1: x * constant, a2: x * base[1] * tauRatio },
    { kind: 'logTau', a: x * base[2] },
    { kind: 'power', terms: pairs(power).map(([n, t]) => [x * n * pow(tauRatio, t), t]) },
    { kind: 'planckEinstein', terms: pairs(planck).map(([n, t]) => [x * n, t * tauRatio]) },
  ];
}

function pairs(flat: readonly number[]): (readonly [number, number])[] {
  return flat.flatMap((n, i) => (i % 2 === 0 ? [[n, flat[i + 1]] as const] : []));
}
