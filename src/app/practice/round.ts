/** Which round comes next, and the machine for it. */
import type { CauseId } from '../../../physics/types';
import {
  dueAt,
  newProgress,
  nextTruth,
  type Progress,
  type RoundWay,
  SUPPORT_STEPS,
  type Supports,
} from '../../practice/progress';
import { makeRound, type Round } from '../../practice/round';
import { breath, chapters, edgeCalled, edgesOn, type Placed } from './atlas';
import { progress } from './store';

export interface Dealt {
  readonly edge: Placed;
  readonly way: RoundWay;
  readonly before: Progress;
  readonly supports: Supports;
  readonly round: Round;
}

/** Reviews are dealt with what a person on the move can do: no own sums, few places. */
const IN_REVIEW: Supports = { beside: 'plate', sums: 'given', causes: 3, places: 'few' };

/** `what`: id of a pair, `mixed`, or null for a quarrel. Null where no machine can be had. */
export async function deal(what: string | null): Promise<Dealt | null> {
  const edge = await edgeFor(what);
  if (!edge) return null;
  const before = progress.peek().get(edge.id) ?? newProgress(edge.id);
  const way = what === null ? 'quarrel' : what === 'mixed' ? 'mixed' : before.stage;
  const truth = nextTruth(before, edge.causes, random() < 0.5);
  // The other side where this one stops every machine here; another place where neither can be told.
  const turns: CauseId[] = [truth, ...edge.causes.filter((cause) => cause !== truth)];
  // Both are seen side by side where they were met first.
  const settings = before.stage === 'contrast' ? edge.settings : shuffled(edge.settings);
  for (const cause of turns) {
    for (const setting of settings) {
      await breath();
      const round = makeRound(setting, edge, cause, newSeed());
      if (round)
        return { edge, way, before, round, supports: way === 'quarrel' ? IN_REVIEW : SUPPORT_STEPS[before.level]! };
    }
  }
  return null;
}

async function edgeFor(what: string | null): Promise<Placed | null> {
  if (what !== null && what !== 'mixed') return edgeCalled(what);
  const all = [...progress.peek().values()];
  const due = dueAt(progress.peek(), Date.now());
  // Mixed: whatever is open; a quarrel: what is due, else any that was learned.
  const ids =
    what === 'mixed'
      ? all.filter(({ stage }) => stage === 'mixed')
      : due.length > 0
        ? due.slice(0, 1)
        : all.filter(({ card }) => card !== null);
  for (const { edge } of shuffled(ids)) {
    const found = await edgeCalled(edge);
    if (found) return found;
  }
  // Nothing learned yet: any pair of the first machine will do for a first quarrel.
  const [first] = await chapters();
  return first ? (shuffled(await edgesOn(first))[0] ?? null) : null;
}

function shuffled<T>(list: readonly T[]): T[] {
  return list
    .map((value) => ({ value, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ value }) => value);
}

function random(): number {
  const [word = 0] = crypto.getRandomValues(new Uint32Array(1));
  return word / 2 ** 32;
}

function newSeed(): string {
  return `${Date.now().toString(36)}-${Math.floor(random() * 2 ** 32).toString(36)}`;
}
