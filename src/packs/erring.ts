/** Readings with the errors that instruments and people have: one bias a group, noise each time. */
import type { Snapshot } from '../../physics/types';
import { classed } from '../examiner/observe';
import { type Reader, readerOf } from '../examiner/readings';
import type { JudgedState } from '../examiner/types';
import { classOf, senseOf } from '../instruments/looks';
import { channelValue } from '../instruments/places';
import { stream } from '../instruments/streams';

export interface Erring {
  readonly snapshots: Readonly<Partial<Record<JudgedState, Snapshot>>>;
  /** seeds the errors */
  readonly seed: string;
}

export function erringReader({ snapshots, seed }: Erring): Reader {
  const exact = readerOf(snapshots);
  const draw = (what: string) => stream(`${seed}/${what}`).normal();
  return (candidate) => {
    const { channel, state } = candidate;
    const reading = exact(candidate);
    if (reading?.kind !== 'measured') {
      const sense = senseOf(channel);
      if (!reading || !sense) return reading;
      const seen = channelValue(snapshots[state]!, channel) + sense.sd * draw(`look/${channel}`);
      return classed(channel, state, classOf(sense, seen));
    }
    const error = reading.bias * draw(`bias/${reading.biasKey}`) + reading.noise * draw(`noise/${channel}/${state}`);
    return { ...reading, value: reading.value + error };
  };
}
