/**
 * Last step: the pair separated before the trainee's eyes, with the numbers of this very machine. What it shows is run
 * by the model; after it the callout is a study.
 */
import type { CauseId } from '../../../physics/types';
import { channelValue } from '../../instruments/places';
import { Expectations, rangeOf } from '../explain/bands';
import { quantumValue } from '../explain/sentences';
import { senseBehind } from '../otherCause';
import { readerOf } from '../readings';
import type { Candidate, Classed, Hint, Measured, Message, Observation } from '../types';
import { among, standpoint } from '../value';
import { inTallyOrder, isTold, type Pair, pairOf } from './pair';
import { type Shown, shownFor, stepsOf, type ValueReader } from './shown';
import { machineIn, type Standing } from './standing';

type PairOfCauses = readonly [CauseId, CauseId];

export function workedHint(standing: Standing): Omit<Hint, 'level'> {
  const found = pairOf(standing);
  const { causes, open } = found;
  const pair = inTallyOrder(standing, causes);
  if (isTold(standing, found))
    return { lines: [...fromNotebook(standing, found, pair), best(standing)], reading: null };
  if (!open) return { lines: [{ key: 'hint.pair.none', values: {} }], reading: null };
  const snapshot = machineIn(standing, open.state);
  const observation = readerOf({ [open.state]: snapshot })(open);
  if (!snapshot || !observation) {
    return {
      lines: [{ key: 'hint.worked.trips', values: { state: { kind: 'state', id: open.state } } }],
      reading: open,
    };
  }
  const lines =
    observation.kind === 'classed'
      ? seen(standing, observation, pair)
      : measured(standing, open, observation, pair, (channel) => channelValue(snapshot, channel));
  return { lines: [...lines, shift(standing, observation)], reading: open };
}

/** What the notes already hold, thought through. */
function fromNotebook(standing: Standing, { noted, look }: Pair, pair: PairOfCauses): Message[] {
  const quantum = noted?.quantum ?? { channel: look!.channel };
  const how: Message = { key: 'hint.worked.noted', values: { what: quantumValue(quantum) } };
  if (!noted) return [how, ...seen(standing, look!, pair)];
  const shown = { ...noted, value: noted.read };
  return [how, ...compared(standing, shown, pair, fromNotes(standing, shown))];
}

function best({ point }: Standing): Message {
  const [cause, share] = (Object.entries(point.posterior) as [CauseId, number][]).reduce((a, b) =>
    b[1] > a[1] ? b : a,
  );
  return {
    key: 'hint.worked.fits',
    values: { cause: { kind: 'cause', id: cause }, share: { kind: 'share', value: share } },
  };
}

function measured(
  standing: Standing,
  open: Candidate,
  { value }: Measured,
  pair: PairOfCauses,
  read: ValueReader,
): Message[] {
  const { differential, observations, state } = standing;
  const expectations = new Expectations(differential, observations);
  const shown = shownFor(open, value, read, state.site.saturation, expectations, pair);
  const { place, instrument, channel } = open;
  const how: Message =
    instrument === 'data-link'
      ? { key: 'hint.look.link', values: { what: { kind: 'channel', id: channel } } }
      : {
          key: 'hint.worked.read',
          values: { place: { kind: 'place', id: place }, instrument: { kind: 'instrument', id: instrument } },
        };
  return [how, ...compared(standing, shown, pair, read)];
}

/** The steps of a sum, what this machine gives, what either cause would give. */
function compared(
  { differential, observations, state }: Standing,
  shown: Shown,
  pair: PairOfCauses,
  read: ValueReader,
): Message[] {
  const expectations = new Expectations(differential, observations);
  const { quantum, kind, value, error } = shown;
  const bands = pair.flatMap((cause): Message[] => {
    const expected = expectations.of(cause, shown.state, quantum, error);
    if (!expected) return [];
    const { low, high } = rangeOf(expected);
    return [
      {
        key: 'tells.band',
        values: { cause: { kind: 'cause', id: cause }, low: { kind, value: low }, high: { kind, value: high } },
      },
    ];
  });
  const gives: Message = { key: 'hint.worked.value', values: { what: quantumValue(quantum), value: { kind, value } } };
  return [...stepsOf(shown, read, state.site.saturation), gives, ...bands];
}

function seen(standing: Standing, { channel, value, ...look }: Classed, pair: PairOfCauses): Message[] {
  const alone = standpoint(standing.differential, standing.state.site.callout.tally, [{ ...look, channel, value }]);
  const prior = standpoint(standing.differential, standing.state.site.callout.tally, []);
  const gain = (cause: CauseId) => alone.posterior[cause]! / prior.posterior[cause]!;
  const favoured = gain(pair[0]) >= gain(pair[1]) ? pair[0] : pair[1];
  return [
    {
      key: 'hint.worked.seen',
      values: {
        what: { kind: 'channel', id: channel },
        seen: { kind: 'sense', id: senseBehind(channel).classes[value].word },
      },
    },
    { key: 'hint.worked.speaks', values: { cause: { kind: 'cause', id: favoured } } },
  ];
}

/** Belief in what fits best after the reading, before and after it. */
function shift({ state, differential, observations, point, named }: Standing, more: Observation): Message {
  const after = among(standpoint(differential, state.site.callout.tally, [...observations, more]), named).posterior;
  const cause = named.reduce((a, b) => (after[b]! > after[a]! ? b : a));
  return {
    key: 'hint.worked.belief',
    values: {
      cause: { kind: 'cause', id: cause },
      before: { kind: 'share', value: point.posterior[cause]! },
      after: { kind: 'share', value: after[cause]! },
    },
  };
}

/** Values as they stand in the notebook, absolute. */
function fromNotes({ observations }: Standing, { state }: Shown): ValueReader {
  return (channel) =>
    observations.findLast((each) => each.kind === 'measured' && each.channel === channel && each.state === state)
      ?.value ?? null;
}
