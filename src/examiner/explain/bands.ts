/** What a cause would have shown, at the severities of it that fit the readings best. */
import { exp, ln } from '../../../physics/math/elementary';
import type { CauseId } from '../../../physics/types';
import { fitNodes } from '../belief';
import { logSumExp, Z80 } from '../numeric';
import { type Moments, mixed, nodeMoments } from '../quanta';
import type { Band, Differential, JudgedState, Node, Observation, Quantum } from '../types';
import type { RunBook } from './runs';

export interface Expectation extends Moments {
  readonly cause: CauseId;
  /** the node of the cause that fits the readings best */
  readonly node: Node;
}

/** Nodes of each cause, weighed by how well they fit everything that was read. */
export class Expectations {
  private readonly weights = new Map<Node, number>();

  constructor(
    private readonly differential: Differential,
    observations: readonly Observation[],
  ) {
    const logs = new Map<Node, number[]>();
    for (const { node, logWeight } of fitNodes(differential, observations)) {
      logs.set(node, [...(logs.get(node) ?? []), ln(node.weight) + logWeight]);
    }
    const totals = new Map([...logs].map(([node, values]) => [node, logSumExp(values)]));
    for (const [node, value] of totals) {
      const rest = [...totals].filter(([other]) => other.cause === node.cause).map(([, each]) => each);
      this.weights.set(node, exp(value - logSumExp(rest)));
    }
  }

  nodesOf(cause: CauseId): Node[] {
    return [...this.weights.keys()].filter((node) => node.cause === cause);
  }

  bestNode(cause: CauseId): Node | null {
    const nodes = this.nodesOf(cause);
    return nodes.length === 0 ? null : nodes.reduce((a, b) => (this.weights.get(b)! > this.weights.get(a)! ? b : a));
  }

  of(cause: CauseId, state: JudgedState, quantum: Quantum, error: number): Expectation | null {
    const node = this.bestNode(cause);
    const moments = mixed(
      this.nodesOf(cause).flatMap((each) => {
        const found = nodeMoments(this.differential, each, state, quantum, error);
        return found ? [{ weight: this.weights.get(each)!, ...found }] : [];
      }),
    );
    return node && moments && Number.isFinite(moments.mean) ? { cause, node, ...moments } : null;
  }
}

/** How many of their common standard deviations two expectations lie apart. */
export function separation(a: Moments, b: Moments): number {
  return Math.abs(a.mean - b.mean) / Math.sqrt(a.sd * a.sd + b.sd * b.sd);
}

/** The middle four fifths of what is expected. */
export function rangeOf({ mean, sd }: Moments): { low: number; high: number } {
  return { low: mean - Z80 * sd, high: mean + Z80 * sd };
}

export function bandOf(expected: Expectation, state: JudgedState, runs: RunBook): Band {
  const { cause, node, mean } = expected;
  return { cause, middle: mean, ...rangeOf(expected), run: runs.ofNode(node, state) };
}
