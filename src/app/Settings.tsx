import type { Signal } from '@preact/signals';
import { LANGUAGES } from '../i18n';
import { Dialog } from '../panels/kit/Dialog';
import { useText } from '../panels/kit/text';
import { language, motion, theme, units } from './preferences';

/** Each language says its own name in its own words. */
const LANGUAGE_NAMES = { en: 'English', es: 'Español' } as const;

function Choice<T extends string>(props: {
  readonly title: string;
  readonly value: Signal<T>;
  readonly options: readonly (readonly [T, string])[];
}) {
  return (
    <fieldset class="choices">
      <legend>{props.title}</legend>
      {props.options.map(([value, label]) => (
        <label key={value} class="choice">
          <input
            type="radio"
            name={props.title}
            checked={props.value.value === value}
            onChange={() => {
              props.value.value = value;
            }}
          />
          <span>{label}</span>
        </label>
      ))}
    </fieldset>
  );
}

interface Props {
  readonly onClose: () => void;
  readonly onAbout: () => void;
}

export function Settings({ onClose, onAbout }: Props) {
  const text = useText();
  return (
    <Dialog title={text.t('app.settings.title')} close={text.t('app.about.close')} onClose={onClose}>
      <Choice
        title={text.t('app.settings.language')}
        value={language}
        options={LANGUAGES.map((code) => [code, LANGUAGE_NAMES[code]] as const)}
      />
      <Choice
        title={text.t('app.settings.units')}
        value={units}
        options={[
          ['si', text.t('app.settings.si')],
          ['ip', text.t('app.settings.ip')],
        ]}
      />
      <Choice
        title={text.t('app.settings.theme')}
        value={theme}
        options={[
          ['auto', text.t('app.settings.auto')],
          ['paper', text.t('app.settings.paper')],
          ['night', text.t('app.settings.night')],
        ]}
      />
      <Choice
        title={text.t('app.settings.motion')}
        value={motion}
        options={[
          ['auto', text.t('app.settings.motionAuto')],
          ['on', text.t('app.settings.motionOn')],
          ['off', text.t('app.settings.motionOff')],
        ]}
      />
      <p>
        <button type="button" onClick={onAbout}>
          {text.t('app.nav.about')}
        </button>
      </p>
    </Dialog>
  );
}
