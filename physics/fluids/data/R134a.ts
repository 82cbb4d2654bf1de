import type { RefrigerantData } from '../refrigerantData';

/**
 * R-134a: 1,1,1,2-Tetrafluoroethane, CF3CH2F.
 * Equation of state: Reiner Tillner-Roth, Hans Dieter Baehr, "A International Standard Formulation for the
 * Thermodynamic Properties of 1,1,1,2-Tetrafluoroethane (HFC-134a) for Temperatures from 170 K to 455 K and Pressures
 * up to 70 MPa", J. Phys. Chem. Ref. Data 23 (1994) 657-729, doi 10.1063/1.555958.
 * Surface tension: A. Mulero, I. Cachadiña, M. I. Parra, J. Phys. Chem. Ref. Data 41 (2012) 043105-1:13, doi
 * 10.1063/1.4768782.
 * Ancillary lines (start values only): fits carried by the general-purpose library CoolProp 8.0.1dev.
 * Transport: our fit of ln(property) to saturated-state values computed with CoolProp 8.0.1dev from 223 K to about
 * 0.8 of the critical pressure (largest deviation 0.092 %); outside that span it is an extrapolation.
 */
export const R134a: RefrigerantData = {
  id: 'R-134a',
  pseudoPure: false,
  safetyClass: 'A1',
  gwp: { value: 1430, source: 'IPCC AR4 (2007), 100 years' },
  molarMass: 0.102032,
  gasConstant: 8.314471,
  tCritical: 374.21,
  pCritical: 4059280,
  acentric: 0.32684,
  tReducing: 374.18,
  rhoReducing: 4978.830171000001,
  validRange: { tMin: 169.85, tMax: 455, pMax: 70000000 },
  ideal: [
    { kind: 'lead', a1: -1.019535, a2: 9.047135 },
    { kind: 'logTau', a: -1.629789 },
    {
      kind: 'power',
      terms: [
        [-9.723916, -0.5],
        [-3.92717, -0.75],
      ],
    },
  ],
  residualPower: [
    [0.05586817, 2, -0.5, 0],
    [0.498223, 1, 0, 0],
    [0.02458698, 3, 0, 0],
    [0.0008570145, 6, 0, 0],
    [0.0004788584, 6, 1.5, 0],
    [-1.800808, 1, 1.5, 0],
    [0.2671641, 1, 2, 0],
    [-0.04781652, 2, 2, 0],
    [0.01423987, 5, 1, 1],
    [0.3324062, 2, 3, 1],
    [-0.007485907, 2, 5, 1],
    [0.0001017263, 4, 1, 2],
    [-0.5184567, 1, 5, 2],
    [-0.08692288, 4, 5, 2],
    [0.2057144, 1, 6, 2],
    [-0.005000457, 2, 10, 2],
    [0.0004603262, 4, 10, 2],
    [-0.003497836, 1, 10, 3],
    [0.006995038, 5, 18, 3],
    [-0.01452184, 3, 22, 3],
    [-0.0001285458, 10, 50, 4],
  ],
  residualGaussian: [],
  ancillaries: {
    pS: {
      form: 'exp',
      tReducing: 374.21,
      scale: 4059280,
      terms: [
        [0.4331478287291047, 0.845],
        [-9.090302559074352, 0.99],
        [2.1476074125217703, 1.14],
        [-1.557687007603464, 2.651],
        [-3.5020328972698604, 4.507],
        [14.958442337201044, 17.235],
      ],
    },
    rhoL: {
      form: 'linear',
      tReducing: 374.21,
      scale: 5017.053,
      terms: [
        [18.772731940930015, 0.673],
        [-51.49939472178225, 0.994],
        [40.793536440596085, 1.257],
        [-1481.6500471538966, 5.783],
        [1600.534434298925, 5.943],
        [-67338.52423732559, 19.94],
      ],
    },
    rhoV: {
      form: 'exp',
      tReducing: 374.21,
      scale: 5017.053,
      terms: [
        [-5.147386240766544, 0.476],
        [5.34618043286371, 0.966],
        [-7.611015272838434, 1.321],
        [-28.85436432788653, 8.491],
        [-9.079306067130748, 13.463],
        [64, 13.463],
      ],
    },
  },
  transport: {
    muLiquid: [-10.3515454, 7.29584537, -24.2590414, 70.2281861, -98.745016, 58.7534272],
    muVapour: [-10.4034421, -3.88684917, 5.57474444, -3.24726561, -0.409988117, -1.03886957],
    kLiquid: [-2.94895837, -1.52002884, 12.7428734, -25.9734715, 26.9754147, -10.8316829],
    kVapour: [-2.47958001, -8.77480639, 21.570465, -37.8535464, 41.076281, -24.6129909],
    sigma: { tCritical: 374.21, terms: [[0.05801, 1.241]] },
  },
};
