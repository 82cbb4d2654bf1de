import type { RefrigerantData } from '../refrigerantData';

/**
 * R-407C: R-32/R-125/R-134a, 23/25/52 % by mass; pseudo-pure equation with separate bubble and dew lines.
 * Equation of state: E.W. Lemmon, "Pseudo-Pure Fluid Equations of State for the Refrigerant Blends R-410A, R-404A,
 * R-507A, and R-407C", Int. J. Thermophys. 24 (2003) 991-1006, doi 10.1023/A:1025048800563.
 * Surface tension: M. Okada, T. Shibata, Y. Sato, Y. Higashi, "Surface Tension of HFC Refrigerant Mixtures", Int. J.
 * Thermophys. 20 (1999) 119-127, doi 10.1023/A:1021482231102.
 * Ancillary lines (start values only; bubble and dew pressure: part of the published equation): fits carried by the
 * general-purpose library CoolProp 8.0.1dev.
 * Transport: our fit of ln(property) to saturated-state values computed with CoolProp 8.0.1dev from 223 K to about 0.8
 * of the critical pressure (largest deviation 0.042 %); outside that span it is an extrapolation.
 */
export const R407C: RefrigerantData = {
  id: 'R-407C',
  pseudoPure: true,
  safetyClass: 'A1',
  gwp: { value: 1774, source: 'IPCC AR4 (2007), 100 years, weighed by mass' },
  molarMass: 0.08620359999999999,
  gasConstant: 8.314472,
  tCritical: 359.345,
  pCritical: 4631700,
  tReducing: 359.345,
  rhoReducing: 5260.000046401775,
  validRange: { tMin: 200, tMax: 500, pMax: 50000000 },
  ideal: [
    { kind: 'lead', a1: 2.13194, a2: 8.05008 },
    { kind: 'logTau', a: -1 },
    { kind: 'power', terms: [[-14.3914, -0.4]] },
    {
      kind: 'planckEinstein',
      terms: [
        [1.4245, 2.40437],
        [3.9419, 5.25122],
        [3.1209, 13.3632],
      ],
    },
  ],
  residualPower: [
    [1.0588, 1, 0.241, 0],
    [-1.12018, 1, 0.69, 0],
    [0.629064, 1, 2.58, 0],
    [-0.351953, 2, 1.15, 0],
    [0.00455978, 5, 0.248, 0],
    [-1.75725, 1, 2.15, 1],
    [-1.12009, 2, 2.43, 1],
    [0.0277353, 2, 5.3, 1],
    [0.898881, 3, 0.76, 1],
    [-1.17591, 3, 1.48, 1],
    [0.0818591, 5, 0.24, 1],
    [-0.0794097, 5, 2.86, 1],
    [-1.04047e-5, 5, 8, 1],
    [0.233779, 1, 3.3, 2],
    [-0.29179, 1, 4.7, 2],
    [0.0154776, 4, 0.45, 2],
    [-0.0314579, 4, 8.4, 2],
    [-0.00442552, 2, 16.2, 3],
    [-0.0101254, 4, 26, 3],
    [0.00915953, 5, 16, 3],
    [-0.003615, 6, 8.7, 3],
  ],
  residualGaussian: [],
  ancillaries: {
    pL: {
      form: 'exp',
      tReducing: 359.345,
      scale: 4631700,
      terms: [
        [0.48722, 0.54],
        [-6.6959, 0.925],
        [-1.4165, 2.7],
        [-2.5109, 4.7],
      ],
    },
    pV: {
      form: 'exp',
      tReducing: 359.345,
      scale: 4631700,
      terms: [
        [-0.086077, 0.4],
        [-6.6364, 0.965],
        [-2.4648, 3.1],
        [-3.4776, 5],
      ],
    },
    rhoL: {
      form: 'linear',
      tReducing: 359.345,
      scale: 5260.000046401775,
      terms: [
        [5.484626525085367, 0.478],
        [-132.94290476910828, 1.487],
        [390.0966131363964, 1.826],
        [-414.8227131759332, 2.271],
        [424.49338909908334, 3.413],
        [-294.0732646506709, 4.019],
      ],
    },
    rhoV: {
      form: 'exp',
      tReducing: 359.345,
      scale: 5260.000046401775,
      terms: [
        [-0.7403294274768993, 0.36],
        [-3.4984730053164657, 0.53],
        [-3.707063870074722, 1.61],
        [9.58842271173753, 2.842],
        [-15.235025525549892, 3.565],
        [7.7277234094710305, 7.376],
      ],
    },
  },
  transport: {
    muLiquid: [-10.1683077, 4.69505366, -7.66369806, 9.61307054, 5.45883541, -7.79858331],
    muVapour: [-10.5034353, -0.226552403, -14.3053156, 41.0617247, -45.7771758, 16.2256444],
    kLiquid: [-3.18881987, 2.55326144, -4.49876167, 9.16034762, -9.26197061, 4.34377263],
    kVapour: [-3.24534386, -3.77475457, 9.89354102, -28.3749969, 41.1571888, -26.7627663],
    sigma: { tCritical: 359.23, terms: [[0.05877, 1.229]] },
  },
};
