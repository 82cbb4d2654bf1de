/** How places, readings and notes are named and written wherever they are shown. */
import { unitOf } from '../../../physics/types';
import type { Note } from '../../attempt';
import type { Key, Kind, Text } from '../../i18n';
import { nameAt } from '../../i18n/branches';
import { CATALOGUE } from '../../instruments/catalogue';
import type { ChannelName, InstrumentId, PhysicalQuantity } from '../../instruments/types';
import type { ReadingOption } from '../place/options';

const KIND_OF: Readonly<Record<Exclude<PhysicalQuantity, 'look' | 'touch'>, Kind>> = {
  pressure: 'pressureGauge',
  temperature: 'temperature',
  wetBulb: 'temperature',
  current: 'current',
  voltage: 'voltage',
  capacitance: 'capacitance',
  resistance: 'resistance',
  differentialPressure: 'differentialPressure',
  speed: 'frequency',
  opening: 'share',
};

/** How a reading's value is written; null for what is a word, not a number. */
export function kindOf(quantity: PhysicalQuantity, gauge: boolean): Kind | null {
  if (quantity === 'look' || quantity === 'touch') return null;
  return quantity === 'pressure' && !gauge ? 'pressure' : KIND_OF[quantity];
}

export function placeName(text: Text, place: string): string {
  return nameAt(text, place, 'bench.place') ?? place;
}

export function channelName(text: Text, channel: ChannelName): string {
  const plain = channel.replace(/^touch:/, '');
  return nameAt(text, plain, ...(unitOf(plain) === null ? [] : ['names.ofUnit']), 'names.channel') ?? channel;
}

type Shown = Pick<Note, 'quantity' | 'gauge' | 'value' | 'instrument'> & { readonly word?: string | undefined };

export function valueText(text: Text, reading: Shown): string {
  const kind = kindOf(reading.quantity, reading.gauge);
  if (!kind) return text.maybe(`names.sense.${reading.word}`) ?? '';
  return text.quantity(kind, reading.value, CATALOGUE[reading.instrument].resolution[reading.quantity]);
}

/** A number of the data link, in the display step of its sensor. */
export function channelText(text: Text, quantity: PhysicalQuantity, value: number): string {
  return valueText(text, { instrument: 'data-link', quantity, gauge: false, value });
}

/** Where a note was taken; the data link has many numbers at one place, so there the channel names it. */
export function noteName(text: Text, note: Pick<Note, 'instrument' | 'place' | 'quantity' | 'channel'>): string {
  if (note.instrument === 'data-link') return channelName(text, note.channel);
  const place = placeName(text, note.place);
  return note.quantity === 'wetBulb' ? `${place}, ${text.t('names.quantity.wetBulb')}` : place;
}

/** The same where there is little room; the whole name where no short one is known. */
export function shortNoteName(text: Text, note: Parameters<typeof noteName>[1]): string {
  const short = note.instrument === 'data-link' ? null : nameAt(text, note.place, 'bench.short');
  if (short === null) return noteName(text, note);
  return note.quantity === 'wetBulb' ? `${short}, ${text.t('names.quantity.wetBulb')}` : short;
}

export function optionName(text: Text, option: ReadingOption): string {
  if (option.channel) return channelName(text, option.channel);
  const instrument = instrumentName(text, option.instrument);
  if (option.insulated === true) return text.t('panels.place.insulated', { instrument });
  return option.insulated === false ? text.t('panels.place.bare', { instrument }) : instrument;
}

export function instrumentName(text: Text, id: InstrumentId): string {
  return text.t(`names.instrument.${id}`);
}

export function quantityName(text: Text, quantity: PhysicalQuantity): string {
  return text.t(`names.quantity.${quantity}` satisfies Key);
}

/** A sentence begins with a capital letter, whatever word stands first. */
export function sentence(text: string): string {
  return text.charAt(0).toLocaleUpperCase() + text.slice(1);
}
