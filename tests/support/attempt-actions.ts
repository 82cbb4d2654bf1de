/** Arbitrary actions of a trainee, sensible and senseless, for property tests. */
import fc from 'fast-check';
import { plantDescription } from '../../physics';
import { FAMILIES, type PlantId } from '../../physics/types';
import { applyAction } from '../../src/attempt/reducer';
import { ActionRefused } from '../../src/attempt/refusal';
import type { AttemptState } from '../../src/attempt/state';
import {
  type Action,
  HAZARD_ACTS,
  PROCEDURE_STEPS,
  REMEDIES,
  ROOT_CAUSES,
  SAFETY_STEPS,
  SIZE_WORDS,
  STAKE_MOMENTS,
  SUM_KINDS,
} from '../../src/attempt/types';
import { channelsAt, instrumentsAt, readableAt } from '../../src/instruments';

const cause = fc.constantFrom(...FAMILIES, 'no-fault' as const);
const note = fc.nat({ max: 12 });
const figure = fc.double({ min: -400, max: 4e6, noNaN: true });

/** Every reading that can be taken on a plant. */
function readings(plant: PlantId): Action[] {
  return plantDescription(plant).places.flatMap((place) =>
    instrumentsAt(place).flatMap((instrument) =>
      readableAt(instrument, place).flatMap((quantity) =>
        channelsAt(instrument, place, quantity).map((channel): Action => {
          const read = { kind: 'read', instrument, place: place.id, quantity } as const;
          return instrument === 'data-link' ? { ...read, channel } : read;
        }),
      ),
    ),
  );
}

export function actionOn(plant: PlantId): fc.Arbitrary<Action> {
  const places = plantDescription(plant).places.map(({ id }) => id);
  const read = fc.constantFrom(...readings(plant));
  const mostly = fc.oneof(
    { weight: 8, arbitrary: read },
    {
      weight: 2,
      arbitrary: fc
        .tuple(read, fc.nat({ max: 60 }), fc.boolean())
        .map(([action, dwell, insulated]) => ({ ...action, dwell, insulated }) as Action),
    },
    { weight: 2, arbitrary: fc.record({ kind: fc.constant('look' as const), place: fc.constantFrom(...places) }) },
  );
  const rest: fc.Arbitrary<Action>[] = [
    fc.record({ kind: fc.constant('safety' as const), step: fc.constantFrom(...SAFETY_STEPS), taken: fc.boolean() }),
    fc.record({ kind: fc.constant('wait' as const), seconds: fc.integer({ min: 1, max: 900 }) }),
    fc.record({
      kind: fc.constant('control' as const),
      change: fc.record(
        {
          running: fc.boolean(),
          outdoorFanRunning: fc.boolean(),
          indoorFan: fc.constantFrom('low' as const, 'high' as const),
          fixedSpeed: fc.boolean(),
          setPoint: fc.integer({ min: 290, max: 302 }),
        },
        { requiredKeys: [] },
      ),
    }),
    fc.record({ kind: fc.constant('tape' as const), on: fc.boolean() }),
    fc.record({ kind: fc.constant('mark' as const), text: fc.string({ maxLength: 30 }) }),
    fc
      .record({
        sum: fc.constantFrom(...SUM_KINDS),
        notes: fc.array(note, { maxLength: 2 }),
        answer: figure,
        saturation: fc.option(figure, { nil: undefined }),
      })
      .map(
        ({ saturation, ...sum }): Action => ({ kind: 'sum', ...sum, ...(saturation !== undefined && { saturation }) }),
      ),
    fc.record({
      kind: fc.constant('stake' as const),
      moment: fc.constantFrom(...STAKE_MOMENTS),
      chips: fc.dictionary(cause, fc.nat({ max: 9 }), { maxKeys: 3, noNullPrototype: true }),
    }),
    fc.record({
      kind: fc.constant('star' as const),
      note,
      side: fc.constantFrom('for' as const, 'against' as const, 'none' as const),
    }),
    fc.record({
      kind: fc.constant('verdict' as const),
      cause,
      size: fc.constantFrom(...SIZE_WORDS),
      rival: cause,
      cites: fc.uniqueArray(note, { maxLength: 3 }),
    }),
    fc.record({
      kind: fc.constant('repair' as const),
      remedy: fc.constantFrom(...REMEDIES),
      steps: fc.shuffledSubarray([...PROCEDURE_STEPS]),
      root: fc.option(fc.constantFrom(...ROOT_CAUSES), { nil: null }),
    }),
    fc.record({
      kind: fc.constant('reflect' as const),
      forVerdict: fc.uniqueArray(note, { maxLength: 3 }),
      forRival: fc.uniqueArray(note, { maxLength: 3 }),
      missing: fc.option(fc.constantFrom('liquidLineTemp', 'suctionPressure'), { nil: null }),
    }),
    fc.record({ kind: fc.constant('hint' as const), level: fc.constantFrom(1 as const, 2 as const, 3 as const) }),
    fc.record({ kind: fc.constant('hazard' as const), act: fc.constantFrom(...HAZARD_ACTS) }),
    fc.constant({ kind: 'undo' as const }),
  ];
  const closing = fc.record({ kind: fc.constant('verified' as const), notes: fc.array(note, { maxLength: 3 }) });
  return fc.oneof({ weight: 24, arbitrary: mostly }, ...rest.map((arbitrary) => ({ weight: 2, arbitrary })), {
    weight: 1,
    arbitrary: closing,
  });
}

/** Does what can be done of the list; what is refused is left out, as on the screen. */
export function perform(start: AttemptState, actions: readonly Action[]): AttemptState {
  return actions.reduce((state, action) => {
    try {
      return applyAction(state, action);
    } catch (error) {
      if (error instanceof ActionRefused) return state;
      throw error;
    }
  }, start);
}
