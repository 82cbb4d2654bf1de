/**
 * Jobs drawn on the spot at the places of the shipped callouts, with another bag. The id of a job says all there is to
 * know of it, so that an attempt at it can be run again anywhere: `<pack>--<callout>--<bag>--<seed>`.
 */
import type { Callout, Localized, Pack } from '../attempt/pack/types';
import { OWN_SENSES } from '../instruments/catalogue';
import { INSTRUMENTS, type InstrumentId } from '../instruments/types';
import { drawJob } from './machine';

export const JOB_PACKS = ['short-bag', 'closed-circuit'] as const;
export type JobPack = (typeof JOB_PACKS)[number];

/** Instruments in a short bag; eyes and hands come along anyway. */
export const BAG_SIZE = 3;
/** No hose goes on the circuit, no panel is opened: temperatures, air and current. */
const CLOSED: readonly InstrumentId[] = ['pipe-clamp', 'air-probe', 'clamp-ammeter'];

const TEXTS: Readonly<Record<JobPack, { readonly title: Localized; readonly about: Localized }>> = {
  'short-bag': {
    title: { en: 'Short bag', es: 'Bolsa corta' },
    about: { en: 'Three instruments of your own choice.', es: 'Tres instrumentos a tu elección.' },
  },
  'closed-circuit': {
    title: { en: 'Closed circuit', es: 'Circuito cerrado' },
    about: {
      en: 'No gauges: temperatures, air and current only.',
      es: 'Sin manómetros: solo temperaturas, aire y corriente.',
    },
  },
};

/** What can be put into a short bag at this place. */
export function bagChoices({ toolbag }: Callout): InstrumentId[] {
  return toolbag.filter((id) => !OWN_SENSES.includes(id));
}

/** Id of a new job. `seed`: letters and digits, at most 12. */
export function jobId(pack: string, callout: string, bag: readonly InstrumentId[], seed: string): string {
  const code = INSTRUMENTS.flatMap((id, i) => (bag.includes(id) ? [String.fromCharCode(97 + i)] : [])).join('');
  return `${pack}--${callout}--${code}--${seed}`;
}

/** The bag that a closed circuit leaves of this place's. */
export function closedBag(callout: Callout): InstrumentId[] {
  return bagChoices(callout).filter((id) => CLOSED.includes(id));
}

export function isJobPack(id: string): id is JobPack {
  return (JOB_PACKS as readonly string[]).includes(id);
}

const known = new Map<string, Pack>();

/** A pack of this one job; null where the id names no place on the shelf, or a bag that the way does not allow. */
export function jobPack(way: JobPack, id: string, shelf: readonly Pack[]): Pack | null {
  const name = `${way}/${id}`;
  const found = known.get(name) ?? makeJob(way, id, shelf);
  if (found) known.set(name, found);
  return found;
}

function makeJob(way: JobPack, id: string, shelf: readonly Pack[]): Pack | null {
  const [, packId, calloutId, code, seed] =
    /^([a-z0-9-]+?)--([a-z0-9-]+?)--([a-z]{1,10})--([a-z0-9]{1,12})$/.exec(id) ?? [];
  const pack = shelf.find((each) => each.id === packId);
  const home = pack?.callouts.find((each) => each.id === calloutId);
  if (!pack || !home || code === undefined || seed === undefined) return null;
  const bag = INSTRUMENTS.filter((_, i) => code.includes(String.fromCharCode(97 + i)));
  const allowed = way === 'closed-circuit' ? closedBag(home) : bagChoices(home);
  if (bag.some((each) => !allowed.includes(each)) || (way === 'short-bag' && bag.length !== BAG_SIZE)) return null;
  const callout = drawJob(home, id, `${way}/${id}`, [
    ...home.toolbag.filter((each) => OWN_SENSES.includes(each)),
    ...bag,
  ]);
  return { format: 1, id: way, version: 1, ...TEXTS[way], weights: pack.weights, callouts: [callout] };
}
