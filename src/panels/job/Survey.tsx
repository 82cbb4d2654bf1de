/** Look, listen, feel: every place for eyes or hand as one list, beside the same places on the drawing. */
import type { Place } from '../../../physics/types';
import { noteName, sentence, valueText } from '../kit/say';
import { useText } from '../kit/text';
import { type ReadingOption, sameOption } from '../place/options';
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
      <ul class="survey">
        {[...plant.places]
          .sort((a, b) => a.order - b.order)
          .flatMap((place) =>
            session
              .optionsAt(place.id)
              .filter(({ instrument }) => SENSES.some((sense) => sense === instrument))
              .map((option) => <Row key={`${place.id}/${option.instrument}`} place={place} option={option} />),
          )}
      </ul>
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

function Row({ place, option }: { readonly place: Place; readonly option: ReadingOption }) {
  const text = useText();
  const session = useSession();
  const seen = session.state.value.notes.findLast(
    (note) => note.place === place.id && sameOption(note, option) && !note.struck,
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
