/** Look, listen, feel: every place for eyes or hand as one list, beside the same places on the drawing. */
import { type Place, unitOf } from '../../../physics/types';
import { branchName } from '../../i18n/branches';
import { noteName, sentence, valueText } from '../kit/say';
import { useText } from '../kit/text';
import { unitStateOf } from '../kit/unitState';
import { type ReadingOption, reads } from '../place/options';
import { useSession } from '../session';

const SENSES = ['eyes', 'hand'] as const;

export function Survey() {
  const text = useText();
  const session = useSession();
  const { plant, snapshot } = session;
  return (
    <>
      <p>{text.t('panels.survey.help')}</p>
      <p>
        <span class="soft">{text.t('panels.survey.controller')}:</span>{' '}
        {text.t(`names.controller.${snapshot.value.controller}`)}
      </p>
      <Places of={null} />
      {plant.units?.map((unit) => (
        <details key={unit} class="survey-unit">
          <summary>
            {sentence(branchName(text, unit))}{' '}
            <small class="soft">{text.t(`names.unitState.${unitStateOf(session, unit)}`)}</small>
          </summary>
          <Places of={unit} />
        </details>
      ))}
      <details>
        <summary>{text.t('panels.survey.words')}</summary>
        <ul class="in-words">
          {session.inWords.value.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </details>
    </>
  );
}

/** The places of one indoor unit, or those that belong to none. */
function Places({ of }: { readonly of: string | null }) {
  const { plant, optionsAt } = useSession();
  const isOf = ({ id }: Place) => {
    const unit = unitOf(id);
    return (unit !== null && plant.units?.includes(unit) ? unit : null) === of;
  };
  return (
    <ul class="survey">
      {plant.places
        .filter(isOf)
        .sort((a, b) => a.order - b.order)
        .flatMap((place) =>
          optionsAt(place.id)
            .filter(({ instrument }) => SENSES.some((sense) => sense === instrument))
            .map((option) => <Row key={`${place.id}/${option.instrument}`} place={place} option={option} />),
        )}
    </ul>
  );
}

function Row({ place, option }: { readonly place: Place; readonly option: ReadingOption }) {
  const text = useText();
  const session = useSession();
  const seen = session.state.value.notes.findLast(
    (note) => note.place === place.id && reads(option, note) && !note.struck,
  );
  const name = noteName(text, { place: place.id, channel: 'superheat', ...option });
  const act = option.instrument === 'hand' ? 'panels.survey.feel' : 'panels.survey.look';
  return (
    <li>
      <span>
        <span>{sentence(name)}</span>
        <span class="soft">{seen ? `: ${valueText(text, seen)}` : ''}</span>
      </span>
      <button
        type="button"
        aria-label={`${text.t(act)}: ${name}`}
        onClick={() => {
          session.place.value = place.id;
          session.take(option);
        }}
      >
        {text.t(seen ? 'panels.survey.again' : act)}
      </button>
      {place.needs?.map((need) => (
        <small key={need} class="soft">
          {sentence(text.t(`panels.place.needs.${need}`))}
        </small>
      ))}
    </li>
  );
}
