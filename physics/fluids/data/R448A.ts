import { blendOf } from '../blend/blendOf';
import type { RefrigerantData } from '../refrigerantData';
import { PAIRS } from './pairs';
import { R32 } from './R32';
import { R125 } from './R125';
import { R134a } from './R134a';
import { R1234yf } from './R1234yf';
import { R1234zeE } from './R1234zeE';

/**
 * R-448A: R-32/R-125/R-1234yf/R-134a/R-1234ze(E), 26/26/20/21/7 % by mass; multi-fluid model.
 * Composition: ASHRAE Standard 34. Mixture model: sources in pairs.ts; components: sources in their own files. The
 * limits are those of the components (R-1234yf is published up to 410 K and carried on, see there).
 * Critical point: of this model, as the general-purpose library CoolProp 8.0.1dev finds it; bounds the tables only.
 * Ancillary lines (start values only): our fits to this model's own bubble and dew line (largest deviation 7 %).
 * Transport: our mixing rule, an estimate with its errors stated in blendTransport.ts. R-1234ze(E) is taken to be like
 * R-1234yf.
 */
export const R448A: RefrigerantData = {
  id: 'R-448A',
  pseudoPure: false,
  safetyClass: 'A1',
  gwp: {
    value: 1387,
    source:
      'IPCC AR4 (2007), 100 years, weighed by mass; R-1234yf and R-1234ze(E) by Regulation (EU) No 517/2014, annex II',
  },
  tCritical: 355.9409,
  pCritical: 4605200,
  validRange: { tMin: 180, tMax: 435, pMax: 15000000 },
  ...blendOf(
    355.9409,
    [
      { component: R32, massFraction: 0.26 },
      { component: R125, massFraction: 0.26 },
      { component: R1234yf, massFraction: 0.2 },
      { component: R134a, massFraction: 0.21 },
      { component: R1234zeE, massFraction: 0.07 },
    ],
    [
      PAIRS.R32_R125,
      PAIRS.R32_R1234yf,
      PAIRS.R32_R134a,
      PAIRS.R32_R1234zeE,
      PAIRS.R125_R1234yf,
      PAIRS.R125_R134a,
      PAIRS.R125_R1234zeE,
      PAIRS.R1234yf_R134a,
      PAIRS.R1234yf_R1234zeE,
      PAIRS.R134a_R1234zeE,
    ],
  ),
  ancillaries: {
    pL: {
      form: 'exp',
      tReducing: 356.04,
      scale: 4605200,
      terms: [
        [-4.52737041, 1],
        [-13.0350729, 1.5],
        [24.0317201, 2],
        [-26.7731234, 3],
        [29.651766, 5],
        [-52.0071997, 8],
      ],
    },
    pV: {
      form: 'exp',
      tReducing: 356.04,
      scale: 4605200,
      terms: [
        [-10.6076064, 1],
        [17.5635992, 1.5],
        [-27.222577, 2],
        [24.5850432, 3],
        [-38.8347411, 5],
        [62.6890568, 8],
      ],
    },
    rhoL: {
      form: 'linear',
      tReducing: 356.04,
      scale: 5698.99113217623,
      terms: [
        [-0.271774439, 0.34],
        [8.03622286, 0.6],
        [-13.5843041, 1.1],
        [20.2315983, 2],
        [-42.2151242, 4],
        [112.941637, 7],
      ],
    },
    rhoV: {
      form: 'exp',
      tReducing: 356.04,
      scale: 5698.99113217623,
      terms: [
        [-2.27575007, 0.36],
        [-2.76908044, 0.75],
        [-0.254478015, 1.3],
        [-2.5539804, 2.5],
        [-2.87069174, 5],
        [-21.0154443, 9],
      ],
    },
  },
};
