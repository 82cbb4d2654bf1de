import type { HelmholtzEquation, RefrigerantData } from '../refrigerantData';
import { blendEquation } from './blendEquation';
import type { BlendModel, BlendPair } from './blendModel';
import { moleFractions } from './blendModel';
import { blendTransport } from './blendTransport';

/** What a blend takes from a component; every refrigerant with an acentric factor has it. */
export interface ComponentData extends HelmholtzEquation {
  readonly tCritical: number;
  readonly pCritical: number;
  readonly acentric?: number;
  readonly transport: RefrigerantData['transport'];
}

/** The part of a refrigerant's data that follows from its components, pairs in the order (0,1), (0,2), ..., (1,2), ... */
export function blendOf(
  tCritical: number,
  shares: readonly { readonly component: ComponentData; readonly massFraction: number }[],
  pairs: readonly BlendPair[],
): HelmholtzEquation & Pick<RefrigerantData, 'blend' | 'transport'> {
  const components = shares.map(({ component, massFraction }) => {
    const { acentric } = component;
    if (acentric === undefined) throw new Error('a component of a blend needs its acentric factor');
    return {
      equation: component,
      massFraction,
      tCritical: component.tCritical,
      pCritical: component.pCritical,
      acentric,
    };
  });
  const x = moleFractions(components);
  const blend: BlendModel = { components, moleFractions: x, pairs };
  const parts = shares.map(({ component: { transport }, massFraction }, i) => ({
    transport,
    massFraction,
    moleFraction: x[i],
  }));
  return { ...blendEquation(blend), blend, transport: blendTransport(parts, tCritical) };
}
