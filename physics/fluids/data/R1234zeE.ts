import type { ComponentData } from '../blend/blendOf';
import { R1234yf } from './R1234yf';

/**
 * R-1234ze(E): trans-1,3,3,3-Tetrafluoropropene, CHF=CHCF3; a component of blends only.
 * Equation of state: Monika Thol, Eric W. Lemmon, "Equation of State for the Thermodynamic Properties of
 * trans-1,3,3,3-Tetrafluoropropene [R-1234ze(E)]", Int. J. Thermophys 37 (2016) 1-16, doi 10.1007/s10765-016-2040-6.
 * Transport: taken to be that of R-1234yf at the same reduced temperature, an estimate that enters R-448A by 7 %.
 */
export const R1234zeE: ComponentData = {
  tCritical: 382.52,
  pCritical: 3635376,
  acentric: 0.3131,
  molarMass: 0.1140415928,
  gasConstant: 8.314472,
  tReducing: 382.513,
  rhoReducing: 4290,
  ideal: [
    { kind: 'lead', a1: 0, a2: 0 },
    { kind: 'logTau', a: 3 },
    {
      kind: 'planckEinstein',
      terms: [
        [9.3575, 1.34113088966911],
        [10.717, 5.15538034001459],
      ],
    },
    { kind: 'offset', a1: -12.5586602313194, a2: 8.79132625741231 },
  ],
  residualPower: [
    [0.03982797, 4, 1, 0],
    [1.812227, 1, 0.223, 0],
    [-2.537512, 1, 0.755, 0],
    [-0.5333254, 2, 1.24, 0],
    [0.1677031, 3, 0.44, 0],
    [-1.323801, 1, 2, 2],
    [-0.6694654, 3, 2.2, 2],
    [0.8072718, 2, 1.2, 1],
    [-0.7740229, 2, 1.5, 2],
    [-0.01843846, 7, 0.9, 1],
  ],
  residualGaussian: [
    [1.407916, 1, 1.33, 1, 0.728, 1.21, 0.943],
    [-0.4237082, 1, 1.75, 1.61, 0.87, 1.37, 0.642],
    [-0.2270068, 3, 2.11, 1.24, 0.855, 0.98, 0.59],
    [-0.805213, 3, 1, 9.34, 0.79, 171, 1.2],
    [0.00994318, 2, 1.5, 5.78, 1.3, 47.4, 1.33],
    [-0.008798793, 1, 1, 3.08, 0.71, 15.4, 0.64],
  ],
  transport: R1234yf.transport,
};
