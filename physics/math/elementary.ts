/**
 * exp, ln, pow and tanh built from + - * / and bit operations only, so that every engine returns the same bits.
 * The built-in versions differ between browsers in the last place, which would break a replay.
 *
 * Method and constants: K. C. Ng, "FDLIBM" (Sun Microsystems, 1993), e_exp, e_log and e_pow, rewritten.
 * Errors: exp, ln and pow below 1 ulp; tanh below 2 ulp.
 */

const F64 = new Float64Array(1);
const U32 = new Uint32Array(F64.buffer);
F64[0] = 1;
/** Place of the high word: 1 on little-endian machines. */
const HI = U32[1] === 0x3ff00000 ? 1 : 0;

const LN2_HI = 0.6931471803691238;
const LN2_LO = 1.9082149292705877e-10;
const INV_LN2 = Math.LOG2E;
const EXP_OVERFLOW = 709.782712893384;
const EXP_UNDERFLOW = -745.1332191019411;

/** Rational approximation of exp on [-ln2/2, ln2/2]. */
const P1 = 0.16666666666666602;
const P2 = -0.0027777777777015593;
const P3 = 6.613756321437934e-5;
const P4 = -1.6533902205465252e-6;
const P5 = 4.1381367970572385e-8;

/** 2^k for k = -1022 ... 1023, exact. */
const POWERS_OF_TWO = powersOfTwo();

function powersOfTwo(): Float64Array {
  const table = new Float64Array(2046);
  table[1022] = 1;
  for (let k = 1023; k < 2046; k++) table[k] = table[k - 1] * 2;
  for (let k = 1021; k >= 0; k--) table[k] = table[k + 1] / 2;
  return table;
}

/** 2^-k for k = -1022 ... 1024; the last is subnormal and exact. */
const INVERSE_POWERS_OF_TWO = inversePowersOfTwo();

function inversePowersOfTwo(): Float64Array {
  const table = new Float64Array(2047);
  for (let k = 0; k < 2046; k++) table[k] = 1 / POWERS_OF_TWO[k];
  table[2046] = table[2045] / 2;
  return table;
}

/** y * 2^k, also where the result leaves the normal range. */
function scale(y: number, k: number): number {
  if (k >= -1022 && k <= 1023) return y * POWERS_OF_TWO[(k + 1022) | 0];
  if (k > 1023) return y * 2 * POWERS_OF_TWO[(Math.min(k - 1, 1023) + 1022) | 0];
  return y * POWERS_OF_TWO[(Math.max(k + 54, -1022) + 1022) | 0] * 5.551115123125783e-17;
}

/** e^x. */
export function exp(x: number): number {
  if (!(x <= EXP_OVERFLOW)) return x > 0 ? Infinity : x;
  if (x < EXP_UNDERFLOW) return 0;
  const k = Math.floor(INV_LN2 * x + 0.5);
  const hi = x - k * LN2_HI;
  const lo = k * LN2_LO;
  const r = hi - lo;
  const t = r * r;
  const c = r - t * (P1 + t * (P2 + t * (P3 + t * (P4 + t * P5))));
  return scale(1 - (lo - (r * c) / (2 - c) - hi), k);
}

/** Series of ln(1+f) in s = f/(2+f). */
const LG1 = 0.6666666666666735;
const LG2 = 0.3999999999940942;
const LG3 = 0.2857142874366239;
const LG4 = 0.22222198432149784;
const LG5 = 0.1818357216161805;
const LG6 = 0.15313837699209373;
const LG7 = 0.14798198605116586;

/** Natural logarithm; NaN below 0, -Infinity at 0. */
export function ln(x: number): number {
  let k = 0;
  let y = x;
  if (!(y >= 2.2250738585072014e-308)) {
    if (y === 0) return -Infinity;
    if (!(y > 0)) return NaN;
    k = -54;
    y *= 18014398509481984;
  } else if (y === Infinity) return y;
  F64[0] = y;
  const high = U32[HI];
  // Mantissa into [sqrt(1/2), sqrt(2)): 0x95f64 is where sqrt(2) falls. Scaling by a power of two is exact, and
  // quicker than writing the exponent's bits, which the processor cannot forward to the load that follows.
  const e = (high >>> 20) - 1023 + (((high & 0xfffff) + 0x95f64) >>> 20);
  k += e;
  const f = y * INVERSE_POWERS_OF_TWO[(e + 1022) | 0] - 1;
  const half = 0.5 * f * f;
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const r = w * (LG2 + w * (LG4 + w * LG6)) + z * (LG1 + w * (LG3 + w * (LG5 + w * LG7)));
  return k * LN2_HI - (half - (s * (half + r) + k * LN2_LO) - f);
}

