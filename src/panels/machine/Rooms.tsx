/** What single rooms ask of a machine with many units, and what each unit's own controller says. */
import { possibleDemands, usualDemand } from '../../../physics/network/demands';
import { branchName } from '../../i18n/branches';
import { sentence } from '../kit/say';
import { useText } from '../kit/text';
import { unitStateOf } from '../kit/unitState';
import { useSession } from '../session';

export function Rooms() {
  const text = useText();
  const session = useSession();
  const { plant, callout } = session;
  const { mode } = callout.conditions;
  const possible = possibleDemands(mode, plant.modes.simultaneous !== undefined);
  const asked = session.state.value.controls.units ?? {};
  return (
    <>
      <p class="soft">{text.t('panels.rooms.help')}</p>
      <ul class="rooms">
        {plant.units?.map((unit, index) => {
          const name = sentence(branchName(text, unit));
          const now = asked[unit] ?? usualDemand(mode, index);
          return (
            <li key={unit}>
              <div class="control" role="group" aria-label={name}>
                <span>
                  <span>{name}</span>
                  <small class="soft">{text.t(`names.unitState.${unitStateOf(session, unit)}`)}</small>
                </span>
                <span class="pair">
                  {possible.map((demand) => (
                    <button
                      type="button"
                      key={demand}
                      aria-pressed={now === demand}
                      onClick={() =>
                        now !== demand && session.dispatch({ kind: 'control', change: { units: { [unit]: demand } } })
                      }
                    >
                      {text.t(`panels.rooms.ask.${demand}`)}
                    </button>
                  ))}
                </span>
              </div>
            </li>
          );
        })}
      </ul>
    </>
  );
}
