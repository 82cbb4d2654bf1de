/**
 * Goes over the sentences of a debrief and derives every number in them anew, by another way than the examiner's: what
 * was read from the notes alone, what a cause would show from machines run one by one, beliefs node by node from the
 * replayed attempt. What cannot be confirmed is an objection.
 */
import type { CauseId, MachineSetup, Snapshot } from '../../physics/types';
import { type AttemptState, decode, drawNuisance, encode, REAL_WORLD, replay } from '../attempt';
import type { Pack } from '../attempt/pack/types';
import {
  type Band,
  candidatesOf,
  causeLogLikelihoods,
  type Differential,
  type Judged,
  type Message,
  observationsIn,
  priorOf,
} from '../examiner';
import { benchOf } from '../examiner/case';
import { discrepancyOf } from '../examiner/discrepancy';
import { INPUTS, instrumentError, isTellingSum } from '../examiner/quanta';
import { sourceOf } from '../examiner/source';
import type { Channel, JudgedState, MessageValue, Node, Observation, Quantum } from '../examiner/types';
import { classOf, senseOf } from '../instruments/looks';
import { channelValue } from '../instruments/places';
import { type Stream, stream } from '../instruments/streams';

export interface Objection {
  readonly key: string;
  readonly why: string;
}

/** Machines run for each heavy node of a cause. */
const MACHINES = 10;
/** Nodes that carry less than this share of a cause's fit are left out. */
const HEAVY = 0.02;
/** Standard deviations between 10 and 90 %. */
const FOUR_FIFTHS = 2.5631;

interface Spread {
  readonly mean: number;
  readonly sd: number;
  /** standard error of the mean */
  readonly error: number;
}

export class Audit {
  private readonly observations: readonly Observation[];
  private readonly state: AttemptState;
  private readonly weights = new Map<CauseId, readonly { readonly node: Node; readonly weight: number }[]>();

  /** @param played as it was judged; it is replayed here from its code */
  constructor(
    played: AttemptState,
    pack: Pack,
    private readonly differential: Differential,
  ) {
    this.state = replay(decode(encode(played.attempt)), pack);
    const judged = this.state.verdicts.at(-1)?.notes ?? this.state.notes.length;
    const known = new Set(this.state.notes.slice(0, judged).map(({ index }) => index));
    this.observations = observationsIn(this.state).filter(({ note }) => known.has(note));
  }

  objections({ debrief, grade }: Pick<Judged, 'debrief' | 'grade'>): Objection[] {
    return debrief.sentences
      .flatMap((message) => this.of(message, debrief.sentences).map((why) => ({ key: message.key, why })))
      .concat(
        debrief.verdict.key.startsWith('verdict.right') && grade.right < 1
          ? [{ key: debrief.verdict.key, why: 'called right, graded wrong' }]
          : [],
      );
  }

  private of(message: Message, all: readonly Message[]): string[] {
    switch (message.key) {
      case 'tells.fits':
      case 'tells.fitsBoth':
        return this.reading(message, all);
      case 'tells.bands':
        return this.bands(message, all);
      case 'together':
        return this.together(message);
      case 'tells.seenIn':
        return this.seen(message, all);
      case 'alike.high':
      case 'alike.low':
        return this.alike(message, all);
      case 'next.missed':
        return this.missed(message);
      case 'care.partly':
        return numberOf(message.values.handled) < numberOf(message.values.met)
          ? []
          : ['all dangers handled, yet called partly'];
      default:
        return Object.values(message.values).some(
          (value) => typeof value === 'object' && 'value' in value && value.kind !== 'bits' && value.kind !== 'share',
        )
          ? ['a number that nobody checks']
          : [];
    }
  }

