import type { RefrigerantData } from '../refrigerantData';

/**
 * Difluoromethane, CH2F2.
 * Equation of state: R. Tillner-Roth, A. Yokozeki, "An international standard equation of state for difluoromethane
 * for temperatures from the triple point at 136.34 K to 435 K and pressures up to 70 MPa", J. Phys. Chem. Ref.
 * Data 26 (1997) 1273-1328, doi 10.1063/1.556002.
 * Surface tension: A. Mulero, I. Cachadiña, M. I. Parra, J. Phys. Chem. Ref. Data 41 (2012) 043105-1:13, doi
 * 10.1063/1.4768782.
 * Ancillary lines (start values only): fits carried by the general-purpose library CoolProp 8.0.1dev.
 * Transport: our fit of ln(property) to saturated-state values computed with CoolProp 8.0.1dev from 223 K to about
 * 0.8 of the critical pressure (largest deviation 0.065 %); outside that span it is an extrapolation.
 */
export const R32: RefrigerantData = {
  id: 'R-32',
  pseudoPure: false,
  safetyClass: 'A2L',
  gwp: { value: 675, source: 'IPCC AR4 (2007), 100 years' },
  molarMass: 0.052024,
  gasConstant: 8.314471,
  tCritical: 351.255,
  pCritical: 5782000,
  acentric: 0.2769,
  tReducing: 351.255,
  rhoReducing: 8150.084599999999,
  validRange: { tMin: 136.34, tMax: 435, pMax: 70000000 },
  ideal: [
    { kind: 'lead', a1: -8.258096, a2: 6.353098 },
    { kind: 'logTau', a: 3.004486 },
    {
      kind: 'planckEinstein',
      terms: [
        [1.160761, 2.2718538],
        [2.645151, 11.914421],
        [5.794987, 5.1415638],
        [1.129475, 32.768217],
      ],
    },
  ],
  residualPower: [
    [1.046634, 1, 0.25, 0],
    [-0.5451165, 2, 1, 0],
    [-0.002448595, 5, -0.25, 0],
    [-0.04877002, 1, -1, 0],
    [0.03520158, 1, 2, 0],
    [0.00162275, 3, 2, 0],
    [2.377225e-5, 8, 0.75, 0],
    [0.029149, 4, 0.25, 0],
    [0.003386203, 4, 18, 4],
    [-0.004202444, 4, 26, 3],
    [0.0004782025, 8, -1, 1],
    [-0.005504323, 3, 25, 4],
    [-0.02418396, 5, 1.75, 1],
    [0.4209034, 1, 4, 2],
    [-0.4616537, 1, 5, 2],
    [-1.200513, 3, 1, 1],
    [-2.59155, 1, 1.5, 1],
    [-1.400145, 2, 1, 1],
    [0.8263017, 3, 0.5, 1],
  ],
  residualGaussian: [],
  ancillaries: {
    pS: {
      form: 'exp',
      tReducing: 351.255,
      scale: 5782000,
      terms: [
        [0.019194334673139708, 0.531],
        [-6.794802163795212, 0.979],
        [9.276391392786632, 2.203],
        [-12.327153852761946, 2.382],
        [28.46579606476374, 3.421],
        [-28.570870718190093, 3.558],
      ],
    },
    rhoL: {
      form: 'linear',
      tReducing: 351.255,
      scale: 8150.084599999999,
      terms: [
        [3.0283368557227064, 0.358],
        [-13.30754793568124, 0.676],
        [53.97035773548243, 0.831],
        [-41.10515088784585, 0.88],
        [0.6410010855629815, 2.592],
        [-18.757652443918627, 16.556],
      ],
    },
    rhoV: {
      form: 'exp',
      tReducing: 351.255,
      scale: 8150.084599999999,
      terms: [
        [-0.06522522852577171, 0.069],
        [-3.3577643698607456, 0.425],
        [-2.746299718061842, 1.18],
        [-64.77289013657663, 8.115],
        [511.3349286855849, 12.06],
        [-1525.315265366156, 16.085],
      ],
    },
  },
  transport: {
    muLiquid: [-10.1543862, 3.04417713, -5.9833984, 22.3453298, -31.3353331, 20.0233559],
    muVapour: [-10.3681759, -3.8511456, 7.01266201, -7.44797773, 2.64100389, -1.16057614],
    kLiquid: [-2.42546572, -0.833071024, 10.5205563, -22.3420078, 24.767075, -11.5879447],
    kVapour: [-2.2017844, -7.05525523, 9.1213783, -10.1365969, 2.92937372, 2.42625034],
    sigma: { tCritical: 351.255, terms: [[0.07147, 1.246]] },
  },
};
