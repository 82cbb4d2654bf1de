/**
 * The flow at which a branch agrees with itself: root of `miss(m)`, kg/s, positive below and negative above it. What the
 * last search learned of the slopes starts the next one, so a neighbouring problem takes one or two marches.
 */

/** relative step under which the remembered slopes carry from the last march to the root (their error is a hundredth) */
const NEAR = 1e-5;
/** square of the relative distance at which two marches around the root give it by their chord */
const EXACT = 1e-12;
const ROUNDS = 60;

export class FlowRoot {
  /** a root this near needs no march of its own: good for differences, not for the last word */
  quick = false;
  /** kg/s by which the last march lies beside the root that `find` returned */
  beside = 0;
  /** of the miss, and of what follows the flow (see `follow`), per kg/s; NaN before the first search */
  private slope = Number.NaN;
  private readonly slopes: Float64Array;
  private readonly before: Float64Array;

  /** @param followers how many quantities follow the flow */
  constructor(followers: number) {
    this.slopes = new Float64Array(followers);
    this.before = new Float64Array(followers);
  }

  forget(): void {
    this.slope = Number.NaN;
  }

  /**
   * @param miss marches one flow
   * @param values what follows the flow, as the last march left it; changed to what it is at the root
   * @param guess kg/s; `most` an upper bound where there is one
   */
  find(miss: (m: number) => number, values: (into: Float64Array) => void, guess: number, most: number): number {
    const { slopes, before } = this;
    let m = guess < most ? guess : most;
    let f = miss(m);
    if (f === 0) {
      this.beside = 0;
      return m;
    }
    let slope = this.slope;
    if (this.quick && slope < 0) {
      const step = -f / slope;
      if (step < NEAR * m && step > -NEAR * m && m + step <= most) return this.rest(m, m + step);
    }
    let low = 0;
    let high = 0;
    let fLow = 0;
    let fHigh = 0;
    for (let k = 0; k < ROUNDS; k++) {
      if (f > 0) {
        low = m;
        fLow = f;
        if (m >= most) return this.rest(m, m);
      } else {
        high = m;
        fHigh = f;
      }
      let next = slope < 0 ? m - f / slope : f > 0 ? 1.4 * m : 0.7 * m;
      if (high > 0 && low > 0) {
        if (!(next > low && next < high)) {
          next = k % 3 === 2 ? 0.5 * (low + high) : (fLow * high - fHigh * low) / (fLow - fHigh);
        }
        if (high - low < 1e-14 * high) return this.rest(m, m);
      } else if (high === 0) {
        if (!(next > m)) next = 1.5 * m;
        if (next > 3 * m) next = 3 * m;
      } else {
        if (!(next < m)) next = 0.6 * m;
        if (next < 0.2 * m) next = 0.2 * m;
        if (m < 1e-9) return this.rest(m, m);
      }
      if (next > most) next = most;
      const m0 = m;
      const f0 = f;
      values(before);
      m = next;
      f = miss(m);
      if (f === 0) return this.rest(m, m);
      slope = (f - f0) / (m - m0);
      if (slope < 0) {
        const root = m - f / slope;
        const a = root / m - 1;
        const b = root / m0 - 1;
        const product = a * b;
        if (product < EXACT && product > -EXACT && a < 1e-3 && a > -1e-3 && root <= most) {
          this.slope = slope;
          values(slopes);
          for (let i = 0; i < slopes.length; i++) slopes[i] = (slopes[i] - before[i]) / (m - m0);
          return this.rest(m, root);
        }
      }
    }
    return this.rest(m, m);
  }

  /** What quantity `i` changes by from the last march to the root. */
  follow(i: number): number {
    return this.beside === 0 ? 0 : this.beside * this.slopes[i];
  }

  private rest(m: number, root: number): number {
    this.beside = root - m;
    return root;
  }
}
