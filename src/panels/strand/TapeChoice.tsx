/** Which channels of many are shown and saved: everything is on the tape, so a choice can be changed afterwards. */
import { unitOf } from '../../../physics/types';
import { branchName } from '../../i18n/branches';
import type { ChannelName } from '../../instruments/types';
import { sentence } from '../kit/say';
import { useText } from '../kit/text';
import { BEADS, type Bead } from './Units';

export interface Chosen {
  /** the machine's own channels */
  readonly machine: boolean;
  readonly beads: readonly Bead[];
  /** units left out */
  readonly without: readonly string[];
}

/** Enough to begin with: one number of every unit. */
export const ALL_CHOSEN: Chosen = { machine: true, beads: ['sensor:suctionLine'], without: [] };

export function isChosen(chosen: Chosen, channel: ChannelName): boolean {
  const unit = unitOf(channel);
  if (unit === null) return chosen.machine;
  return !chosen.without.includes(unit) && chosen.beads.some((bead) => channel === `${bead}@${unit}`);
}

interface Props {
  readonly units: readonly string[];
  readonly chosen: Chosen;
  readonly onChoose: (chosen: Chosen) => void;
}

export function TapeChoice({ units, chosen, onChoose }: Props) {
  const text = useText();
  return (
    <details>
      <summary>{text.t('panels.units.tape')}</summary>
      <div class="tape-choice">
        <Box
          name={text.t('panels.units.machine')}
          on={chosen.machine}
          set={(machine) => onChoose({ ...chosen, machine })}
        />
        {BEADS.map((bead) => (
          <Box
            key={bead}
            name={text.t(`panels.units.bead.${bead}`)}
            on={chosen.beads.includes(bead)}
            set={(on) => onChoose({ ...chosen, beads: on ? [...chosen.beads, bead] : without(chosen.beads, bead) })}
          />
        ))}
        {units.map((unit) => (
          <Box
            key={unit}
            name={sentence(branchName(text, unit))}
            on={!chosen.without.includes(unit)}
            set={(on) =>
              onChoose({ ...chosen, without: on ? without(chosen.without, unit) : [...chosen.without, unit] })
            }
          />
        ))}
      </div>
    </details>
  );
}

const without = <T,>(list: readonly T[], item: T): T[] => list.filter((each) => each !== item);

function Box({ name, on, set }: { readonly name: string; readonly on: boolean; readonly set: (on: boolean) => void }) {
  return (
    <label>
      <input type="checkbox" checked={on} onChange={(event) => set(event.currentTarget.checked)} />
      <span>{name}</span>
    </label>
  );
}
