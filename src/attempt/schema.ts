/** The shape of an attempt, for what comes in from outside (codes, files, storage). */
import * as z from 'zod/mini';
import { FAMILIES } from '../../physics/types';
import { INSTRUMENTS, QUANTITIES } from '../instruments';
import {
  type Attempt,
  EXPECTATIONS,
  HAZARD_ACTS,
  PROCEDURE_STEPS,
  REMEDIES,
  ROOT_CAUSES,
  SAFETY_STEPS,
  SIZE_WORDS,
  STAKE_MOMENTS,
  SUM_KINDS,
  type TimedAction,
} from './types';

// The page's security policy forbids making code at run time, which zod would try for speed.
z.config({ jitless: true });

export const ATTEMPT_FORMAT = 1;
export const ATTEMPT_LIMITS = { actions: 2000, notes: 20, text: 300, name: 64, seconds: 10_000_000 } as const;

const whole = (low: number, high: number) => z.int().check(z.gte(low), z.lte(high));
const id = z.string().check(z.regex(/^[a-z0-9-]{1,64}$/));
/** Ids of places and channels; after an @ the indoor unit or outdoor module of several. */
const name = z.string().check(z.regex(/^[A-Za-z0-9:._-]{1,64}(@[a-z0-9]{1,20})?$/));
const seed = z.string().check(z.minLength(1), z.maxLength(ATTEMPT_LIMITS.name));
const cause = z.enum([...FAMILIES, 'no-fault']);
const note = whole(0, ATTEMPT_LIMITS.actions);
const notes = z.array(note).check(z.maxLength(ATTEMPT_LIMITS.notes));
/** Finite, and of a size that anything here can have (K, Pa). */
const figure = z.number().check(z.gte(-1e9), z.lte(1e9));

const controls = z.strictObject({
  running: z.optional(z.boolean()),
  setPoint: z.optional(figure),
  indoorFan: z.optional(z.enum(['low', 'high'])),
  outdoorFanRunning: z.optional(z.boolean()),
  indoorFanRunning: z.optional(z.boolean()),
  fixedSpeed: z.optional(z.boolean()),
  valveHold: z.optional(z.nullable(z.number().check(z.gte(0), z.lte(1)))),
  mode: z.optional(z.enum(['cooling', 'heating'])),
  /** what single rooms ask; left out in every attempt on a machine with one indoor unit */
  units: z.optional(z.record(z.string().check(z.regex(/^[a-z0-9]{1,20}$/)), z.enum(['off', 'cooling', 'heating']))),
});

const action = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('safety'), step: z.enum(SAFETY_STEPS), taken: z.boolean() }),
  z.strictObject({ kind: z.literal('look'), place: name }),
  z.strictObject({
    kind: z.literal('read'),
    instrument: z.enum(INSTRUMENTS),
    place: name,
    quantity: z.enum(QUANTITIES),
    channel: z.optional(name),
    insulated: z.optional(z.boolean()),
    dwell: z.optional(whole(0, 3600)),
  }),
  z.strictObject({ kind: z.literal('wait'), seconds: whole(1, 7200) }),
  z.strictObject({ kind: z.literal('control'), change: controls }),
  z.strictObject({ kind: z.literal('tape'), on: z.boolean() }),
  z.strictObject({ kind: z.literal('mark'), text: z.string().check(z.maxLength(ATTEMPT_LIMITS.text)) }),
  z.strictObject({
    kind: z.literal('sum'),
    sum: z.enum(SUM_KINDS),
    notes,
    saturation: z.optional(figure),
    answer: figure,
  }),
  z.strictObject({
    kind: z.literal('stake'),
    moment: z.enum(STAKE_MOMENTS),
    chips: z.partialRecord(cause, whole(0, 20)),
  }),
  z.strictObject({ kind: z.literal('star'), note, side: z.enum(['for', 'against', 'none']) }),
  z.strictObject({ kind: z.literal('verdict'), cause, size: z.enum(SIZE_WORDS), rival: cause, cites: notes }),
  z.strictObject({
    kind: z.literal('repair'),
    remedy: z.enum(REMEDIES),
    steps: z.array(z.enum(PROCEDURE_STEPS)).check(z.maxLength(PROCEDURE_STEPS.length)),
    root: z.nullable(z.enum(ROOT_CAUSES)),
  }),
  z.strictObject({ kind: z.literal('verified'), notes }),
  z.strictObject({ kind: z.literal('hint'), level: z.union([z.literal(1), z.literal(2), z.literal(3)]) }),
  z.strictObject({
    kind: z.literal('chalk'),
    instrument: z.enum(INSTRUMENTS),
    place: name,
    quantity: z.enum(QUANTITIES),
    cause,
    expect: z.enum(EXPECTATIONS),
  }),
  z.strictObject({ kind: z.literal('because'), shows: note, rulesOut: note }),
  z.strictObject({ kind: z.literal('reflect'), forVerdict: notes, forRival: notes, missing: z.nullable(name) }),
  z.strictObject({ kind: z.literal('hazard'), act: z.enum(HAZARD_ACTS) }),
  z.strictObject({ kind: z.literal('undo') }),
]);

const timedAction = z.strictObject({ t: whole(0, ATTEMPT_LIMITS.seconds), action });

const header = {
  format: z.literal(ATTEMPT_FORMAT),
  pack: id,
  packVersion: whole(1, 1_000_000),
  callout: id,
  seed,
  physics: z.string().check(z.minLength(1), z.maxLength(ATTEMPT_LIMITS.name)),
};
const headerSchema = z.strictObject(header);
const attemptSchema = z.strictObject({
  ...header,
  actions: z.array(timedAction).check(z.maxLength(ATTEMPT_LIMITS.actions)),
});

export type AttemptHeader = Omit<Attempt, 'actions'>;

/** Where in a value something is wrong, and what. */
export interface ShapeProblem {
  /** e.g. actions[3].action.seconds */
  readonly where: string;
  readonly what: string;
}

export type Shaped<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: ShapeProblem };

export function shapedAttempt(value: unknown): Shaped<Attempt> {
  return shaped<Attempt>(attemptSchema, value);
}

export function shapedHeader(value: unknown): Shaped<AttemptHeader> {
  return shaped<AttemptHeader>(headerSchema, value);
}

export function shapedAction(value: unknown): Shaped<TimedAction> {
  return shaped<TimedAction>(timedAction, value);
}

function shaped<T>(schema: z.core.$ZodType<unknown>, value: unknown): Shaped<T> {
  const parsed = z.safeParse(schema, value);
  if (parsed.success) return { ok: true, value: parsed.data as T };
  const issue = parsed.error.issues[0]!;
  return { ok: false, problem: { where: pathText(issue.path), what: issue.message || issue.code } };
}

function pathText(path: readonly PropertyKey[]): string {
  const text = path.map((key) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`)).join('');
  return text.replace(/^\./, '') || 'attempt';
}
