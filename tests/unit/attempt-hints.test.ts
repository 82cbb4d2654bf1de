/** Rules of hints: three steps in their order, each after an own act, none in an exam or after the verdict. */
import { describe, expect, it } from 'vitest';
import {
  type Action,
  type AttemptState,
  apply,
  decode,
  encode,
  nextHint,
  refusalOf,
  replay,
  start,
} from '../../src/attempt';
import { quickWorld } from '../support/fake-machine';
import { samplePack } from '../support/pack-fixture';

const pack = samplePack();
const begin = (callout = 'back-office') => start(pack, callout, 'hints', quickWorld);
const done = (state: AttemptState, ...actions: Action[]) => actions.reduce(apply, state);
const why = (state: AttemptState, level: 1 | 2 | 3) => refusalOf(state, { kind: 'hint', level })?.code ?? null;

const LOOK: Action = { kind: 'look', place: 'filter-face' };
const READ: Action = { kind: 'read', instrument: 'pipe-clamp', place: 'suction-line', quantity: 'temperature' };
const hint = (level: 1 | 2 | 3): Action => ({ kind: 'hint', level });

describe('hints', () => {
  it('want an own act before the first and between any two', () => {
    expect(why(begin(), 1)).toBe('hint-too-soon');
    const once = done(begin(), LOOK, hint(1));
    expect(why(once, 2)).toBe('hint-too-soon');
    expect(why(done(once, READ), 2)).toBeNull();
  });

  it('do not take a star, a mark or taking back for an own act', () => {
    const once = done(begin(), READ, hint(1));
    const idle = done(once, { kind: 'star', note: 0, side: 'for' }, { kind: 'mark', text: 'here' }, { kind: 'undo' });
    expect(why(idle, 2)).toBe('hint-too-soon');
  });

  it('come in their order, and stay at the worked step', () => {
    let state = done(begin(), LOOK);
    expect(why(state, 2)).toBe('hint-too-soon');
    expect(why(state, 3)).toBe('hint-too-soon');
    for (const level of [1, 2, 3, 3] as const) {
      expect(nextHint(state)).toBe(level);
      state = done(state, hint(level), { kind: 'wait', seconds: 60 });
    }
    expect(state.hints.map(({ level }) => level)).toEqual([1, 2, 3, 3]);
  });

  it('are not there in an exam, nor once the verdict is given', () => {
    const exam = done(begin('front-shop'), { kind: 'wait', seconds: 60 });
    expect(why(exam, 1)).toBe('no-hint-now');
    const said = done(begin(), READ, {
      kind: 'verdict',
      cause: 'undercharge',
      size: 'clear',
      rival: 'drier-restriction',
      cites: [],
    });
    expect(why(said, 1)).toBe('no-hint-now');
  });

  it('are part of the record: they survive the code and the replay', () => {
    const state = done(begin(), LOOK, hint(1), READ, hint(2));
    const { hints } = replay(decode(encode(state.attempt)), pack, quickWorld);
    expect(hints).toEqual(state.hints);
  });

  it('leave nothing to take back from before them', () => {
    expect(done(begin(), READ, hint(1)).undo).toEqual([]);
  });
});
