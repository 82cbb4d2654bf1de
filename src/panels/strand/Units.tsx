/** One strand a unit: valve, liquid pipe, gas pipe, room, supply air; ranked, if asked, by how far one stands off. */
import type { UnitSnapshot } from '../../../physics/types';
import type { TapeChannel, TapeSample } from '../../attempt/tape';
import type { Text } from '../../i18n';
import { branchName } from '../../i18n/branches';
import { CATALOGUE } from '../../instruments/catalogue';
import type { ChannelName } from '../../instruments/types';
import { channelName, kindOf, sentence } from '../kit/say';
import { useText } from '../kit/text';
import { deviations, ranked } from './siblings';

/** What hangs on a unit's strand, in the order in which it cools. */
export const BEADS = [
  'valveOpening',
  'sensor:evaporatorCoil',
  'sensor:suctionLine',
  'sensor:returnAir',
  'supplyAirTemp',
] as const;
export type Bead = (typeof BEADS)[number];

export const beadChannel = (bead: Bead, unit: string): ChannelName => `${bead}@${unit}` as ChannelName;

interface Props {
  readonly units: readonly Pick<UnitSnapshot, 'id' | 'state'>[];
  readonly channels: readonly TapeChannel[];
  /** null until the link is plugged in */
  readonly live: TapeSample | null;
  readonly rank: Bead | null;
  readonly onRank: (bead: Bead | null) => void;
  readonly onNote: (channel: TapeChannel) => void;
}

export function Units({ units, channels, live, rank, onRank, onNote }: Props) {
  const text = useText();
  const at = (bead: Bead, unit: string) => channels.findIndex(({ channel }) => channel === beadChannel(bead, unit));
  const readingOf = (bead: Bead, unit: string) => live?.values[at(bead, unit)] ?? Number.NaN;
  const siblings = rank && live ? units.map(({ id, state }) => ({ id, state, value: readingOf(rank, id) })) : null;
  const off = siblings ? deviations(siblings) : null;
  const order = siblings ? ranked(siblings) : units.map(({ id }) => id);
  return (
    <section class="stack">
      <h3>{text.t('panels.units.title')}</h3>
      <p class="soft">{text.t('panels.units.help')}</p>
      <div class="unit-heads" role="group" aria-label={text.t('panels.units.rankBy')}>
        {BEADS.map((bead) => {
          const { quantity } = channels[at(bead, units[0]!.id)]!;
          return (
            <button
              type="button"
              key={bead}
              aria-pressed={rank === bead}
              disabled={!live}
              onClick={() => onRank(rank === bead ? null : bead)}
            >
              <span>{text.t(`panels.units.bead.${bead}`)}</span>
              <small class="soft">{text.unit(kindOf(quantity, false)!)}</small>
            </button>
          );
        })}
      </div>
      <p class="soft">
        {rank
          ? text.t('panels.units.ranked', { what: text.t(`panels.units.bead.${rank}`) })
          : text.t('panels.units.inOrder')}
      </p>
      <ol class="unit-strands">
        {order.map((id) => {
          const unit = units.find((each) => each.id === id)!;
          const name = sentence(branchName(text, id));
          return (
            <li key={id}>
              <p>
                <span>{name}</span> <small class="soft">{text.t(`names.unitState.${unit.state}`)}</small>
              </p>
              <div class="unit-beads">
                {BEADS.map((bead) => {
                  const channel = channels[at(bead, id)]!;
                  const value = readingOf(bead, id);
                  const far = bead === rank ? (off?.get(id) ?? null) : null;
                  const shown = live && unit.state !== 'not-answering' ? beadText(text, channel, value) : '–';
                  const from = far === null ? '' : offText(text, channel, far);
                  return (
                    <button
                      type="button"
                      key={bead}
                      data-ranked={bead === rank}
                      aria-label={[
                        text.t('panels.strand.read', { what: channelName(text, channel.channel) }),
                        ...(live ? [shown] : []),
                        ...(from ? [text.t('panels.units.off', { much: from })] : []),
                      ].join(', ')}
                      onClick={() => onNote(channel)}
                    >
                      <span class="number">{shown}</span>
                      {from && <small class="number">{from}</small>}
                    </button>
                  );
                })}
              </div>
            </li>
          );
        })}
      </ol>
    </section>
  );
}

function beadText(text: Text, { quantity }: TapeChannel, value: number): string {
  return text.bare(kindOf(quantity, false)!, value, CATALOGUE['data-link'].resolution[quantity]);
}

/** With its sign, a difference in the reader's unit. */
function offText(text: Text, { quantity }: TapeChannel, far: number): string {
  const kind = quantity === 'temperature' ? 'difference' : kindOf(quantity, false)!;
  const step = CATALOGUE['data-link'].resolution[quantity] ?? 0;
  const size = text.quantity(kind, Math.abs(far), step);
  // Half a step and less is none.
  return Math.abs(far) < step / 2 ? size : `${far < 0 ? '−' : '+'}${size}`;
}
