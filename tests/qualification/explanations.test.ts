/**
 * What a debrief says is true: every number derived anew from machines run one by one, every "fits better" with the sign
 * that they give; and an audit that finds nothing wrong can find something wrong. `npm run explanations` does it 200 times.
 */
import { describe, expect, it } from 'vitest';
import { type Judged, judge } from '../../src/examiner';
import { playTrainee, type TraineeId } from '../../src/examiner/trainees';
import { createText } from '../../src/i18n';
import { Audit } from '../../src/packs/audit';
import { misprinted } from '../../src/packs/misprints';
import { messageText } from '../../src/panels/kit/message';
import { differentialFor, shippedCallouts } from '../support/differentials';

const PLAYED: readonly TraineeId[] = ['greedy', 'first-hunch', 'hasty'];
const english = createText('en', 'si');
const all = shippedCallouts();
/** One callout of each machine with one indoor unit. */
const subjects = (['orifice-split', 'inverter-split', 'cold-room', 'thermostatic-heat-pump'] as const).map(
  (plant) => all.find(({ callout }) => callout.plant === plant)!,
);

describe.each(subjects.map((shipped) => [shipped.callout.id, shipped] as const))('%s', (_id, { pack, callout }) => {
  const differential = differentialFor({ pack, callout });
  const told = PLAYED.map((trainee) => {
    const state = playTrainee(trainee, { pack, callout: callout.id, seed: 'explained', differential });
    return { state, judged: judge(state, differential), audit: new Audit(state, pack, differential) };
  });

  it('says nothing that runs of the machines do not confirm, with at least four numbers', () => {
    for (const { judged, audit, state } of told) {
      expect(audit.objections(judged)).toEqual([]);
      const words = judged.debrief.sentences.map((each) => messageText(english, each, state.site.atmosphere)).join(' ');
      expect(words.match(/\d+(?:[.,]\d+)?/g)?.length ?? 0, words).toBeGreaterThanOrEqual(4);
    }
  });

  it('would be found out if a number or a cause were another', () => {
    for (const [i, { judged, audit }] of told.entries()) {
      const spoilt = (seed: string): Judged => ({
        ...judged,
        debrief: { ...judged.debrief, sentences: misprinted(judged.debrief.sentences, `${callout.id}/${i}/${seed}`) },
      });
      expect(audit.objections(spoilt('a'))).not.toEqual([]);
      expect(audit.objections(spoilt('b'))).not.toEqual([]);
    }
  });
});
