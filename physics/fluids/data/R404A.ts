import type { RefrigerantData } from '../refrigerantData';

/**
 * R-404A: R-125/R-143a/R-134a, 44/52/4 % by mass; pseudo-pure equation with separate bubble and dew lines.
 * Equation of state: E.W. Lemmon, "Pseudo-Pure Fluid Equations of State for the Refrigerant Blends R-410A, R-404A,
 * R-507A, and R-407C", Int. J. Thermophys. 24 (2003) 991-1006, doi 10.1023/A:1025048800563.
 * Surface tension: M. Okada, T. Shibata, Y. Sato, Y. Higashi, "Surface Tension of HFC Refrigerant Mixtures", Int. J.
 * Thermophys. 20 (1999) 119-127, doi 10.1023/A:1021482231102.
 * Ancillary lines (start values only; bubble and dew pressure: part of the published equation): fits carried by the
 * general-purpose library CoolProp 8.0.1dev.
 * Transport: our fit of ln(property) to saturated-state values computed with CoolProp 8.0.1dev from 223 K to about 0.8
 * of the critical pressure (largest deviation 0.02 %); outside that span it is an extrapolation.
 */
export const R404A: RefrigerantData = {
  id: 'R-404A',
  pseudoPure: true,
  safetyClass: 'A1',
  gwp: { value: 3922, source: 'IPCC AR4 (2007), 100 years, weighed by mass' },
  molarMass: 0.0976038,
  gasConstant: 8.314472,
  tCritical: 345.27,
  pCritical: 3734800,
  tReducing: 345.27,
  rhoReducing: 4939.999999999999,
  validRange: { tMin: 200, tMax: 500, pMax: 50000000 },
  ideal: [
    { kind: 'lead', a1: 7.00407, a2: 7.98695 },
    { kind: 'logTau', a: -1 },
    { kind: 'power', terms: [[-18.8664, -0.3]] },
    {
      kind: 'planckEinstein',
      terms: [
        [0.63078, 1.19617],
        [3.5979, 2.32861],
        [5.0335, 5.00188],
      ],
    },
  ],
  residualPower: [
    [6.10984, 1, 0.67, 0],
    [-7.79453, 1, 0.91, 0],
    [0.0183377, 1, 5.96, 0],
    [0.26227, 2, 0.7, 0],
    [-0.00351688, 2, 6, 0],
    [0.0116181, 4, 0.3, 0],
    [0.00105992, 6, 0.7, 0],
    [0.850922, 1, 1.7, 1],
    [-0.520084, 1, 3.3, 1],
    [-0.0464225, 1, 7, 1],
    [0.62119, 2, 2.05, 1],
    [-0.195505, 2, 4.3, 1],
    [0.336159, 3, 2.7, 1],
    [-0.0376062, 4, 1.8, 1],
    [-0.00636579, 7, 1.25, 1],
    [-0.0758262, 2, 12, 2],
    [-0.0221041, 3, 6, 2],
    [0.0310441, 4, 8.7, 2],
    [0.0132798, 4, 11.6, 2],
    [0.0689437, 2, 13, 3],
    [-0.0507525, 3, 17, 3],
    [0.0161382, 5, 16, 3],
  ],
  residualGaussian: [],
  ancillaries: {
    pL: {
      form: 'exp',
      tReducing: 345.27,
      scale: 3734800,
      terms: [
        [0.061067, 0.54],
        [-6.5646, 0.965],
        [-3.6162, 3.7],
        [-3.9771, 9],
      ],
    },
    pV: {
      form: 'exp',
      tReducing: 345.27,
      scale: 3734800,
      terms: [
        [-0.00026863, 0.1],
        [-6.5757, 0.972],
        [-4.1802, 3.8],
        [-7.9102, 9],
      ],
    },
    rhoL: {
      form: 'linear',
      tReducing: 345.27,
      scale: 4939.999999999999,
      terms: [
        [-0.011777381218307114, 0.066],
        [2.4984547682678704, 0.377],
        [5367.932468376006, 8.99],
        [-3732982.2139762687, 13.98],
        [33474569.015986394, 15.982],
        [-80262239.93679684, 17.954],
      ],
    },
    rhoV: {
      form: 'exp',
      tReducing: 345.27,
      scale: 4939.999999999999,
      terms: [
        [-5.211849919504925, 0.485],
        [6.798109425092868, 0.989],
        [-13.038945243933242, 1.431],
        [9.654798311425768, 2.495],
        [-320.35292894913766, 7.812],
        [80023.04183470446, 15.329],
      ],
    },
  },
  transport: {
    muLiquid: [-10.1190891, 4.3780897, -10.072052, 23.6344931, -17.2115565, 3.78419114],
    muVapour: [-10.3667759, -2.78764836, -2.39598621, 16.7982826, -23.5523173, 9.45782532],
    kLiquid: [-3.22863864, 1.85384921, -1.8628352, 2.90324067, -2.33384355, 1.33687454],
    kVapour: [-3.31273419, -3.28135812, 7.67304463, -23.0196103, 33.5167906, -21.9847412],
    sigma: { tCritical: 345.18, terms: [[0.0536, 1.249]] },
  },
};