  private reading({ key, values }: Message, all: readonly Message[]): string[] {
    const { quantum, state } = nameIn(all);
    const said = numberOf(values.value);
    const read = this.valueRead(quantum, state);
    if (read === null || Math.abs(read - said) > 1e-6 * (1 + Math.abs(read))) return [`read ${read}, said ${said}`];
    const [a, b] = bandsIn(all);
    const error = this.errorOf(quantum, state, read);
    const off = (cause: CauseId): number => {
      const { mean, sd } = this.spread(cause, quantum, state, error);
      return ((read - mean) / sd) ** 2 / 2 + Math.log(sd);
    };
    const better = off(b) - off(a);
    // near the point where neither fits better, the runs' own scatter decides: no objection there
    if (key === 'tells.fitsBoth')
      return Math.abs(better) < 1.2 ? [] : [`said to fit both, but ${better.toFixed(2)} apart`];
    const named = idOf(values.cause);
    const sign = named === a ? better : -better;
    return named === a || named === b
      ? sign > -0.6
        ? []
        : [`${named} does not fit better (${sign.toFixed(2)})`]
      : [`${named} is neither of the two`];
  }

  private bands({ values }: Message, all: readonly Message[]): string[] {
    const { quantum, state } = nameIn(all);
    const read = this.valueRead(quantum, state);
    const error = this.errorOf(quantum, state, read ?? numberOf(values.low));
    const check = (cause: CauseId, low: number, high: number): string[] => {
      const { mean, sd, error: own } = this.spread(cause, quantum, state, error);
      const middle = (low + high) / 2;
      const width = (high - low) / FOUR_FIFTHS;
      if (Math.abs(middle - mean) > 0.5 * sd + 3 * own)
        return [`${cause}: middle ${middle}, runs give ${mean} ± ${own}`];
      return width < 0.55 * sd || width > 1.8 * sd ? [`${cause}: spread ${width}, runs give ${sd}`] : [];
    };
    return [
      ...check(idOf(values.cause) as CauseId, numberOf(values.low), numberOf(values.high)),
      ...check(idOf(values.other) as CauseId, numberOf(values.from), numberOf(values.to)),
    ];
  }

  private together({ values }: Message): string[] {
    const { tally } = this.state.site.callout;
    const prior = priorOf(this.differential, tally);
    const joint = Object.entries(tally)
      .filter(([, count]) => count > 0)
      .map(([cause]) => {
        const id = cause as CauseId;
        const nodes = this.differential.nodes.filter((node) => node.cause === id);
        const terms = nodes.map((node) => Math.log(node.weight) + this.likelihood(node));
        return [id, Math.log(prior[id]!) + logSum(terms)] as const;
      });
    const top = logSum(joint.map(([, each]) => each));
    const belief = new Map(joint.map(([cause, each]) => [cause, Math.exp(each - top)]));
    return (['cause', 'other'] as const).flatMap((name) => {
      const cause = idOf(values[name]) as CauseId;
      const said = numberOf(values[name === 'cause' ? 'share' : 'rest']);
      const found = belief.get(cause) ?? 0;
      return Math.abs(found - said) < 1e-6 ? [] : [`belief in ${cause} ${found}, said ${said}`];
    });
  }

  private seen({ values }: Message, all: readonly Message[]): string[] {
    const channel = idOf(all.find(({ key }) => key === 'tells.seen')!.values.what) as Channel;
    const look = this.observations.find((each) => each.kind === 'classed' && each.channel === channel);
    const sense = senseOf(channel);
    if (look?.kind !== 'classed' || !sense) return [`nobody looked at ${channel}`];
    return (['cause', 'other'] as const).flatMap((name) => {
      const cause = idOf(values[name]) as CauseId;
      const said = numberOf(values[name === 'cause' ? 'share' : 'rest']);
      const random = stream(`audit/${channel}/${cause}`);
      const nodes = this.differential.nodes.filter((node) => node.cause === cause);
      let hits = 0;
      let total = 0;
      for (const node of nodes) {
        for (let i = 0; i < MACHINES; i++) {
          const value = this.run(node, random, look.state, (snapshot) => channelValue(snapshot, channel));
          if (value === null) continue;
          total += node.weight;
          if (classOf(sense, value + sense.sd * random.normal()) === look.value) hits += node.weight;
        }
      }
      const share = total > 0 ? hits / total : 0;
      // people take a neighbouring class now and then, which the runs do not
      return Math.abs(share - said) < 0.2 ? [] : [`${cause} shows it in ${share} of the runs, said ${said}`];
    });
  }

