import { pow } from '../../math/elementary';
import type { BlendModel } from './blendModel';

/**
 * Reducing temperature and molar volume of a mixture, and how they change with the composition.
 * O. Kunz, W. Wagner, "The GERG-2008 Wide-Range Equation of State for Natural Gases and Other Mixtures", J. Chem. Eng.
 * Data 57 (2012) 3032-3091, equations 16 and 17:
 * Y(x) = sum x_i^2 Y_i + sum_{i<j} 2 x_i x_j beta gamma (x_i + x_j)/(beta^2 x_i + x_j) Y_ij, with
 * T_ij = sqrt(T_i T_j) and v_ij = (v_i^(1/3) + v_j^(1/3))^3/8.
 */
export class MixingRules {
  /** K */
  tReducing = 0;
  /** m3/mol */
  vReducing = 0;
  /** dT/dx_i and dv/dx_i, all x taken as independent. */
  readonly tSlopes: Float64Array;
  readonly vSlopes: Float64Array;
  private readonly count: number;
  private readonly tPure: Float64Array;
  private readonly vPure: Float64Array;
  /** for each pair: beta^2 and 2 beta gamma Y_ij of the temperature, then of the volume */
  private readonly pairs: Float64Array;

  constructor({ components, pairs }: BlendModel) {
    const n = components.length;
    this.count = n;
    this.tSlopes = new Float64Array(n);
    this.vSlopes = new Float64Array(n);
    this.tPure = Float64Array.from(components, ({ equation }) => equation.tReducing);
    this.vPure = Float64Array.from(components, ({ equation }) => 1 / equation.rhoReducing);
    const root = Array.from(this.vPure, (v) => pow(v, 1 / 3));
    this.pairs = new Float64Array(pairs.length * 4);
    let k = 0;
    for (let i = 0; i < n; i++) {
      for (let j = i + 1; j < n; j++, k++) {
        const { betaT, gammaT, betaV, gammaV } = pairs[k];
        const edge = root[i] + root[j];
        this.pairs.set(
          [
            betaT * betaT,
            2 * betaT * gammaT * Math.sqrt(this.tPure[i] * this.tPure[j]),
            betaV * betaV,
            (2 * betaV * gammaV * edge * edge * edge) / 8,
          ],
          4 * k,
        );
      }
    }
  }

  /** Values and slopes at a composition by moles. */
  set(x: Float64Array): void {
    this.tReducing = this.one(x, this.tPure, 0, this.tSlopes);
    this.vReducing = this.one(x, this.vPure, 2, this.vSlopes);
  }

  private one(x: Float64Array, pure: Float64Array, place: number, slopes: Float64Array): number {
    const { count, pairs } = this;
    let value = 0;
    for (let i = 0; i < count; i++) {
      value += x[i] * x[i] * pure[i];
      slopes[i] = 2 * x[i] * pure[i];
    }
    let k = place;
    for (let i = 0; i < count; i++) {
      for (let j = i + 1; j < count; j++, k += 4) {
        const square = pairs[k];
        const scale = pairs[k + 1];
        const sum = x[i] + x[j];
        const weight = 1 / (square * x[i] + x[j]);
        const product = scale * x[i] * x[j] * weight;
        value += product * sum;
        slopes[i] += scale * x[j] * sum * weight + product * (1 - square * sum * weight);
        slopes[j] += scale * x[i] * sum * weight + product * (1 - sum * weight);
      }
    }
    return value;
  }
}
