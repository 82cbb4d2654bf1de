/** What fits a place: the choices that its sheet offers, in the order of the digits that take them. */
import type { Place } from '../../../physics/types';
import type { Action } from '../../attempt';
import { OWN_SENSES } from '../../instruments/catalogue';
import { channelsAt, instrumentsAt, readableAt } from '../../instruments/places';
import type { ChannelName, InstrumentId, PhysicalQuantity, Reading } from '../../instruments/types';

export interface ReadingOption {
  readonly instrument: InstrumentId;
  readonly quantity: PhysicalQuantity;
  /** data link only */
  readonly channel?: ChannelName;
  /** clamp on a pipe only: false = bare */
  readonly insulated?: boolean;
}

/** Every instrument of the bag that physically fits, the unwise ones included; never filtered by wisdom. */
export function optionsAt(place: Place, toolbag: readonly InstrumentId[]): ReadingOption[] {
  const fitting = instrumentsAt(place).filter((id) => toolbag.includes(id) || OWN_SENSES.includes(id));
  return fitting.flatMap((instrument) =>
    readableAt(instrument, place).flatMap((quantity): ReadingOption[] => {
      if (instrument === 'data-link') {
        return channelsAt(instrument, place, quantity).map((channel) => ({ instrument, quantity, channel }));
      }
      if (instrument === 'pipe-clamp' && place.kind === 'pipe') {
        return [
          { instrument, quantity, insulated: true },
          { instrument, quantity, insulated: false },
        ];
      }
      return [{ instrument, quantity }];
    }),
  );
}

export function sameOption(a: ReadingOption, b: ReadingOption): boolean {
  return (
    a.instrument === b.instrument &&
    a.quantity === b.quantity &&
    a.channel === b.channel &&
    (a.insulated ?? true) === (b.insulated ?? true)
  );
}

/** Whether this option would read the same thing again: a note always names a channel, an option only where it must. */
export function reads(option: ReadingOption, note: Reading): boolean {
  return (
    option.instrument === note.instrument &&
    option.quantity === note.quantity &&
    (option.channel === undefined || option.channel === note.channel)
  );
}

export function readingAction(place: string, option: ReadingOption): Action {
  return { kind: 'read', place, ...option };
}
