/** What the examiner believed of many attempts, set against what was true. */
import type { CauseId } from '../../../physics/types';
import type { Posterior } from '../../examiner/types';

/** Attempts whose first choice was believed about as much. */
export interface Bin {
  count: number;
  /** sums over the attempts: belief in the first choice, how often it was true, variance of that under the belief */
  believed: number;
  true: number;
  variance: number;
}

const BINS = 10;

/** Belief below this counts as this in the log score, so that one attempt cannot outweigh a thousand. */
const LEAST = 1e-6;

export class Account {
  readonly bins = Array.from({ length: BINS }, (): Bin => ({ count: 0, believed: 0, true: 0, variance: 0 }));
  /** true cause → first choice → count */
  readonly confusion = new Map<CauseId, Map<CauseId, number>>();
  count = 0;
  private right = 0;
  private logs = 0;

  add(truth: CauseId, belief: Posterior): void {
    const [first, chance] = firstOf(belief);
    const hit = first === truth ? 1 : 0;
    const bin = this.bins[Math.min(BINS - 1, Math.floor(BINS * chance))];
    bin.count += 1;
    bin.believed += chance;
    bin.true += hit;
    bin.variance += chance * (1 - chance);
    this.count += 1;
    this.right += hit;
    this.logs += logScore(truth, belief);
    const row = this.confusion.get(truth) ?? new Map<CauseId, number>();
    row.set(first, (row.get(first) ?? 0) + 1);
    this.confusion.set(truth, row);
  }

  /** share of attempts whose first choice is the truth */
  get topOne(): number {
    return this.right / this.count;
  }

  /** mean of log2 belief in the truth, bits (0 = certain of it) */
  get logScore(): number {
    return this.logs / this.count;
  }

  /** Standard deviations by which the first choices were believed more often than they were true; negative = modest. */
  get overSure(): number {
    const sum = (of: (bin: Bin) => number): number => this.bins.reduce((total, bin) => total + of(bin), 0);
    return sum(({ believed, true: hits }) => believed - hits) / Math.sqrt(sum(({ variance }) => variance));
  }
}

export function firstOf(belief: Posterior): [CauseId, number] {
  const all = Object.entries(belief) as [CauseId, number][];
  return all.reduce((a, b) => (b[1] > a[1] ? b : a));
}

/** log2 of the belief in the truth, bits. */
export function logScore(truth: CauseId, belief: Posterior): number {
  return Math.log2(Math.max(belief[truth] ?? 0, LEAST));
}

/** Mean of paired differences and its standard error. */
export class Paired {
  count = 0;
  private sum = 0;
  private squares = 0;

  add(difference: number): void {
    this.count += 1;
    this.sum += difference;
    this.squares += difference * difference;
  }

  get mean(): number {
    return this.count > 0 ? this.sum / this.count : 0;
  }

  get error(): number {
    if (this.count < 2) return Number.POSITIVE_INFINITY;
    return Math.sqrt((this.squares / this.count - this.mean * this.mean) / (this.count - 1));
  }
}
