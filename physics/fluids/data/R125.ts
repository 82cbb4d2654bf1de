import type { RefrigerantData } from '../refrigerantData';

/**
 * Pentafluoroethane, CF3CHF2.
 * Equation of state: Eric W. Lemmon, Richard T Jacobsen, "A New Functional Form and New Fitting Techniques for
 * Equations of State with Application to Pentafluoroethane (HFC-125)", J. Phys. Chem. Ref. Data 34 (2005) 69-108, doi
 * 10.1063/1.1797813.
 * Surface tension: A. Mulero, I. Cachadiña, M. I. Parra, "Recommended Correlations for the Surface Tension of Common
 * Fluids", J. Phys. Chem. Ref. Data 41 (2012) 043105-1:13, doi 10.1063/1.4768782.
 * Ancillary lines (start values only): fits carried by the general-purpose library CoolProp 8.0.1dev.
 * Transport: our fit of ln(property) to saturated-state values computed with CoolProp 8.0.1dev from 223 K to about 0.8
 * of the critical pressure (largest deviation 0.018 %); outside that span it is an extrapolation.
 */
export const R125: RefrigerantData = {
  id: 'R-125',
  pseudoPure: false,
  safetyClass: 'A1',
  gwp: { value: 3500, source: 'IPCC AR4 (2007), 100 years' },
  molarMass: 0.1200214,
  gasConstant: 8.314472,
  tCritical: 339.173,
  pCritical: 3617700,
  acentric: 0.3052,
  tReducing: 339.173,
  rhoReducing: 4779,
  validRange: { tMin: 172.52, tMax: 500, pMax: 60000000 },
  ideal: [
    { kind: 'lead', a1: 37.2674, a2: 8.88404 },
    { kind: 'logTau', a: -1 },
    { kind: 'power', terms: [[-49.8651, -0.1]] },
    {
      kind: 'planckEinstein',
      terms: [
        // biome-ignore lint/suspicious/noApproximativeNumericConstant: a coefficient of the paper, not ln 10
        [2.303, 0.92578],
        [5.086, 2.22895],
        [7.3, 5.03283],
      ],
    },
  ],
  residualPower: [
    [5.28076, 1, 0.669, 0],
    [-8.67658, 1, 1.05, 0],
    [0.7501127, 1, 2.75, 0],
    [0.7590023, 2, 0.956, 0],
    [0.01451899, 4, 1, 0],
    [4.777189, 1, 2, 1],
    [-3.330988, 1, 2.75, 1],
    [3.775673, 2, 2.38, 1],
    [-2.290919, 2, 3.37, 1],
    [0.8888268, 3, 3.47, 1],
    [-0.6234864, 4, 2.63, 1],
    [-0.04127263, 5, 3.45, 1],
    [-0.08455389, 1, 0.72, 2],
    [-0.1308752, 5, 4.23, 2],
    [0.008344962, 1, 0.2, 3],
  ],
  residualGaussian: [],
  residualDouble: [
    [-1.532005, 2, 4.5, 2, 1.7],
    [-0.05883649, 3, 29, 3, 7],
    [0.02296658, 5, 24, 3, 6],
  ],
  ancillaries: {
    pS: {
      form: 'exp',
      tReducing: 339.173,
      scale: 3617700,
      terms: [
        [6.579940225415354, 0.885],
        [-13.12524401279829, 0.925],
        [-10.469172276861269, 3.474],
        [13.618968108873503, 3.812],
        [-8.0692357647322, 4.411],
        [55.965891794172045, 15.538],
      ],
    },
    rhoL: {
      form: 'linear',
      tReducing: 339.173,
      scale: 4779,
      terms: [
        [2.2016016101218163, 0.356],
        [9.66884730895765, 2.347],
        [-38.74092529625786, 3.224],
        [45.90185095955414, 4.03],
        [-68.77471029167359, 7.525],
        [3782.012676140688, 16.03],
      ],
    },
    rhoV: {
      form: 'exp',
      tReducing: 339.173,
      scale: 4779,
      terms: [
        [-2.0301408267555248, 0.352],
        [-1.7694859385413004, 0.604],
        [-2.66520428063493, 1.327],
        [-2012.3802928260302, 9.866],
        [4435.166819598504, 10.986],
        [-67300.56720486972, 18.158],
      ],
    },
  },
  transport: {
    muLiquid: [-10.1403071, 4.78343294, -9.08661617, 27.2814972, -39.2767562, 26.624786],
    muVapour: [-10.3845251, -3.85297831, 5.67622082, -4.45568667, 1.46434841, -1.96221363],
    kLiquid: [-3.05721055, -1.43253489, 11.7564654, -25.0353613, 29.9735888, -14.7454883],
    kVapour: [-2.72021808, -7.36742607, 13.4415324, -14.1843006, 6.95831214, -4.37926241],
    sigma: { tCritical: 339.173, terms: [[0.05252, 1.237]] },
  },
};