  private alike({ key, values }: Message, all: readonly Message[]): string[] {
    const what = values.what as { kind: string; id: string };
    const quantum = (what.kind === 'sum' ? { sum: what.id } : { channel: what.id }) as Quantum;
    const causes = bandsIn(all);
    const healthy = this.spread('no-fault', quantum, 'running', 0).mean;
    return causes.flatMap((cause) => {
      const off = this.spread(cause, quantum, 'running', 0).mean - healthy;
      return off > 0 === (key === 'alike.high') ? [] : [`${cause} is ${off} off healthy`];
    });
  }

  private missed({ values }: Message): string[] {
    const channel = idOf(values.what);
    const minutes = candidatesOf(benchOf(this.state))
      .filter((each) => each.channel === channel)
      .map((each) => Math.ceil(each.minutes));
    return minutes.includes(numberOf(values.minutes)) ? [] : [`takes ${minutes.join(' or ')} minutes`];
  }

  /** SI, absolute, from the trainee's own notes; the last of each channel counts. */
  private valueRead(quantum: Quantum, state: JudgedState): number | null {
    const last = (channel: Channel): number | null => {
      const found = this.observations.filter(
        (each) => each.kind === 'measured' && each.channel === channel && each.state === state,
      );
      const note = found.length > 0 ? this.state.notes[found.at(-1)!.note] : undefined;
      if (!note) return null;
      return note.gauge ? note.value + this.state.site.atmosphere : note.value;
    };
    if (quantum.sum === undefined) {
      // a standing pressure is told as at the room's temperature on arrival
      const own = this.observations.findLast(
        (each) => each.kind === 'measured' && each.channel === quantum.channel && each.state === state,
      );
      return state === 'standing' ? (own?.value ?? null) : last(quantum.channel);
    }
    if (!isTellingSum(quantum.sum)) return null;
    const [a, b] = INPUTS[quantum.sum].map(last);
    if (a === null || b === null) return null;
    const { saturation } = this.state.site;
    if (quantum.sum === 'superheat') return b - (saturation.tDew(a) ?? Number.NaN);
    if (quantum.sum === 'subcooling') return (saturation.tBubble(a) ?? Number.NaN) - b;
    return quantum.sum === 'air-drop' || quantum.sum === 'line-difference' ? a - b : b - a;
  }

  private errorOf(quantum: Quantum, state: JudgedState, read: number): number {
    if (quantum.sum !== undefined) return instrumentError(quantum);
    const seen = this.observations.findLast((each) => each.channel === quantum.channel && each.state === state);
    const candidate = candidatesOf(benchOf(this.state)).find(
      (each) => each.channel === quantum.channel && each.state === state,
    );
    return seen?.kind === 'measured'
      ? Math.sqrt(seen.noise ** 2 + seen.bias ** 2)
      : candidate
        ? instrumentError(quantum, candidate, read)
        : 0;
  }

  /** What machines with this cause show, in the sizes that fit the readings. */
  private spread(cause: CauseId, quantum: Quantum, state: JudgedState, error: number): Spread {
    const random = stream(`audit/${cause}/${JSON.stringify(quantum)}/${state}`);
    let total = 0;
    let first = 0;
    let second = 0;
    let count = 0;
    for (const { node, weight } of this.heavy(cause)) {
      for (let i = 0; i < MACHINES; i++) {
        const value = this.run(node, random, state, (snapshot) => shownBy(quantum, snapshot));
        if (value === null) continue;
        total += weight;
        first += weight * value;
        second += weight * value * value;
        count += 1;
      }
    }
    const mean = first / total;
    const own = Math.max(0, second / total - mean * mean);
    const model = quantum.sum === undefined ? discrepancyOf(quantum.channel, mean) : 0;
    return {
      mean,
      sd: Math.sqrt(own + error * error + model * model),
      error: Math.sqrt(own / Math.max(1, Math.min(count, MACHINES))),
    };
  }

