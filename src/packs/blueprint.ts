/** A blueprint of a pack: everything that is written by hand. What is wrong with each machine is drawn from it. */
import * as z from 'zod/mini';
import type { CauseId } from '../../physics/types';
import { type PackProblem, schemaProblems } from '../attempt/pack/problems';
import { CAUSES, calloutSchema, packSchema } from '../attempt/pack/schema';
import type { Callout, Pack } from '../attempt/pack/types';

/** A callout before the draw. */
export type Order = Omit<Callout, 'faults' | 'rootCause' | 'lookAlike' | 'machineSeed'>;

/** What the drawn set is to hold, so that a seed can be sought for it. */
export interface Wishes {
  /** a true cause for some of the callouts, by id */
  readonly causes: Readonly<Record<string, CauseId>>;
}

export interface Blueprint extends Omit<Pack, 'callouts'> {
  /** seeds every draw of the pack */
  readonly seed: string;
  readonly wishes: Wishes;
  readonly callouts: readonly Order[];
}

const order = z.omit(calloutSchema, {
  faults: true,
  rootCause: true,
  lookAlike: true,
  machineSeed: true,
});

const blueprintSchema = z.extend(packSchema, {
  // Together with a callout's id it has to make an id of at most 64 characters.
  seed: z.string().check(z.regex(/^[a-z0-9-]{1,24}$/)),
  wishes: z.strictObject({ causes: z.record(z.string(), z.enum(CAUSES)) }),
  callouts: z.array(order).check(z.minLength(1)),
});

export type BlueprintOutcome =
  | { readonly ok: true; readonly blueprint: Blueprint }
  | { readonly ok: false; readonly problems: readonly PackProblem[] };

/** Shape only: the rules between fields are checked on the drawn pack. */
export function checkBlueprint(value: unknown): BlueprintOutcome {
  const parsed = blueprintSchema.safeParse(value);
  if (parsed.success) {
    const { $schema: _address, ...blueprint } = parsed.data;
    return { ok: true, blueprint };
  }
  const problems = parsed.error.issues.flatMap((issue) => schemaProblems(blueprintSchema, issue, value));
  return { ok: false, problems };
}
