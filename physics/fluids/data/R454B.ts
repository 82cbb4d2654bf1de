import { blendOf } from '../blend/blendOf';
import type { RefrigerantData } from '../refrigerantData';
import { PAIRS } from './pairs';
import { R32 } from './R32';
import { R1234yf } from './R1234yf';

/**
 * R-454B: R-32/R-1234yf, 68.9/31.1 % by mass; multi-fluid model.
 * Composition: ASHRAE Standard 34. Mixture model: sources in pairs.ts; components: sources in their own files. The
 * limits are those of the components (R-1234yf is published up to 410 K and carried on, see there).
 * Critical point: of this model, as the general-purpose library CoolProp 8.0.1dev finds it; bounds the tables only.
 * Ancillary lines (start values only): our fits to this model's own bubble and dew line (largest deviation 5 %).
 * Transport: our mixing rule, an estimate with its errors stated in blendTransport.ts.
 */
export const R454B: RefrigerantData = {
  id: 'R-454B',
  pseudoPure: false,
  safetyClass: 'A2L',
  gwp: {
    value: 466,
    source: 'IPCC AR4 (2007), 100 years, weighed by mass; R-1234yf by Regulation (EU) No 517/2014, annex II',
  },
  tCritical: 351.4302,
  pCritical: 5304100,
  validRange: { tMin: 180, tMax: 435, pMax: 70000000 },
  ...blendOf(
    351.4302,
    [
      { component: R32, massFraction: 0.689 },
      { component: R1234yf, massFraction: 0.311 },
    ],
    [PAIRS.R32_R1234yf],
  ),
  ancillaries: {
    pL: {
      form: 'exp',
      tReducing: 351.48,
      scale: 5304100,
      terms: [
        [-6.41660279, 1],
        [-3.24654414, 1.5],
        [7.58728399, 2],
        [-10.1500642, 3],
        [8.98078539, 5],
        [-19.7164493, 8],
      ],
    },
    pV: {
      form: 'exp',
      tReducing: 351.48,
      scale: 5304100,
      terms: [
        [-8.4776396, 1],
        [7.18239552, 1.5],
        [-9.57504187, 2],
        [7.03168019, 3],
        [-13.5246366, 5],
        [16.051068, 8],
      ],
    },
    rhoL: {
      form: 'linear',
      tReducing: 351.48,
      scale: 7023.813340680559,
      terms: [
        [1.06630632, 0.34],
        [3.60617419, 0.6],
        [-5.43972269, 1.1],
        [8.94104988, 2],
        [-20.1751729, 4],
        [58.9014129, 7],
      ],
    },
    rhoV: {
      form: 'exp',
      tReducing: 351.48,
      scale: 7023.813340680559,
      terms: [
        [-1.78637962, 0.36],
        [-4.82351922, 0.75],
        [3.60567542, 1.3],
        [-7.67272608, 2.5],
        [14.0665652, 5],
        [-102.570668, 9],
      ],
    },
  },
};