  private heavy(cause: CauseId): readonly { readonly node: Node; readonly weight: number }[] {
    const known = this.weights.get(cause);
    if (known) return known;
    const nodes = this.differential.nodes.filter((node) => node.cause === cause);
    const logs = nodes.map((node) => Math.log(node.weight) + this.likelihood(node));
    const top = logSum(logs);
    const all = nodes
      .map((node, i) => ({ node, weight: Math.exp(logs[i] - top) }))
      .filter(({ weight }) => weight > HEAVY);
    this.weights.set(cause, all);
    return all;
  }

  private likelihood(node: Node): number {
    const alone = { ...this.differential, nodes: [{ ...node, weight: 1 }] };
    return causeLogLikelihoods(alone, this.observations).get(node.cause)!;
  }

  private run(node: Node, random: Stream, state: JudgedState, value: (snapshot: Snapshot) => number): number | null {
    const { plant, refrigerant, conditions } = this.state.site.callout;
    const severity = node.from + (node.to - node.from) * random.uniform();
    const setup: MachineSetup = {
      plant,
      refrigerant,
      conditions,
      faults: node.key === '' ? {} : { [node.key]: severity },
      nuisance: drawNuisance(random),
    };
    const snapshot = sourceOf(REAL_WORLD).snapshots(setup, [state])[state];
    return snapshot ? value(snapshot) : null;
  }
}

function shownBy(quantum: Quantum, snapshot: Snapshot): number {
  const of = (channel: Channel): number => channelValue(snapshot, channel);
  switch (quantum.sum) {
    case undefined:
      return of(quantum.channel);
    case 'superheat':
    case 'subcooling':
      return of(quantum.sum);
    case 'air-drop':
      return of('returnAirTemp') - of('supplyAirTemp');
    case 'air-rise':
      return of('condenserLeavingAirTemp') - of('condenserEnteringAirTemp');
    case 'approach':
      return of('liquidLineTemp') - of('condenserEnteringAirTemp');
    default:
      return of('liquidLineTemp') - of('liquidLineTempAfterDrier');
  }
}

/** What the bands are of: named by the sentence before them. */
function nameIn(all: readonly Message[]): { quantum: Quantum; state: JudgedState } {
  const named = all.find(({ key }) => /^tells\.(this|thisInState|hardly|would)$/.test(key))!;
  const { id, kind } = named.values.what as { kind: string; id: string };
  const run = all
    .flatMap(({ values }) => Object.values(values))
    .find((value) => typeof value === 'object' && 'run' in value);
  const state = String((run as { run?: string } | undefined)?.run ?? 'running')
    .split('/')
    .at(-1) as JudgedState;
  return { quantum: (kind === 'sum' ? { sum: id } : { channel: id }) as Quantum, state };
}

function bandsIn(all: readonly Message[]): [Band['cause'], Band['cause']] {
  const bands = all.find(({ key }) => key === 'tells.bands' || key === 'tells.seenIn')!;
  return [idOf(bands.values.cause) as CauseId, idOf(bands.values.other) as CauseId];
}

function numberOf(value: MessageValue | undefined): number {
  return typeof value === 'number' ? value : typeof value === 'object' && 'value' in value ? value.value : Number.NaN;
}

function idOf(value: MessageValue | undefined): string {
  return typeof value === 'object' && 'id' in value ? value.id : '';
}

function logSum(terms: readonly number[]): number {
  const top = Math.max(...terms);
  return top + Math.log(terms.reduce((sum, each) => sum + Math.exp(each - top), 0));
}
