/** What a person can set on the machine, and letting time pass. Names of states are whole words. */
import type { PlantDescription, Controls as Settings } from '../../../physics/types';
import { useText } from '../kit/text';
import { useSession } from '../session';

/** Seconds: a look at the watch, one settling of the circuit, a settled machine (field figures: superheat 8–15 min). */
const WAITS = [60, 300, 900] as const;
const VALVE_HOLDS = [0, 0.25, 0.5, 0.75, 1] as const;

export function Controls() {
  const text = useText();
  const session = useSession();
  const { controls } = session.state.value;
  const set = (change: Partial<Settings>) => session.dispatch({ kind: 'control', change });
  const { plant } = session;
  const asked = controls.mode ?? session.callout.conditions.mode;
  return (
    <>
      <p>{text.t(`names.controller.${session.snapshot.value.controller}`)}</p>
      {session.stuck.value !== null && (
        <p class="said">{text.t('panels.machine.stuck', { code: session.stuck.value })}</p>
      )}
      <Wait />
      <Switch name={text.t('panels.machine.running')} value={controls.running} set={(running) => set({ running })} />
      <div class="control" role="group" aria-label={text.t('panels.machine.setPoint')}>
        <span>
          {text.t('panels.machine.setPoint')}{' '}
          <strong class="number">{text.quantity('temperature', controls.setPoint, 0.5)}</strong>
        </span>
        <span class="pair">
          <button type="button" onClick={() => set({ setPoint: controls.setPoint - 1 })}>
            {text.t('panels.machine.colder')}
          </button>
          <button type="button" onClick={() => set({ setPoint: controls.setPoint + 1 })}>
            {text.t('panels.machine.warmer')}
          </button>
        </span>
      </div>
      {isReversible(plant) && (
        <div class="control" role="group" aria-label={text.t('panels.machine.mode')}>
          <span>{text.t('panels.machine.mode')}</span>
          <span class="pair">
            {(['cooling', 'heating'] as const).map((mode) => (
              <button
                type="button"
                key={mode}
                aria-pressed={asked === mode}
                onClick={() => asked !== mode && set({ mode })}
              >
                {text.t(`panels.machine.${mode}`)}
              </button>
            ))}
          </span>
        </div>
      )}
      <div class="control" role="group" aria-label={text.t('panels.machine.indoorFan')}>
        <span>{text.t('panels.machine.indoorFan')}</span>
        <span class="pair">
          {(['low', 'high'] as const).map((step) => (
            <button
              type="button"
              key={step}
              aria-pressed={controls.indoorFan === step}
              onClick={() => controls.indoorFan !== step && set({ indoorFan: step })}
            >
              {text.t(`panels.machine.${step}`)}
            </button>
          ))}
        </span>
      </div>
      <Switch
        name={text.t('panels.machine.indoorFanRunning')}
        value={controls.indoorFanRunning}
        set={(indoorFanRunning) => set({ indoorFanRunning })}
      />
      <Switch
        name={text.t('panels.machine.outdoorFanRunning')}
        value={controls.outdoorFanRunning}
        set={(outdoorFanRunning) => set({ outdoorFanRunning })}
      />
      {plant.variableSpeed && (
        <Switch
          name={text.t('panels.machine.fixedSpeed')}
          value={controls.fixedSpeed}
          set={(fixedSpeed) => set({ fixedSpeed })}
        />
      )}
      {plant.metering === 'electronic-valve' && (
        <label class="control">
          <span>{text.t('panels.machine.valve')}</span>
          <select
            value={controls.valveHold === null ? '' : String(controls.valveHold)}
            onChange={(event) => {
              const { value } = event.currentTarget;
              set({ valveHold: value === '' ? null : Number(value) });
            }}
          >
            <option value="">{text.t('panels.machine.valveOwn')}</option>
            {VALVE_HOLDS.map((share) => (
              <option key={share} value={String(share)}>
                {text.t('panels.machine.valveHold', { share: text.quantity('share', share) })}
              </option>
            ))}
          </select>
        </label>
      )}
      {session.callout.mode !== 'exam' && (
        <>
          <Switch
            name={text.t('panels.machine.inside')}
            value={session.inside.value}
            set={(on) => {
              session.inside.value = on;
            }}
          />
          <p class="soft">{text.t('panels.machine.insideHelp')}</p>
        </>
      )}
    </>
  );
}

/** One room that can be cooled or heated. */
function isReversible({ modes, units }: PlantDescription): boolean {
  return units === undefined && modes.cooling !== undefined && modes.heating !== undefined;
}

function Switch(props: { readonly name: string; readonly value: boolean; readonly set: (on: boolean) => void }) {
  const text = useText();
  return (
    <div class="control" role="group" aria-label={props.name}>
      <span>{props.name}</span>
      <span class="pair">
        {[true, false].map((on) => (
          <button
            type="button"
            key={String(on)}
            aria-pressed={props.value === on}
            onClick={() => props.value !== on && props.set(on)}
          >
            {text.t(on ? 'panels.machine.on' : 'panels.machine.off')}
          </button>
        ))}
      </span>
    </div>
  );
}

export function Wait() {
  const text = useText();
  const session = useSession();
  return (
    <div class="control" role="group" aria-label={text.t('panels.machine.wait')}>
      <span>{text.t('panels.machine.wait')}</span>
      <span class="pair">
        {WAITS.map((seconds) => (
          <button type="button" key={seconds} onClick={() => session.dispatch({ kind: 'wait', seconds })}>
            {text.t('panels.machine.waitMinutes', { minutes: seconds / 60 })}
          </button>
        ))}
      </span>
    </div>
  );
}
