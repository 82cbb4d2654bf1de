/** Everything that a debrief shows, as numbers and message keys. */
import type { CauseId } from '../../../physics/types';
import type { AttemptState } from '../../attempt';
import { type Case, observed, openCase, SUPPORTED } from '../case';
import { gradeCase } from '../grade';
import { declared } from '../parts/belief';
import { instrumentError, kindOf } from '../quanta';
import type { Debrief, Differential, Grade, PressureEnthalpy, RivalRow, ValuedCandidate } from '../types';
import { bestOf, standpoint, valueAll } from '../value';
import { bandOf, Expectations, separation } from './bands';
import { type ReadQuantum, readQuanta } from './quanta';
import { RunBook } from './runs';
import { type Nearest, type Open, sentencesOf, verdictLine } from './sentences';

/** A reading that parts the two by less (in common standard deviations) is no picture worth showing. */
const TELLS = 0.8;
/** A sum that a technician thinks in is shown before a bare reading that parts the two hardly better. */
const SUMS_FIRST = 1.3;
const FITS = 2;
const ROW_READINGS = 3;

export interface Judged {
  readonly grade: Grade;
  readonly debrief: Debrief;
}

export function judge(state: AttemptState, differential: Differential): Judged {
  const one = openCase(state, differential);
  const grade = gradeCase(one);
  return { grade, debrief: debriefOf(one, grade) };
}

function debriefOf(one: Case, grade: Grade): Debrief {
  const runs = new RunBook(one);
  const expectations = new Expectations(one.differential, observed(one.plain, one.judgedNotes));
  const quanta = readQuanta(one.state, one.differential.states, observed(one.plain, one.judgedNotes));
  const truth = one.truths[0];
  const rival = rivalOf(one, truth);
  const nearest = rival ? nearestOf(expectations, quanta, truth, rival, runs) : null;
  if (nearest) runs.ofMachine('as-found', nearest.picture.state);
  const picture = nearest?.tells ? nearest.picture : null;
  const missed = missedOf(one);
  const open = nearest || !rival ? null : wouldRead(one, expectations, truth, rival, runs);
  const rivals = rivalsOf(one, expectations, quanta, runs);
  const cycles = cyclesOf(one, expectations, rival, runs);
  return {
    verdict: verdictLine(one, grade.right),
    picture,
    sentences: sentencesOf({ one, grade, expectations, quanta, truth, rival, nearest, open, missed }),
    lookAlike: one.state.site.callout.lookAlike ?? null,
    rivals,
    trail: trailOf(one, grade),
    parts: grade.parts,
    missed,
    cycles,
    runs: runs.all(),
  };
}

/** The cause that the truth has to be told from: the wrong verdict, else the named rival, else the nearest one. */
function rivalOf({ verdict, twins, plain }: Case, truth: CauseId): CauseId | null {
  if (verdict && !twins.includes(verdict.cause)) return verdict.cause;
  if (verdict && verdict.rival !== truth && !twins.includes(verdict.rival)) return verdict.rival;
  const others = (Object.entries(plain.final) as [CauseId, number][]).filter(([cause]) => !twins.includes(cause));
  return others.length === 0 ? null : others.reduce((a, b) => (b[1] > a[1] ? b : a))[0];
}

/** Of what was read, the value on which the two causes lie farthest apart, and whether that tells them apart. */
function nearestOf(
  expectations: Expectations,
  quanta: readonly ReadQuantum[],
  truth: CauseId,
  rival: CauseId,
  runs: RunBook,
): Nearest | null {
  const found = quanta.flatMap((each) => {
    const a = expectations.of(truth, each.state, each.quantum, each.error);
    const b = expectations.of(rival, each.state, each.quantum, each.error);
    return a && b ? [{ each, a, b, apart: separation(a, b) }] : [];
  });
  if (found.length === 0) return null;
  const rank = ({ each, apart }: (typeof found)[number]) => apart * (each.quantum.sum === undefined ? 1 : SUMS_FIRST);
  const best = found.reduce((x, y) => (rank(y) > rank(x) ? y : x));
  const { quantum, kind, state, read, notes } = best.each;
  const bands = [bandOf(best.a, state, runs), bandOf(best.b, state, runs)] as const;
  return { picture: { quantum, kind, state, read, notes, bands }, tells: best.apart >= TELLS };
}

