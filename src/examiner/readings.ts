/** What wise readings on one given machine show, free of instrument error: for greedy paths and information twins. */
import type { Snapshot } from '../../physics/types';
import { classOf, senseOf } from '../instruments/looks';
import { channelValue, isUnheard } from '../instruments/places';
import { classed, considered } from './observe';
import type { Candidate, JudgedState, Observation } from './types';

/** Gives the reading that a candidate would show, or null where the machine has no such state or nobody hears the unit. */
export type Reader = (candidate: Candidate) => Observation | null;

export function readerOf(snapshots: Readonly<Partial<Record<JudgedState, Snapshot>>>): Reader {
  return (candidate) => {
    const snapshot = snapshots[candidate.state];
    if (!snapshot) return null;
    if (candidate.instrument === 'data-link' && isUnheard(snapshot, candidate.channel)) return null;
    const value = channelValue(snapshot, candidate.channel);
    const sense = senseOf(candidate.channel);
    if (sense) return classed(candidate.channel, candidate.state, classOf(sense, value));
    return considered(candidate, candidate.state, value);
  };
}
