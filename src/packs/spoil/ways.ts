/** Ways to spoil a good pack, and ways to change one that spoil nothing. Each takes a copy, so it may write into it. */
import { FAULTS } from '../../../physics';
import type { Stream } from '../../instruments/streams';

/** A pack as loose data: what a careless author or program may hand in. */
// biome-ignore lint/suspicious/noExplicitAny: a spoilt pack has no type
export type Loose = any;

export interface Way {
  readonly name: string;
  /** true where nobody should get the pack that comes out */
  readonly bad: boolean;
  /** Changes one callout of the pack; false where this one cannot be changed so. */
  readonly change: (pack: Loose, callout: Loose, random: Stream) => boolean;
}

const bad = (name: string, change: Way['change']): Way => ({ name, bad: true, change });
const good = (name: string, change: Way['change']): Way => ({ name, bad: false, change });

const familyOf = (callout: Loose) => {
  const [key] = Object.keys(callout.faults);
  return key ? { key, family: FAULTS.find(({ id }) => id === key.split(/[:@]/)[0])! } : null;
};
const pick = <T>(list: readonly T[], { uniform }: Stream): T => list[Math.floor(uniform() * list.length)];
const other = (pack: Loose, callout: Loose) => pack.callouts.find((each: Loose) => each !== callout);

