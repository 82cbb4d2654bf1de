import type { RefrigerantData } from '../refrigerantData';

/**
 * Propane, C3H8.
 * Equation of state: Eric W. Lemmon, Mark O. McLinden, Wolfgang Wagner, "Thermodynamic Properties of Propane. III. A
 * Reference Equation of State for Temperatures from the Melting Line to 650 K and Pressures up to 1000 MPa", J. Chem.
 * Eng. Data 54 (2009) 3141-3180, doi 10.1021/je900217v.
 * Surface tension: A. Mulero, I. Cachadiña, M. I. Parra, J. Phys. Chem. Ref. Data 41 (2012) 043105-1:13, doi
 * 10.1063/1.4768782.
 * Ancillary lines (start values only): fits carried by the general-purpose library CoolProp 8.0.1dev.
 * Transport: our fit of ln(property) to saturated-state values computed with CoolProp 8.0.1dev from 223 K to about
 * 0.8 of the critical pressure (largest deviation 0.035 %); outside that span it is an extrapolation.
 */
export const R290: RefrigerantData = {
  id: 'R-290',
  pseudoPure: false,
  safetyClass: 'A3',
  gwp: { value: 3, source: 'IPCC AR4 (2007), indirect, 100 years (3.3, rounded as in EU Regulation 517/2014)' },
  molarMass: 0.04409562,
  gasConstant: 8.314472,
  tCritical: 369.89,
  pCritical: 4251200,
  tReducing: 369.89,
  rhoReducing: 5000.000000000001,
  validRange: { tMin: 85.525, tMax: 650, pMax: 1000000000 },
  ideal: [
    { kind: 'lead', a1: -4.970583, a2: 4.29352 },
    { kind: 'logTau', a: 3 },
    {
      kind: 'planckEinstein',
      terms: [
        [3.043, 1.062478],
        [5.874, 3.344237],
        [9.337, 5.363757],
        [7.922, 11.762957],
      ],
    },
  ],
  residualPower: [
    [0.042910051, 4, 1, 0],
    [1.7313671, 1, 0.33, 0],
    [-2.4516524, 1, 0.8, 0],
    [0.34157466, 2, 0.43, 0],
    [-0.46047898, 2, 0.9, 0],
    [-0.66847295, 1, 2.46, 1],
    [0.20889705, 3, 2.09, 1],
    [0.19421381, 6, 0.88, 1],
    [-0.22917851, 6, 1.09, 1],
    [-0.60405866, 2, 3.25, 2],
    [0.066680654, 3, 4.62, 2],
  ],
  residualGaussian: [
    [0.017534618, 1, 0.76, 0.963, 1.283, 2.33, 0.684],
    [0.33874242, 1, 2.5, 1.977, 0.6936, 3.47, 0.829],
    [0.22228777, 1, 2.75, 1.917, 0.788, 3.15, 1.419],
    [-0.23219062, 2, 3.05, 2.307, 0.473, 3.19, 0.817],
    [-0.09220694, 2, 2.55, 2.546, 0.8577, 0.92, 1.5],
    [-0.47575718, 4, 8.4, 3.28, 0.271, 18.8, 1.426],
    [-0.017486824, 1, 6.75, 14.6, 0.948, 547.8, 1.093],
  ],
  ancillaries: {
    pS: {
      form: 'exp',
      tReducing: 369.89,
      scale: 4251200,
      terms: [
        [-23.998635747391152, 1.05],
        [18.313017605233238, 1.084],
        [-0.42240851966839504, 2.259],
        [-2.7378298813798962, 4.287],
        [0.257888414168987, 7.66],
        [-1.3113462226130785, 18.584],
      ],
    },
    rhoL: {
      form: 'linear',
      tReducing: 369.89,
      scale: 5000.000000000001,
      terms: [
        [2.104068052280433, 0.368],
        [0.3371892411622086, 0.875],
        [0.4401223810964251, 3.009],
        [-3.5679018989260567, 9.51],
        [59.93889697061387, 15.381],
        [-70.9402469085883, 17.001],
      ],
    },
    rhoV: {
      form: 'exp',
      tReducing: 369.89,
      scale: 5000.000000000001,
      terms: [
        [-3.401360845132903, 0.431],
        [-1.9443653795380451, 1.339],
        [-0.4101211459709529, 2.091],
        [-15.598374206544214, 6.822],
        [15.844867806184942, 8.214],
        [-15.298907422332046, 19.706],
      ],
    },
  },
  transport: {
    muLiquid: [-10.6163773, 3.93911639, -5.51511737, 13.3765187, -16.5104154, 11.4910533],
    muVapour: [-10.7752543, -3.40724905, 5.29680776, -8.53055257, 10.2729984, -6.77296003],
    kLiquid: [-2.68342539, -1.10148932, 8.94800698, -19.614116, 25.4601977, -12.9899343],
    kVapour: [-2.14650302, -10.018068, 31.6490629, -67.9333394, 76.1059765, -36.5518782],
    sigma: {
      tCritical: 369.89,
      terms: [
        [0.05334, 1.235],
        [-0.01748, 4.404],
      ],
    },
  },
};
