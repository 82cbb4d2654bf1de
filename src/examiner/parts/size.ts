/** How large the fault is, in three words, where the readings leave only one of them. */
import { exp, ln } from '../../../physics/math/elementary';
import type { CauseId, FaultFamily } from '../../../physics/types';
import { SIZE_WORDS, type SizeWord } from '../../attempt';
import { fitNodes } from '../belief';
import { logSumExp } from '../numeric';
import type { Differential, Observation } from '../types';

/** Share of the belief over sizes that one word must hold. */
const HELD = 0.8;

/** The word that holds four fifths of the belief over the cause's sizes; null where none does, or it has no size. */
export function sizeOf(
  differential: Differential,
  families: readonly FaultFamily[],
  observations: readonly Observation[],
  cause: CauseId,
): SizeWord | null {
  const family = families.find(({ id }) => id === cause);
  if (!family) return null;
  const nodes = differential.nodes.filter((node) => node.cause === cause);
  const fits = fitNodes(differential, observations, nodes);
  const logs = fits.map(({ node, logWeight }) => ln(node.weight) + logWeight);
  const top = logSumExp(logs);
  const held = new Map<SizeWord, number>();
  fits.forEach(({ node }, i) => {
    const word = wordFor(family, Math.abs(node.severity));
    held.set(word, (held.get(word) ?? 0) + exp(logs[i] - top));
  });
  return SIZE_WORDS.find((word) => (held.get(word) ?? 0) >= HELD) ?? null;
}

/** A word reaches half-way to the next one's mark. */
function wordFor({ slight, clear, severe }: FaultFamily, size: number): SizeWord {
  if (size < (slight + clear) / 2) return 'slight';
  return size < (clear + severe) / 2 ? 'clear' : 'severe';
}
