/**
 * The shape of a pack, as one schema: validation here, JSON Schema for others (`npm run schema`).
 * Rules between fields are in rules.ts, since a JSON Schema cannot say them.
 * zod/mini, because the page loads this before it can show anything.
 */
import * as z from 'zod/mini';
import type { RefrigerantId } from '../../../physics/fluids/fluid';
import { FAMILIES, OPERATING_MODES, type PlantId } from '../../../physics/types';
import { INSTRUMENTS } from '../../instruments/types';
import { ROOT_CAUSES } from '../types';

// The page's security policy forbids making code at run time, which zod would try for speed.
z.config({ jitless: true });

export const PACK_FORMAT = 1;
export const LIMITS = { bytes: 1_000_000, depth: 12, callouts: 100, shortText: 120, longText: 1200 } as const;

/** A list that the compiler refuses unless it names every member of the union. */
const everyOne =
  <Union extends string>() =>
  <const List extends readonly [Union, ...Union[]]>(
    list: Exclude<Union, List[number]> extends never ? List : readonly ['missing', Exclude<Union, List[number]>],
  ) =>
    list as List;

const PLANTS = everyOne<PlantId>()([
  'orifice-split',
  'inverter-split',
  'cold-room',
  'multi-split',
  'heat-recovery',
  'thermostatic-heat-pump',
]);
const REFRIGERANTS = everyOne<RefrigerantId>()([
  'R-32',
  'R-410A',
  'R-134a',
  'R-290',
  'R-22',
  'R-1234yf',
  'R-125',
  'R-744',
  'R-407C',
  'R-404A',
  'R-454B',
  'R-448A',
  'R-513A',
]);
export const CAUSES = [...FAMILIES, 'no-fault'] as const;
/** Adds the words that messages and the JSON Schema show for a field. */
function described<Schema extends z.core.$ZodType>(schema: Schema, description: string): Schema {
  z.globalRegistry.add(schema, { description });
  return schema;
}

const within = (low: number, high: number) => z.number().check(z.gte(low), z.lte(high));
const whole = (low: number, high: number) => z.int().check(z.gte(low), z.lte(high));
const text = (longest: number) => z.string().check(z.minLength(1), z.maxLength(longest));
const localized = (longest: number) =>
  described(
    z.strictObject({ en: text(longest), es: text(longest) }),
    `text in English and Spanish, 1 to ${longest} characters each`,
  );
const id = (what: string) =>
  described(
    z.string().check(z.regex(/^[a-z0-9-]{1,64}$/)),
    `${what}: 1 to 64 characters, only a–z, 0–9 and the hyphen`,
  );
/** A closed list, never empty, each at most once (rules.ts checks the last). */
const choice = <const Values extends readonly [string, ...string[]]>(values: Values) =>
  described(z.enum(values), `one of ${values.join(', ')}`);

const conditions = described(
  z.strictObject({
    outdoor: described(within(243.15, 328.15), 'outdoor air dry bulb, K, from 243.15 to 328.15'),
    indoor: described(within(268.15, 318.15), 'return air dry bulb, K, from 268.15 to 318.15'),
    wetBulb: described(within(263.15, 308.15), 'return air wet bulb, K, from 263.15 to 308.15'),
    mode: choice(OPERATING_MODES),
    altitude: described(within(-430, 4500), 'height of the site, m, from -430 to 4500'),
  }),
  'weather and room',
);

const calloutText = described(
  z.strictObject({
    title: localized(LIMITS.shortText),
    complaint: localized(LIMITS.longText),
    site: localized(LIMITS.longText),
    history: localized(LIMITS.longText),
  }),
  'title, complaint, site and history',
);

export const calloutSchema = z.strictObject({
  id: id('id of the callout'),
  plant: choice(PLANTS),
  refrigerant: choice(REFRIGERANTS),
  conditions,
  text: calloutText,
  faults: described(
    z.record(
      z.string().check(z.regex(/^[a-z]+(-[a-z]+)*(:[a-zA-Z]{1,40})?(@[a-z0-9-]{1,40})?$/)),
      described(z.number().check(z.gte(-100), z.lte(100)), 'severity in the unit of the fault family'),
    ),
    'fault keys with their severity, e.g. {"undercharge": 0.2}; {} for a healthy machine',
  ),
  rootCause: described(z.nullable(z.enum(ROOT_CAUSES)), `one of ${ROOT_CAUSES.join(', ')}, or null`),
  tally: described(
    z.partialRecord(z.enum(CAUSES), described(whole(0, 100), 'whole number from 0 to 100')),
    'how many of the last 100 calls like this had each cause',
  ),
  toolbag: described(
    z.array(choice(INSTRUMENTS)).check(z.minLength(1), z.maxLength(INSTRUMENTS.length)),
    'instruments in the bag, at least one',
  ),
  budget: described(within(5, 480), 'simulated minutes, from 5 to 480'),
  mode: choice(['guided', 'solo', 'exam']),
  lookAlike: z.optional(id('id of the look-alike callout')),
  deliberatePair: z.optional(
    described(
      z.array(z.enum(CAUSES)).check(z.minLength(2), z.maxLength(2)),
      'two causes that nothing which may be read here is meant to tell apart',
    ),
  ),
  machineSeed: id('seed of the machine'),
});

const weight = (part: string) => described(within(0, 100), `weight of "${part}", from 0 to 100`);

export const packSchema = z.strictObject({
  $schema: z.optional(described(text(200), 'address of the JSON Schema, for editors')),
  format: described(z.literal(PACK_FORMAT), `${PACK_FORMAT}, the pack format that this program reads`),
  id: id('id of the pack'),
  version: described(whole(1, 1_000_000), 'whole number from 1 up, raised with every change'),
  title: localized(LIMITS.shortText),
  about: localized(LIMITS.longText),
  weights: described(
    z.strictObject({
      cause: weight('cause'),
      belief: weight('belief'),
      evidence: weight('evidence'),
      working: weight('working'),
      repair: weight('repair'),
      economy: weight('economy'),
    }),
    'weights of the six score parts; they sum to 100',
  ),
  callouts: described(
    z.array(calloutSchema).check(z.minLength(1), z.maxLength(LIMITS.callouts)),
    `1 to ${LIMITS.callouts} callouts`,
  ),
});

/** JSON Schema 2020-12 of a pack. */
export function packJsonSchema(): Record<string, unknown> {
  return {
    ...z.toJSONSchema(packSchema, { target: 'draft-2020-12' }),
    $id: 'https://coldbench.invalid/pack.schema.json',
    title: 'Coldbench pack',
    description:
      'A set of callouts. Rules between fields (the tally sums to 100, a fault occurs on the plant, …) are checked by ' +
      '`npm run -s cli -- check`.',
  };
}