const L1 = 0.5999999999999946;
const L2 = 0.4285714285785502;
const L3 = 0.33333332981837743;
const L4 = 0.272728123808534;
const L5 = 0.23066074577556175;
const L6 = 0.20697501780033842;
const LG2_FULL = Math.LN2;
const LG2_HI = 0.6931471824645996;
const LG2_LO = -1.904654299957768e-9;
/** 2/(3 ln2), whole and in two parts. */
const CP = 0.9617966939259756;
const CP_HI = 0.9617967009544373;
const CP_LO = -7.028461650952758e-9;
const LOG2_1_5_HI = 0.5849624872207642;
const LOG2_1_5_LO = 1.350039202129749e-8;

/** The upper 26 bits of x (Dekker's split), so that products of such halves are exact. */
function highPart(x: number): number {
  const c = 134217729 * x;
  return c - (c - x);
}

/** x^y for x >= 0 (NaN for a negative base: the physics has none). */
export function pow(x: number, y: number): number {
  if (y === 0 || x === 1) return 1;
  if (!(x >= 0) || Number.isNaN(y)) return NaN;
  if (y === 1) return x;
  if (y === 2) return x * x;
  if (y === 0.5) return Math.sqrt(x);
  if (y === -1) return 1 / x;
  if (x === 0) return y > 0 ? 0 : Infinity;
  if (x === Infinity) return y > 0 ? Infinity : 0;
  if (Math.abs(y) > 1e20) return x > 1 === y > 0 ? Infinity : 0;

  // log2(x) = t1 + t2 to about 70 bits.
  let n = 0;
  let ax = x;
  if (ax < 2.2250738585072014e-308) {
    ax *= 9007199254740992;
    n = -53;
  }
  F64[0] = ax;
  const high = U32[HI];
  const mantissa = high & 0xfffff;
  // Nearest of the bases 1 and 1.5 (and of 2, as 1 of the next power).
  let upper = 0;
  let e = (high >>> 20) - 1023;
  if (mantissa > 0x3988e) {
    if (mantissa < 0xbb67a) upper = 1;
    else e += 1;
  }
  n += e;
  ax = scale(ax, -e);
  const base = upper === 1 ? 1.5 : 1;
  let u = ax - base;
  let v = 1 / (ax + base);
  const ss = u * v;
  const sHi = highPart(ss);
  let tHi = highPart(ax + base);
  let tLo = ax - (tHi - base);
  const sLo = v * (u - sHi * tHi - sHi * tLo);
  let s2 = ss * ss;
  let r = s2 * s2 * (L1 + s2 * (L2 + s2 * (L3 + s2 * (L4 + s2 * (L5 + s2 * L6)))));
  r += sLo * (sHi + ss);
  s2 = sHi * sHi;
  tHi = highPart(3 + s2 + r);
  tLo = r - (tHi - 3 - s2);
  u = sHi * tHi;
  v = sLo * tHi + tLo * ss;
  const pHi = highPart(u + v);
  const pLo = v - (pHi - u);
  const zHi = CP_HI * pHi;
  const zLo = CP_LO * pHi + pLo * CP + (upper === 1 ? LOG2_1_5_LO : 0);
  const shift = upper === 1 ? LOG2_1_5_HI : 0;
  const t1 = highPart(zHi + zLo + shift + n);
  const t2 = zLo - (t1 - n - shift - zHi);

  // y * log2(x) = z + tail, then 2 to that power.
  const yHi = highPart(y);
  const tail = (y - yHi) * t1 + y * t2;
  const lead = yHi * t1;
  const z = tail + lead;
  if (z >= 1024) return Infinity;
  if (z <= -1075.5) return 0;
  const k = Math.floor(z + 0.5);
  const whole = lead - k;
  const t = highPart(tail + whole);
  u = t * LG2_HI;
  v = (tail - (t - whole)) * LG2_FULL + t * LG2_LO;
  const q = u + v;
  const w = v - (q - u);
  const q2 = q * q;
  const c = q - q2 * (P1 + q2 * (P2 + q2 * (P3 + q2 * (P4 + q2 * P5))));
  return scale(1 - ((q * c) / (c - 2) - (w + q * w) - q), k);
}

/** Hyperbolic tangent. */
export function tanh(x: number): number {
  const a = Math.abs(x);
  if (a < 0.55) {
    // Lambert's continued fraction; nine levels reach full precision here.
    const t = x * x;
    return x / (1 + t / (3 + t / (5 + t / (7 + t / (9 + t / (11 + t / (13 + t / 15)))))));
  }
  if (!(a <= 22)) return x > 0 ? 1 : x < 0 ? -1 : NaN;
  const y = 1 - 2 / (exp(2 * a) + 1);
  return x > 0 ? y : -y;
}
