/** A message of the examiner or the bench, in words: values take the reader's units, ids their names. */
import type { Message, MessageValue, Quantum, ValueKind } from '../../examiner/types';
import type { Kind, Text } from '../../i18n';
import type { ChannelName } from '../../instruments/types';
import { channelName, placeName, sentence } from './say';

const KIND_OF: Readonly<Record<Exclude<ValueKind, 'bits' | 'pressure'>, Kind>> = {
  temperature: 'temperature',
  difference: 'difference',
  current: 'current',
  voltage: 'voltage',
  share: 'share',
  flow: 'flow',
  capacitance: 'capacitance',
  resistance: 'resistance',
  frequency: 'frequency',
  pressureDifference: 'differentialPressure',
  minutes: 'number',
};

/** Digits that a debrief needs: whole numbers where the instrument gave no more. */
const COARSE: Readonly<Partial<Record<ValueKind, number>>> = { voltage: 1, share: 0.01, minutes: 1 };

/** `atmosphere` (Pa): pressures are told as the gauges of that site showed them. */
export function amount(text: Text, kind: ValueKind, value: number, atmosphere: number): string {
  if (kind === 'bits') return odds(text, value);
  if (kind === 'pressure') return text.quantity('pressureGauge', value - atmosphere, 1000);
  return text.quantity(KIND_OF[kind], value, COARSE[kind]);
}

/** Evidence as the trade would say it: how many times better one cause explains the readings than the other. */
function odds(text: Text, bits: number): string {
  const times = 2 ** bits;
  return text.number(times, times < 10 ? 1 : 0);
}

function worded(text: Text, value: MessageValue, atmosphere: number): string | number {
  if (typeof value === 'string' || typeof value === 'number') return value;
  if ('value' in value) return amount(text, value.kind, value.value, atmosphere);
  switch (value.kind) {
    case 'cause':
      return text.maybe(`names.cause.${value.id}`) ?? value.id;
    case 'channel':
      return channelName(text, value.id as ChannelName);
    case 'instrument':
      return text.maybe(`names.instrument.${value.id}`) ?? value.id;
    case 'place':
      return placeName(text, value.id);
    case 'state':
      return text.maybe(`names.state.${value.id}`) ?? value.id;
    case 'remedy':
    case 'sum':
    case 'size':
    case 'root':
    case 'sense':
    case 'step':
      return text.maybe(`names.${value.kind}.${value.id}`) ?? value.id;
  }
}

/** The text of a message; its key where a catalogue lacks it, which the tests refuse. */
export function messageText(text: Text, message: Message, atmosphere: number): string {
  const values = Object.fromEntries(
    Object.entries(message.values).map(([name, value]) => {
      const word = worded(text, value, atmosphere);
      return [name, typeof value === 'object' && 'opens' in value ? sentence(String(word)) : word];
    }),
  );
  return text.maybe(message.key, values) ?? text.maybe(`examiner.${message.key}`, values) ?? message.key;
}

export function quantumName(text: Text, quantum: Quantum): string {
  return quantum.sum === undefined ? channelName(text, quantum.channel) : text.t(`names.sum.${quantum.sum}`);
}
