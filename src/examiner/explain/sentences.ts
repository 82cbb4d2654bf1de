/**
 * The few sentences of the first screen, chosen by what separates the two causes most on this machine. Each has a key;
 * the catalogues hold the words (at most twelve a sentence, two numbers).
 */
import { exp } from '../../../physics/math/elementary';
import type { CauseId } from '../../../physics/types';
import { causeLogLikelihoods } from '../belief';
import { type Case, observed, SUPPORTED } from '../case';
import { LN2, logNormal, Z80 } from '../numeric';
import type {
  Band,
  Channel,
  Classed,
  Grade,
  Message,
  MessageValue,
  Picture,
  Quantum,
  ValuedCandidate,
  ValueKind,
} from '../types';
import { type Expectations, separation } from './bands';
import { tellingLook } from './looks';
import type { ReadQuantum } from './quanta';

const MOST_SENTENCES = 8;
/** Standard deviations from healthy from which a reading counts as high or low. */
const OFF = 2;
/** Nearer than this the two causes look alike on a reading. */
const ALIKE = 1;
const MOST_ALIKE = 2;
/** Fewer points by one more reading are not worth a sentence. */
const WORTH = 0.5;

export function quantumValue(quantum: Quantum): MessageValue {
  return quantum.sum === undefined ? { kind: 'channel', id: quantum.channel } : { kind: 'sum', id: quantum.sum };
}

export function verdictLine({ verdict, truths, twins }: Case, right: Grade['right']): Message {
  const was = { kind: 'cause', id: truths[0] } as const;
  if (!verdict) return { key: 'verdict.none', values: { was } };
  const said = { kind: 'cause', id: verdict.cause } as const;
  if (truths.includes(verdict.cause)) return { key: 'verdict.right', values: { said } };
  if (twins.includes(verdict.cause)) return { key: 'verdict.twin', values: { said, was } };
  return { key: right > 0 ? 'verdict.mends' : 'verdict.wrong', values: { said, was } };
}

/** What was read that parts the two causes most. */
export interface Nearest {
  readonly picture: Picture;
  /** false where it hardly does */
  readonly tells: boolean;
}

/** What could have been measured. */
export interface Open extends Pick<Picture, 'kind' | 'bands'> {
  readonly channel: Channel;
}

export interface Told {
  readonly one: Case;
  readonly grade: Grade;
  readonly expectations: Expectations;
  readonly quanta: readonly ReadQuantum[];
  readonly truth: CauseId;
  readonly rival: CauseId | null;
  readonly nearest: Nearest | null;
  readonly open: Open | null;
  readonly missed: ValuedCandidate | null;
}

export function sentencesOf(told: Told): Message[] {
  const { grade, truth } = told;
  const body = [...alike(told), ...tells(told), ...together(told), { key: `why.${truth}`, values: {} }, ...next(told)];
  const before = [care(told), working(grade)].flatMap((each) => each ?? []);
  const after = vanComesBack(told);
  return [...before.slice(0, Math.max(0, MOST_SENTENCES - body.length - after.length)), ...body, ...after].slice(
    0,
    MOST_SENTENCES,
  );
}

function care({ one, grade }: Told): Message | null {
  const { met, handled } = grade.hazards;
  if (one.state.hazardActs.length > 0) return { key: 'care.act', values: {} };
  if (met === 0) return null;
  return handled === met ? { key: 'care.safe', values: {} } : { key: 'care.partly', values: { handled, met } };
}

function working({ parts }: Grade): Message | null {
  const reasons = parts.find(({ part }) => part === 'working')?.reasons ?? [];
  const slip = reasons.find(({ key }) => key.startsWith('reason.working.slip.'));
  if (slip) return { key: slip.key, values: slip.values };
  const right = reasons.find(({ key }) => key === 'reason.working.right');
  return right ? { key: 'working.right', values: right.values } : null;
}

/** What both causes do alike, and not as a healthy machine. */
function alike({ expectations, quanta, truth, rival, nearest }: Told): Message[] {
  if (!rival || rival === 'no-fault' || truth === 'no-fault') return [];
  const shown = JSON.stringify(nearest?.picture.quantum);
  const found = quanta.flatMap(({ quantum, state, error }) => {
    if (state !== 'running' || JSON.stringify(quantum) === shown) return [];
    const [a, b, healthy] = [truth, rival, 'no-fault' as const].map((cause) =>
      expectations.of(cause, state, quantum, error),
    );
    if (!a || !b || !healthy || separation(a, b) > ALIKE) return [];
    const off = Math.min(separation(a, healthy), separation(b, healthy));
    const high = a.mean > healthy.mean;
    return off >= OFF && high === b.mean > healthy.mean ? [{ quantum, off, high }] : [];
  });
  return found
    .sort((a, b) => b.off - a.off)
    .slice(0, MOST_ALIKE - 1)
    .map(({ quantum, high }) => ({ key: high ? 'alike.high' : 'alike.low', values: { what: quantumValue(quantum) } }));
}

