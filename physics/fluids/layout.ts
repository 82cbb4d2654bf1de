/** Places in a pressure block: what is known once the pressure is. SI, mass basis. */
export const P = 0;
export const LNP = 1;
export const T_BUB = 2;
export const T_DEW = 3;
export const H_L = 4;
export const H_V = 5;
export const RHO_L = 6;
export const RHO_V = 7;
export const S_L = 8;
export const S_V = 9;
export const CP_L = 10;
export const CP_V = 11;
/** Transport, filled by `setTransport`: Pa s, W/(m K), N/m. */
export const MU_L = 12;
export const MU_V = 13;
export const K_L = 14;
export const K_V = 15;
export const SIGMA = 16;
/** Private to the tables: the row and the weights of its two ends. */
export const ROW = 17;
export const W0 = 18;
export const W1 = 19;
export const W2 = 20;
export const W3 = 21;
/** Private: 1/(h_v - h_l), and 1/(span of enthalpy) of the vapour (> 0) and of the liquid side (< 0). */
export const INV_LATENT = 22;
export const INV_SPAN_V = 23;
export const INV_SPAN_L = 24;
export const BLOCK_SIZE = 25;

/** Places in the result of `FluidTable.state`: K; kg/m3, homogeneous in the dome. */
export const OUT_T = 0;
export const OUT_RHO = 1;
/** (h - h_l)/(h_v - h_l): below 0 subcooled, above 1 superheated. */
export const OUT_Q = 2;
/** (dT/dh)_p, K kg/J; 0 in the dome of a pure fluid. */
export const OUT_DTDH = 3;
/** J/(kg K) */
export const OUT_S = 4;
export const OUT_SIZE = 5;

/** Fields of a saturation row, each followed by its slope along the row index. */
export const SAT = {
  T_BUB: 0,
  T_DEW: 2,
  H_L: 4,
  H_V: 6,
  /** p v, which varies less than v */
  PV_L: 8,
  PV_V: 10,
  S_L: 12,
  S_V: 14,
  /** 1/cp goes smoothly to zero at the critical point, cp does not. */
  INV_CP_L: 16,
  INV_CP_V: 18,
  /** 1/(h at the temperature limit - h on the line) of the vapour and of the liquid side */
  INV_SPAN_V: 20,
  INV_SPAN_L: 22,
} as const;
export const SAT_SIZE = 24;

/** Fields of a transport row, each followed by its slope: mu liquid, mu vapour, k liquid, k vapour, sigma. */
export const TRANSPORT_SIZE = 10;

/** A row of a blend's dome: three coefficients each for T, volume and entropy, each followed by its slope. */
export const DOME_SIZE = 18;

/** A single-phase node: T, p v and s, each with its slopes along row, column and both. */
export const NODE = { T: 0, PV: 4, S: 8 } as const;
export const NODE_SIZE = 12;
