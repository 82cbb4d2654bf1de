import { blendOf } from '../blend/blendOf';
import type { RefrigerantData } from '../refrigerantData';
import { PAIRS } from './pairs';
import { R134a } from './R134a';
import { R1234yf } from './R1234yf';

/**
 * R-513A: R-1234yf/R-134a, 56/44 % by mass; multi-fluid model.
 * Composition: ASHRAE Standard 34. Mixture model: sources in pairs.ts; components: sources in their own files. The
 * limits are those of the components (R-1234yf is published up to 410 K and carried on, see there).
 * Critical point: of this model, as the general-purpose library CoolProp 8.0.1dev finds it; bounds the tables only.
 * Ancillary lines (start values only): our fits to this model's own bubble and dew line (largest deviation 4 %).
 * Transport: our mixing rule, an estimate with its errors stated in blendTransport.ts.
 */
export const R513A: RefrigerantData = {
  id: 'R-513A',
  pseudoPure: false,
  safetyClass: 'A1',
  gwp: {
    value: 631,
    source: 'IPCC AR4 (2007), 100 years, weighed by mass; R-1234yf by Regulation (EU) No 517/2014, annex II',
  },
  tCritical: 368.5607,
  pCritical: 3655100,
  validRange: { tMin: 180, tMax: 450, pMax: 70000000 },
  ...blendOf(
    368.5607,
    [
      { component: R1234yf, massFraction: 0.56 },
      { component: R134a, massFraction: 0.44 },
    ],
    [PAIRS.R1234yf_R134a],
  ),
  ancillaries: {
    pL: {
      form: 'exp',
      tReducing: 368.61,
      scale: 3655100,
      terms: [
        [-7.35712999, 1],
        [1.20475596, 1.5],
        [-0.00931948215, 2],
        [-2.76356782, 3],
        [-1.41892319, 5],
        [-1.48452009, 8],
      ],
    },
    pV: {
      form: 'exp',
      tReducing: 368.61,
      scale: 3655100,
      terms: [
        [-7.39354557, 1],
        [1.38940374, 1.5],
        [-0.257569581, 2],
        [-2.6561672, 3],
        [-2.02184869, 5],
        [-2.53398503, 8],
      ],
    },
    rhoL: {
      form: 'linear',
      tReducing: 368.61,
      scale: 4516.380890229685,
      terms: [
        [0.982285768, 0.34],
        [4.15528505, 0.6],
        [-7.52275126, 1.1],
        [12.609012, 2],
        [-27.0656731, 4],
        [69.2101601, 7],
      ],
    },
    rhoV: {
      form: 'exp',
      tReducing: 368.61,
      scale: 4516.380890229685,
      terms: [
        [-2.04816565, 0.36],
        [-3.55116424, 0.75],
        [1.25957203, 1.3],
        [-4.53612389, 2.5],
        [2.20149149, 5],
        [-32.6446969, 9],
      ],
    },
  },
};
