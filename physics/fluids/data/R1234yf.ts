import type { RefrigerantData } from '../refrigerantData';

/**
 * R-1234yf: 2,3,3,3-Tetrafluoroprop-1-ene, CF3CF=CH2.
 * Equation of state: Eric W. Lemmon, Ryo Akasaka, "Equation of State for the Thermodynamic Properties of
 * 2,3,3,3-Tetrafluoroprop-1-ene (R1234yf)", Int. J. Thermophys. 43 (2022) 119, doi 10.1007/s10765-022-03015-y.
 * Published up to 410 K; used up to 450 K, its smooth continuation, since a failing machine's hot gas gets there.
 * Surface tension: A. Mulero, I. Cachadiña, M. I. Parra, "Recommended Correlations for the Surface Tension of Common
 * Fluids", J. Phys. Chem. Ref. Data 41 (2012) 043105-1:13, doi 10.1063/1.4768782.
 * Ancillary lines (start values only): our fits to this equation's own saturation line from 121.6 K to the critical
 * point (largest deviation 2 %).
 * Transport: our fit of ln(property) to saturated-state values computed with CoolProp 8.0.1dev from 223 K to about 0.8
 * of the critical pressure (largest deviation 0.066 %); outside that span it is an extrapolation.
 */
export const R1234yf: RefrigerantData = {
  id: 'R-1234yf',
  pseudoPure: false,
  safetyClass: 'A2L',
  gwp: { value: 4, source: 'Regulation (EU) No 517/2014, annex II' },
  molarMass: 0.1140416,
  gasConstant: 8.314462618,
  tCritical: 367.85,
  pCritical: 3384400,
  acentric: 0.276,
  tReducing: 367.85,
  rhoReducing: 4180,
  validRange: { tMin: 121.6, tMax: 450, pMax: 100000000 },
  ideal: [
    { kind: 'lead', a1: -12.081525543189, a2: 8.52896238365 },
    { kind: 'logTau', a: 3 },
    {
      kind: 'planckEinstein',
      terms: [
        [8.65, 1.3918716868288703],
        [9.75, 4.268044039690091],
        [2.11, 12.233247247519369],
      ],
    },
  ],
  residualPower: [
    [0.0340387, 4, 1, 0],
    [1.912859, 1, 0.222, 0],
    [-2.1984719881617, 1, 0.61, 0],
    [-0.8147645305033, 2, 1.122, 0],
    [0.2288282, 3, 0.5, 0],
    [-1.65436, 1, 2.14, 2],
    [-1.446628, 3, 2.284, 2],
    [0.5961722, 2, 1.05, 1],
    [-0.6148209, 2, 2.33, 2],
    [-0.0180069, 7, 0.778, 1],
  ],
  residualGaussian: [
    [0.2845275, 1, 1, 28.1, 0.96, 1016, 1.061],
    [-0.3050809, 1, 2, 28, 0.96, 1000, 1.062],
    [2.198935, 1, 1.236, 1.307, 0.853, 1.16, 1.3],
    [-0.4270329, 1, 1.6, 1.96, 1.15, 1.2, 1.04],
    [-0.4015581, 1, 1.85, 1.25, 1.3, 1.26, 1],
    [0.1179587, 1, 0.7, 1, 1.5, 1.6, 1.14],
    [-0.3141002, 1, 1.75, 2.2, 0.762, 0.87, 1.1],
  ],
  ancillaries: {
    pS: {
      form: 'exp',
      tReducing: 367.85,
      scale: 3384400,
      terms: [
        [-7.41722871, 1],
        [1.84211612, 1.5],
        [-0.825910818, 2],
        [-2.04037318, 3],
        [-2.14127475, 5],
        [-0.891772533, 8],
      ],
    },
    rhoL: {
      form: 'linear',
      tReducing: 367.85,
      scale: 4180,
      terms: [
        [1.5016657, 0.34],
        [1.80151151, 0.6],
        [-2.10323387, 1.1],
        [3.10615374, 2],
        [-3.60845922, 4],
        [4.57199595, 7],
      ],
    },
    rhoV: {
      form: 'exp',
      tReducing: 367.85,
      scale: 4180,
      terms: [
        [-2.02833053, 0.36],
        [-3.43795838, 0.75],
        [0.816800985, 1.3],
        [-2.86830265, 2.5],
        [-3.35736392, 5],
        [-0.671353088, 9],
      ],
    },
  },
  transport: {
    muLiquid: [-10.1489634, 3.61635867, -9.21332535, 33.514515, -49.0155822, 30.6037026],
    muVapour: [-10.3461324, -4.36404949, 8.72202425, -10.016613, 4.43354874, -1.63704696],
    kLiquid: [-3.04451025, -1.4420765, 11.0015215, -24.6350534, 30.5186807, -14.8587035],
    kVapour: [-2.70963682, -7.70803111, 20.3574454, -41.8829307, 52.5643963, -32.3403625],
    sigma: { tCritical: 367.85, terms: [[0.06274, 1.394]] },
  },
};