function tells({ one, nearest, open, truth, rival }: Told): Message[] {
  if (!rival) return [{ key: 'tells.noRival', values: {} }];
  const seen = nearest?.tells
    ? null
    : tellingLook(one.differential, observed(one.plain, one.judgedNotes), truth, rival);
  if (seen)
    return [
      { key: 'tells.seen', values: { what: { kind: 'channel', id: seen.channel } } },
      shares(one, seen, truth, rival),
    ];
  if (nearest) return measuredApart(nearest);
  const nothing: Message = { key: 'tells.nothingRead', values: { rival: { kind: 'cause', id: rival } } };
  if (!open) return [nothing];
  const would: Message = { key: 'tells.would', values: { what: { kind: 'channel', id: open.channel } } };
  return [nothing, would, bandsOf(open.kind, open.bands)];
}

function measuredApart({ picture, tells }: Nearest): Message[] {
  const { quantum, kind, state, read, bands } = picture;
  const what = quantumValue(quantum);
  const inState = { what, state: { kind: 'state', id: state } } as const;
  const name: Message = !tells
    ? { key: 'tells.hardly', values: { what } }
    : state === 'running'
      ? { key: 'tells.this', values: { what } }
      : { key: 'tells.thisInState', values: inState };
  const value = { kind, value: read, run: `as-found/${state}` } as const;
  const better = fitsBetter(read, bands);
  const fits: Message = better
    ? { key: 'tells.fits', values: { value, cause: { kind: 'cause', id: better } } }
    : { key: 'tells.fitsBoth', values: { value } };
  return [name, fits, bandsOf(kind, bands)];
}

/** The cause under which a reading is likelier by at least a quarter of a bit; null where neither is. */
export function fitsBetter(read: number, [a, b]: readonly [Band, Band]): CauseId | null {
  const log = ({ middle, low, high }: Band): number => {
    const sd = (high - low) / (2 * Z80);
    return logNormal(read, middle, sd * sd);
  };
  const bits = (log(a) - log(b)) / LN2;
  return Math.abs(bits) < 0.25 ? null : bits > 0 ? a.cause : b.cause;
}

function bandsOf(kind: ValueKind, [a, b]: readonly [Band, Band]): Message {
  const value = (each: number, run: string) => ({ kind, value: each, run }) as const;
  return {
    key: 'tells.bands',
    values: {
      cause: { kind: 'cause', id: a.cause },
      low: value(a.low, a.run),
      high: value(a.high, a.run),
      other: { kind: 'cause', id: b.cause, opens: true },
      from: value(b.low, b.run),
      to: value(b.high, b.run),
    },
  };
}

/** In how many cases of either cause one sees what was seen. */
function shares({ differential }: Case, seen: Classed, truth: CauseId, rival: CauseId): Message {
  const likelihoods = causeLogLikelihoods(differential, [seen], [truth, rival]);
  const share = (cause: CauseId) => ({ kind: 'share', value: exp(likelihoods.get(cause)!) }) as const;
  return {
    key: 'tells.seenIn',
    values: {
      cause: { kind: 'cause', id: truth },
      share: share(truth),
      other: { kind: 'cause', id: rival, opens: true },
      rest: share(rival),
    },
  };
}

/** Belief in the two from everything that was read, the tally with it. */
function together({ one, truth, rival }: Told): Message[] {
  if (!rival || one.judgedNotes === 0) return [];
  const share = (cause: CauseId) => ({ kind: 'share', value: one.plain.final[cause] ?? 0 }) as const;
  return [
    {
      key: 'together',
      values: {
        cause: { kind: 'cause', id: truth },
        share: share(truth),
        other: { kind: 'cause', id: rival },
        rest: share(rival),
      },
    },
  ];
}

/** What to do next time: the reading that was missed, or what cannot be told here. */
function next({ one, grade, missed, truth }: Told): Message[] {
  const { twins, verdict, plain } = one;
  const twin = twins.find((each) => each !== truth);
  if (twin) return [{ key: 'next.twin', values: { other: { kind: 'cause', id: twin } } }];
  if ((grade.proveIt?.won ?? 0) >= WORTH) return [{ key: 'next.proved', values: {} }];
  if (missed) {
    return [
      {
        key: 'next.missed',
        values: {
          what: { kind: 'channel', id: missed.channel },
          minutes: { kind: 'minutes', value: Math.ceil(missed.minutes) },
        },
      },
    ];
  }
  if (verdict && !twins.includes(verdict.cause) && (plain.final[truth] ?? 0) >= SUPPORTED) {
    return [{ key: 'next.pointed', values: { was: { kind: 'cause', id: truth } } }];
  }
  if (!verdict || (plain.final[verdict.cause] ?? 0) < SUPPORTED) return [{ key: 'next.unproven', values: {} }];
  return [{ key: (grade.proveIt?.open ?? 0) >= WORTH ? 'next.proofMissing' : 'next.proven', values: {} }];
}

function vanComesBack({ one }: Told): Message[] {
  const last = one.state.repairs.at(-1);
  return last?.callBack ? [{ key: `callBack.${last.callBack}`, values: {} }] : [];
}
