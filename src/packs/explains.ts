/** Whether a cause explains readings at all: belief alone says only that it does so better than the other causes. */
import type { CauseId } from '../../physics/types';
import { channelIndex, type Fit, fitNodes } from '../examiner/belief';
import type { Differential, Observation } from '../examiner/types';

/** Standard deviations beyond which the readings together are no longer the cause's. */
const FAR = 4;

/** True where some size of the cause has the measured readings within their spread, all of them together. */
export function explains(differential: Differential, cause: CauseId, seen: readonly Observation[]): boolean {
  const index = channelIndex(differential);
  const nodes = differential.nodes.filter((node) => node.cause === cause);
  return fitNodes(differential, seen, nodes).some((fit) => {
    const n = fit.measured.length;
    return n === 0 || squaredDistance(fit, index) <= n + FAR * Math.sqrt(2 * n);
  });
}

/** residualᵀ · covariance⁻¹ · residual: on average the number of readings, with variance twice that. */
function squaredDistance({ measured, components, alpha }: Fit, index: ReturnType<typeof channelIndex>): number {
  return measured.reduce((sum, { channel, state, value }, i) => {
    const expected = components.get(state)!.mean[index.get(channel)!];
    return sum + (value - expected) * alpha[i];
  }, 0);
}