export const WAYS: readonly Way[] = [
  bad('a fault beyond its range', (_pack, callout) => {
    const found = familyOf(callout);
    if (found) callout.faults[found.key] = found.family.max * 1.5;
    return found !== null;
  }),
  bad('a fault too small to see', (_pack, callout, { uniform }) => {
    const found = familyOf(callout);
    if (found) callout.faults[found.key] = found.family.slight * (0.05 + 0.5 * uniform());
    return found !== null;
  }),
  bad('a fault of size 0', (_pack, callout) => {
    const found = familyOf(callout);
    if (found) callout.faults[found.key] = 0;
    return found !== null;
  }),
  bad('a fault of another machine', (_pack, callout) => {
    const strange = FAULTS.find(({ plants }) => !plants.includes(callout.plant))!;
    callout.faults = { [strange.id]: strange.clear };
    callout.tally = { [strange.id]: 60, 'no-fault': 40 };
    return true;
  }),
  bad('a fault misspelt', (_pack, callout) => {
    const found = familyOf(callout);
    if (found) callout.faults = { [`${found.key}x`]: callout.faults[found.key] };
    return found !== null;
  }),
  bad('instruments removed: senses alone', (_pack, callout) => {
    callout.toolbag = ['hand'];
    // What eyes tell for nothing needs no instrument.
    return !LOOKED_AT.has(familyOf(callout)?.family.id ?? '');
  }),
  bad('an empty bag', (_pack, callout) => {
    callout.toolbag = [];
    return true;
  }),
  bad('an instrument that does not exist', (_pack, callout) => {
    callout.toolbag = [...callout.toolbag, 'crystal-ball'];
    return true;
  }),
  bad('an instrument twice', (_pack, callout) => {
    callout.toolbag = [...callout.toolbag, callout.toolbag[0]];
    return true;
  }),
  bad('a budget below the least', (_pack, callout, { uniform }) => {
    callout.budget = Math.floor(4 * uniform());
    return true;
  }),
  bad('a budget that is no number', (_pack, callout) => {
    callout.budget = 'two hours';
    return true;
  }),
  bad('a tally that does not sum up', (_pack, callout, random) => {
    const cause = pick(Object.keys(callout.tally), random);
    callout.tally[cause] += random.uniform() < 0.5 || callout.tally[cause] < 4 ? 3 : -3;
    return true;
  }),
  bad('a tally without the true cause', (_pack, callout) => {
    const cause = familyOf(callout)?.family.id ?? 'no-fault';
    const rest = Object.keys(callout.tally).find((each) => each !== cause)!;
    callout.tally[rest] += callout.tally[cause];
    delete callout.tally[cause];
    return true;
  }),
  bad('tallies untrue throughout: the true cause once in a hundred', (pack) => {
    for (const each of pack.callouts) {
      const cause = familyOf(each)?.family.id ?? 'no-fault';
      const rest = Object.keys(each.tally).find((name) => name !== cause)!;
      each.tally[rest] += each.tally[cause] - 1;
      each.tally[cause] = 1;
    }
    return pack.callouts.length >= 3;
  }),
  bad('a tally with a cause of another machine', (_pack, callout) => {
    const strange = FAULTS.find(({ plants }) => !plants.includes(callout.plant))!;
    const rest = Object.keys(callout.tally)[0];
    callout.tally[rest] -= 2;
    callout.tally[strange.id] = 2;
    return true;
  }),
  bad('a text missing', (_pack, callout, random) => {
    delete callout.text[pick(['title', 'complaint', 'site', 'history'], random)];
    return true;
  }),
  bad('a text in one language', (_pack, callout, random) => {
    delete callout.text[pick(['title', 'complaint', 'site', 'history'], random)].es;
    return true;
  }),
  bad('a text of blanks', (_pack, callout, random) => {
    callout.text[pick(['title', 'complaint', 'site', 'history'], random)].en = '   ';
    return true;
  }),
  bad('a text not translated', (_pack, callout, random) => {
    const field = pick(['complaint', 'site', 'history'], random);
    callout.text[field].es = callout.text[field].en;
    return true;
  }),
  bad('a text far too long', (_pack, callout) => {
    callout.text.site.en = callout.text.site.en.repeat(40);
    return callout.text.site.en.length > 1200;
  }),
  bad('weather out of range', (_pack, callout, { uniform }) => {
    callout.conditions.outdoor = uniform() < 0.5 ? 335 + 20 * uniform() : 200 + 40 * uniform();
    return true;
  }),
  bad('weather in degrees Celsius', (_pack, callout) => {
    callout.conditions.outdoor -= 273.15;
    return true;
  }),
  bad('a wet bulb above the dry bulb', (_pack, callout) => {
    callout.conditions.wetBulb = callout.conditions.indoor + 1;
    return callout.conditions.wetBulb <= 308.15;
  }),
  bad('a mode that the machine does not have', (_pack, callout) => {
    callout.conditions.mode = 'simultaneous';
    return callout.plant !== 'heat-recovery';
  }),
  bad('a refrigerant that the machine is not made for', (_pack, callout) => {
    callout.refrigerant = 'R-744';
    return true;
  }),
  bad('two callouts with one id', (pack, callout) => {
    const twin = other(pack, callout);
    if (twin) twin.id = callout.id;
    return twin !== undefined;
  }),
  bad('a look-alike that is not there', (_pack, callout) => {
    callout.lookAlike = 'nowhere';
    return true;
  }),
  bad('a fault without its root cause', (_pack, callout) => {
    callout.rootCause = null;
    return familyOf(callout) !== null;
  }),
  bad('an unknown field', (_pack, callout) => {
    callout.dificulty = 3;
    return true;
  }),
  bad('a machine without its seed', (_pack, callout) => {
    delete callout.machineSeed;
    return true;
  }),
  bad('weights that do not sum up', (pack) => {
    pack.weights.cause += 5;
    return true;
  }),
  bad('a later format', (pack) => {
    pack.format = 2;
    return true;
  }),
  bad('a deliberate pair of one', (_pack, callout) => {
    const [cause] = Object.keys(callout.tally);
    callout.deliberatePair = [cause, cause];
    return true;
  }),
  bad('one callout three times running', (pack, callout) => {
    pack.callouts = [0, 1, 2].map((n) => ({
      ...structuredClone(callout),
      id: `${callout.id}-${n}`,
      lookAlike: undefined,
    }));
    for (const each of pack.callouts) delete each.lookAlike;
    return true;
  }),

  good('a longer time', (_pack, callout, { uniform }) => {
    callout.budget = Math.min(480, Math.ceil(callout.budget * (1.2 + uniform())));
    return true;
  }),
  good('a later version', (pack, _callout, { uniform }) => {
    pack.version += 1 + Math.floor(9 * uniform());
    return true;
  }),
  good('another title', (_pack, callout, { uniform }) => {
    const number = Math.ceil(90 * uniform());
    callout.text.title = { en: `${callout.text.title.en} ${number}`, es: `${callout.text.title.es} ${number}` };
    return true;
  }),
  good('no look-alike', (_pack, callout) => {
    delete callout.lookAlike;
    return true;
  }),
  good('other weights', (pack) => {
    pack.weights = { ...pack.weights, cause: pack.weights.cause + 5, economy: pack.weights.economy - 5 };
    return pack.weights.economy >= 0;
  }),
  good('for an examination', (_pack, callout) => {
    callout.mode = 'exam';
    return true;
  }),
  good('the callouts the other way round', (pack) => {
    pack.callouts.reverse();
    return pack.callouts.length > 1;
  }),
  good('a fault a little larger', (_pack, callout, { uniform }) => {
    const found = familyOf(callout);
    if (!found) return false;
    const size = callout.faults[found.key] * (1 + 0.03 * uniform());
    callout.faults[found.key] = Math.sign(size) * Math.min(Math.abs(size), found.family.max);
    return true;
  }),
];

/** Causes that can be seen without an instrument: told with empty hands, and rightly so. */
const LOOKED_AT: ReadonlySet<string> = new Set([
  'filter-dirty',
  'condenser-dirty',
  'condenser-fan-slow',
  'evaporator-dirty',
  'evaporator-fan-slow',
  'fan-capacitor-weak',
  'liquid-line-kink',
  'service-valve-throttled',
  'line-charge-not-added',
  'lines-too-long',
  'bulb-loose',
  'defrost-not-starting',
  'thermistor-out-of-its-pocket',
]);