/** Where nothing was measured: the measurement on which the two lie farthest apart, and what each would show there. */
function wouldRead(
  { candidates, read }: Case,
  expectations: Expectations,
  truth: CauseId,
  rival: CauseId,
  runs: RunBook,
): Open | null {
  const found = candidates.flatMap((candidate) => {
    const seen = read(candidate);
    if (seen?.kind !== 'measured') return [];
    const { channel, state, instrument, quantity } = candidate;
    const error = instrumentError({ channel }, { instrument, quantity }, seen.value);
    const a = expectations.of(truth, state, { channel }, error);
    const b = expectations.of(rival, state, { channel }, error);
    return a && b ? [{ channel, state, a, b, apart: separation(a, b) }] : [];
  });
  if (found.length === 0) return null;
  const { channel, state, a, b } = found.reduce((x, y) => (y.apart > x.apart ? y : x));
  return { channel, kind: kindOf({ channel }), bands: [bandOf(a, state, runs), bandOf(b, state, runs)] };
}

/** For each cause what was read against what it would have shown, where they differ most. */
function rivalsOf(one: Case, expectations: Expectations, quanta: readonly ReadQuantum[], runs: RunBook): RivalRow[] {
  const causes = Object.entries(one.plain.final) as [CauseId, number][];
  return causes
    .sort((a, b) => b[1] - a[1])
    .map(([cause, posterior]) => {
      const readings = quanta.flatMap(({ quantum, kind, state, read, error }) => {
        const expected = expectations.of(cause, state, quantum, error);
        if (!expected) return [];
        const off = Math.abs(read - expected.mean) / expected.sd;
        const band = bandOf(expected, state, runs);
        return [{ off, row: { quantum, kind, state, read, band, fits: off <= FITS } }];
      });
      const telling = readings.sort((a, b) => b.off - a.off).slice(0, ROW_READINGS);
      return { cause, posterior, readings: telling.map(({ row }) => row) };
    });
}

function trailOf({ state, prior }: Case, { trail }: Grade): Debrief['trail'] {
  return trail.map(({ note, posterior, bits }) => {
    const stake = state.stakes.filter(({ notes }) => notes <= note + 1).at(-1) ?? null;
    return { note, own: declared(prior, stake), examiner: posterior, bits };
  });
}

/** The best reading that was still open at the verdict, where the verdict was not yet supported; else none. */
function missedOf(one: Case): ValuedCandidate | null {
  const { verdict, plain, twins, differential, tally, bench, judgedNotes } = one;
  const sure = Math.max(...Object.values(plain.final));
  const right = verdict !== null && twins.includes(verdict.cause);
  if (right && sure >= SUPPORTED) return null;
  const open = valueAll(standpoint(differential, tally, observed(plain, judgedNotes)), bench);
  return bestOf(open.filter((candidate) => one.read(candidate) !== null));
}

function cyclesOf(one: Case, expectations: Expectations, rival: CauseId | null, runs: RunBook): PressureEnthalpy {
  const { refrigerant } = one.state.site.callout;
  const truth = one.truths[0];
  const node = rival ? expectations.bestNode(rival) : null;
  const wanted = [
    { what: 'healthy', cause: 'no-fault', run: runs.ofMachine('healthy') },
    ...(truth === 'no-fault' ? [] : [{ what: 'as-found', cause: truth, run: runs.ofMachine('as-found') }]),
    ...(rival && rival !== 'no-fault' && node
      ? [{ what: 'rival', cause: rival, run: runs.ofNode(node, 'running') }]
      : []),
  ] as const;
  const cycles = wanted.flatMap(({ what, cause, run }) => {
    const stations = runs.stations(run);
    return stations ? [{ what, cause, run, stations } as PressureEnthalpy['cycles'][number]] : [];
  });
  return { refrigerant, cycles };
}
