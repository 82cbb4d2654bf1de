import type { BlendPair } from '../blend/blendModel';

/**
 * How pairs of components mix in the multi-fluid model; the name gives their order, which matters.
 * [L04] E.W. Lemmon, R.T. Jacobsen, "Equations of State for Mixtures of, R-134a, R-143a, and R-152a",
 * J. Phys. Chem. Ref. Data 33 (2004) 593-620, doi 10.1063/1.1649997; its parameters rewritten as beta and gamma.
 * [B22] I.H. Bell, "Mixture Models for Refrigerants R-1234yf/134a, R-1234yf/1234ze(E), and R-134a/1234ze(E) and Interim
 * Models for R-125/1234yf, R-1234ze(E)/227ea, and R-1234yf/152a", J. Phys. Chem. Ref. Data 51 (2022) 013103, doi
 * 10.1063/5.0086060.
 * [B23] I.H. Bell, "Mixture Model for Refrigerant Pairs R-32/1234yf, R-32/1234ze(E), R-1234ze(E)/227ea,
 * R-1234yf/152a, and R-125/1234yf", J. Phys. Chem. Ref. Data 52 (2023) 013101, doi 10.1063/5.0135368.
 * [B25] I.H. Bell, "Modeling Mixtures Containing Refrigerants: Updated Interaction Parameters", J. Chem. Eng. Data (2025),
 * doi 10.1021/acs.jced.4c00699.
 * Figures transcribed from the mixture data of the general-purpose library CoolProp 8.0.1dev.
 */
export const PAIRS = {
  /** [L04] */
  R32_R125: {
    betaT: 1,
    gammaT: 1.0420900819859578,
    betaV: 1,
    gammaV: 1.00509341280861,
    factor: 1,
    departure: [
      [-0.0072955, 2, 4.5, 1],
      [0.078035, 5, 0.57, 1],
      [0.61007, 1, 1.9, 2],
      [0.64246, 3, 1.2, 2],
      [0.014965, 9, 0.5, 2],
      [-0.34049, 2, 2.6, 3],
      [0.085658, 3, 11.4, 3],
      [-0.064429, 6, 4.5, 3],
    ],
  },
  /** [L04] */
  R32_R134a: {
    betaT: 1,
    gammaT: 1.0114075810415268,
    betaV: 1,
    gammaV: 1.013720725881553,
    factor: 1,
    departure: [
      [0.22909, 1, 1.9, 1],
      [0.094074, 3, 0.25, 1],
      [0.00039876, 8, 0.07, 1],
      [0.021113, 1, 2, 2],
    ],
  },
  /** [L04] */
  R125_R134a: {
    betaT: 1,
    gammaT: 1.000599138705133,
    betaV: 1,
    gammaV: 0.999297721470804,
    factor: 1,
    departure: [
      [-0.013073, 1, 7.4, 1],
      [0.018259, 3, 0.35, 1],
      [8.1299e-6, 11, 10, 2],
      [0.0078496, 2, 5.3, 3],
    ],
  },
  /** [B23] */
  R32_R1234yf: {
    betaT: 1.011011,
    gammaT: 0.966965,
    betaV: 1.007852,
    gammaV: 1.037663,
    factor: 1,
    departure: [
      [0.449487, 1, 2.538296, 1],
      [-0.099708, 2, 3.208604, 1],
      [0.098897, 3, 0.456509, 1],
    ],
  },
  /** [B23] */
  R32_R1234zeE: {
    betaT: 1.005148,
    gammaT: 0.946105,
    betaV: 0.999032,
    gammaV: 1.029821,
    factor: 1,
    departure: [
      [0.295192, 1, 0.500457, 1],
      [-0.737904, 2, 3.104735, 1],
      [0.542962, 3, 3.20172, 1],
      [-0.201951, 4, 2.567118, 1],
    ],
  },
  /** [B23] */
  R125_R1234yf: {
    betaT: 0.999969,
    gammaT: 0.998028,
    betaV: 0.998226,
    gammaV: 1.006068,
    factor: 1,
    departure: [[-0.032013, 1, 0.00803, 1]],
  },
  /** [B22] */
  R1234yf_R134a: {
    betaT: 1.000026,
    gammaT: 0.987057,
    betaV: 1.000272,
    gammaV: 1.003747,
    factor: 1,
    departure: [
      [0.0519, 1, 2.477314, 1],
      [-0.011472, 2, 0.070541, 2],
    ],
  },
  /** [B22] */
  R1234yf_R1234zeE: {
    betaT: 0.998886,
    gammaT: 0.999309,
    betaV: 0.999302,
    gammaV: 0.99859,
    factor: 1,
    departure: [
      [0.07264, 1, 0.012645, 1],
      [-0.024746, 2, 3.992829, 2],
    ],
  },
  /** [B22] */
  R134a_R1234zeE: {
    betaT: 0.998593,
    gammaT: 0.992009,
    betaV: 0.998995,
    gammaV: 0.998621,
    factor: 1,
    departure: [
      [0.068889, 1, 3.184446, 1],
      [-0.004831, 2, 2.034344, 2],
    ],
  },
  /** [B25] */
  R125_R1234zeE: { betaT: 0.994388, gammaT: 1.00124, betaV: 1.028287, gammaV: 0.999334, factor: 0, departure: [] },
} as const satisfies Readonly<Record<string, BlendPair>>;
