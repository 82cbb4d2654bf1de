/** Good packs spoilt in many ways from a seed, and what the check says of each: whether bad ones get through. */
import { machineFacts } from '../../attempt/pack/facts';
import { checkPack } from '../../attempt/pack/load';
import type { Callout, Pack } from '../../attempt/pack/types';
import type { Differential } from '../../examiner/types';
import { stream } from '../../instruments/streams';
import { type CalloutProof, proveCallout } from '../proof/callout';
import { togetherOf } from '../proof/index';
import { open } from '../proof/opened';
import { type Loose, WAYS, type Way } from './ways';

export interface Spoilt {
  readonly way: Way;
  readonly callout: string;
  readonly pack: unknown;
}

export interface Judged extends Spoilt {
  readonly refused: boolean;
  /** what was said; each names the callout (or the pack), why, and what mends it */
  readonly said: readonly string[];
  /** true where some message names the callout that was spoilt (or is about the pack), why and the mend */
  readonly wellSaid: boolean;
}

/** `count` changed packs: the ways in turn, each on a pack and callout that chance picks. */
export function spoil(packs: readonly Pack[], count: number, seed: string): Spoilt[] {
  const found: Spoilt[] = [];
  for (let n = 0; found.length < count; n++) {
    const random = stream(`${seed}/${n}`);
    const way = WAYS[n % WAYS.length];
    const pack: Loose = structuredClone(packs[Math.floor(random.uniform() * packs.length)]);
    const callout = pack.callouts[Math.floor(random.uniform() * pack.callouts.length)];
    const { id } = callout;
    if (way.change(pack, callout, random)) found.push({ way, callout: id, pack });
  }
  return found;
}

/** Judges changed packs; a callout that was proven before is not proven again. */
export class Judge {
  private readonly known = new Map<string, CalloutProof>();

  constructor(private readonly differentialOf: (callout: Callout) => Differential) {}

  judge(spoilt: Spoilt): Judged {
    const outcome = checkPack(spoilt.pack, machineFacts);
    if (!outcome.ok) {
      const said = outcome.problems.map(({ message }) => message);
      const wellSaid = outcome.problems.some(
        ({ callout, found, expected }) =>
          found !== '' && expected !== '' && (callout === null || isAbout(spoilt, callout)),
      );
      return { ...spoilt, refused: true, said, wellSaid };
    }
    const { pack } = outcome;
    const proof = togetherOf(
      pack,
      pack.callouts.map((callout) => this.prove(callout)),
    );
    const refusals = proof.findings.filter(({ weight }) => weight === 'refused');
    return {
      ...spoilt,
      refused: refusals.length > 0,
      said: refusals.map(({ callout, why, mend }) => `${callout ?? 'the pack'}: ${why}; ${mend}`),
      wellSaid: refusals.some(
        ({ callout, why, mend, rule }) =>
          why !== '' && mend !== '' && (callout === null || rule === 'tally-true' || isAbout(spoilt, callout)),
      ),
    };
  }

  private prove(callout: Callout): CalloutProof {
    const { text, id, lookAlike: _l, mode: _m, ...rest } = callout;
    const key = JSON.stringify([rest, text, id]);
    const proof = this.known.get(key) ?? proveCallout(open(callout, this.differentialOf(callout)));
    this.known.set(key, proof);
    return proof;
  }
}

/** Two callouts with one id are told at the second; a callout laid down three times has three ids. */
const isAbout = ({ callout }: Spoilt, named: string): boolean => named.startsWith(callout) || named.startsWith('#');
