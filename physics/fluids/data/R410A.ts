import type { RefrigerantData } from '../refrigerantData';

/**
 * R-410A, 50/50 % by mass; pseudo-pure equation with separate bubble and dew lines.
 * Equation of state: E.W. Lemmon, "Pseudo-Pure Fluid Equations of State for the Refrigerant Blends R-410A, R-404A,
 * R-507A, and R-407C", Int. J. Thermophys. 24 (2003) 991-1006, doi 10.1023/A:1025048800563.
 * Surface tension: M. Okada, T. Shibata, Y. Sato, Y. Higashi, Int. J. Thermophys. 20 (1999) 119-127, doi
 * 10.1023/A:1021482231102.
 * Ancillary lines (start values only; bubble and dew pressure: part of the published equation): fits carried by the
 * general-purpose library CoolProp 8.0.1dev.
 * Transport: our fit of ln(property) to saturated-state values computed with CoolProp 8.0.1dev from 223 K to about
 * 0.8 of the critical pressure (largest deviation 0.022 %); outside that span it is an extrapolation.
 */
export const R410A: RefrigerantData = {
  id: 'R-410A',
  pseudoPure: true,
  safetyClass: 'A1',
  gwp: { value: 2088, source: 'IPCC AR4 (2007), 100 years, weighed by mass' },
  molarMass: 0.07258540000000001,
  gasConstant: 8.314472,
  tCritical: 344.494,
  pCritical: 4901200,
  tReducing: 344.494,
  rhoReducing: 6323.999999999999,
  validRange: { tMin: 200, tMax: 500, pMax: 50000000 },
  ideal: [
    { kind: 'lead', a1: 36.8871, a2: 7.15807 },
    { kind: 'logTau', a: -1 },
    { kind: 'power', terms: [[-46.87575, -0.1]] },
    {
      kind: 'planckEinstein',
      terms: [
        [2.0623, 2.02326],
        [5.9751, 5.00154],
        [1.5612, 11.2484],
      ],
    },
  ],
  residualPower: [
    [0.987252, 1, 0.44, 0],
    [-1.03017, 1, 1.2, 0],
    [1.17666, 1, 2.97, 0],
    [-0.138991, 2, 2.95, 0],
    [0.00302373, 5, 0.2, 0],
    [-2.53639, 1, 1.93, 1],
    [-1.9668, 2, 1.78, 1],
    [-0.83048, 3, 3, 1],
    [0.172477, 5, 0.2, 1],
    [-0.261116, 5, 0.74, 1],
    [-0.0745473, 5, 3, 1],
    [0.679757, 1, 2.1, 2],
    [-0.652431, 1, 4.3, 2],
    [0.0553849, 4, 0.25, 2],
    [-0.071097, 4, 7, 2],
    [-0.000875332, 9, 4.7, 2],
    [0.020076, 2, 13, 3],
    [-0.0139761, 2, 16, 3],
    [-0.018511, 4, 25, 3],
    [0.0171939, 5, 17, 3],
    [-0.00482049, 6, 7.4, 3],
  ],
  residualGaussian: [],
  ancillaries: {
    pL: {
      form: 'exp',
      tReducing: 344.494,
      scale: 4901200,
      terms: [
        [-7.2818, 1],
        [2.5093, 1.8],
        [-3.2695, 2.4],
        [-2.8022, 4.9],
      ],
    },
    pV: {
      form: 'exp',
      tReducing: 344.494,
      scale: 4901200,
      terms: [
        [-7.4411, 1],
        [1.9883, 1.6],
        [-2.4925, 2.4],
        [-3.2633, 5],
      ],
    },
    rhoL: {
      form: 'linear',
      tReducing: 344.494,
      scale: 6323.999999999999,
      terms: [
        [17.62376356934577, 0.732],
        [-34.49248423230781, 1.165],
        [229.4790425881445, 2.775],
        [-332.5139608181856, 3.462],
        [23058076.978355706, 15.531],
        [-31889422.797179773, 15.944],
      ],
    },
    rhoV: {
      form: 'exp',
      tReducing: 344.494,
      scale: 6323.999999999999,
      terms: [
        [-25.00709732482156, 0.676],
        [34.83593078562833, 0.844],
        [-33.0203056956001, 1.394],
        [61.19129776625034, 2.411],
        [-63.32155175461899, 3.149],
        [149.8912653231937, 7.808],
      ],
    },
  },
  transport: {
    muLiquid: [-10.1680715, 4.83019262, -14.4299894, 40.0701171, -44.0981065, 18.5494965],
    muVapour: [-10.2150202, -4.96721446, 9.78928596, -11.2353454, 5.10239599, -2.04314846],
    kLiquid: [-3.26192874, 3.18798018, -5.10519174, 10.9204787, -12.9385771, 6.42017682],
    kVapour: [-3.3077089, -3.69389321, 10.6095969, -31.1261284, 43.2892038, -26.5031623],
    sigma: { tCritical: 344.56, terms: [[0.06238, 1.246]] },
  },
};
