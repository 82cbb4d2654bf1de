/** The proof of a pack: callout by callout, then all of them together. */
import type { Callout, Pack } from '../../attempt/pack/types';
import type { Differential } from '../../examiner/types';
import { type CalloutProof, proveCallout } from './callout';
import type { Finding } from './findings';
import { open } from './opened';
import { packFindings, type Routine } from './together';

export type { CalloutProof } from './callout';
export type { Difficulty } from './difficulty';
export { type Finding, inWords, type ProofRule } from './findings';
export type { Routine } from './together';

export interface PackProof {
  readonly callouts: readonly CalloutProof[];
  readonly findings: readonly Finding[];
  /** the fixed routine of at most five readings that tells most of the callouts; null for fewer than six callouts */
  readonly routine: Routine | null;
  /** nothing in it is refused */
  readonly holds: boolean;
}

/** `differentialOf` gives what every rival of a callout would show: shipped or computed (seconds to minutes each). */
export function provePack(pack: Pack, differentialOf: (callout: Callout) => Differential): PackProof {
  return togetherOf(
    pack,
    pack.callouts.map((callout) => proveCallout(open(callout, differentialOf(callout)))),
  );
}

/** The same from callouts that were proven before. */
export function togetherOf(pack: Pack, callouts: readonly CalloutProof[]): PackProof {
  const together = packFindings(pack, callouts);
  const findings = [...callouts.flatMap((each) => each.findings), ...together.findings];
  return {
    callouts,
    findings,
    routine: together.routine,
    holds: findings.every(({ weight }) => weight !== 'refused'),
  };
}
