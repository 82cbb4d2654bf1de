/** Chalk it: one tap before the needle settles, and later what the machine made of it. Never scored. */
import { useEffect, useRef } from 'preact/hooks';
import { EXPECTATIONS, type Expectation } from '../../attempt';
import { channelName, noteName, optionName, sentence, valueText } from '../kit/say';
import { useText } from '../kit/text';
import type { ReadingOption } from '../place/options';
import { type Head, useSession } from '../session';
import { currentChips, ranking } from '../stakes/chips';

export function ChalkToggle() {
  const text = useText();
  const { chalk } = useSession();
  return (
    <label class="choice">
      <input
        type="checkbox"
        checked={chalk.value}
        onChange={(event) => {
          chalk.value = event.currentTarget.checked;
        }}
      />
      <span>{text.t('panels.chalk.toggle')}</span>
    </label>
  );
}

export function ChalkQuestion({ option }: { readonly option: ReadingOption }) {
  const text = useText();
  const session = useSession();
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  const cause = ranking(currentChips(session), session.callout)[0]!;
  return (
    <div class="chalk stack" role="group" aria-label={text.t('panels.chalk.title')}>
      <p>
        {sentence(optionName(text, option))}.{' '}
        {text.t('panels.chalk.question', { cause: text.t(`names.cause.${cause}`) })}
      </p>
      <div class="pair">
        {EXPECTATIONS.map((expect, i) => (
          <button type="button" key={expect} ref={i === 0 ? first : null} onClick={() => session.chalked(expect)}>
            {text.t(`panels.chalk.${expect}`)}
          </button>
        ))}
        <button type="button" class="quiet" onClick={() => session.chalked(null)}>
          {text.t('panels.chalk.skip')}
        </button>
      </div>
      <p class="soft">{text.t('panels.chalk.unscored')}</p>
    </div>
  );
}

/** Every prediction with what its cause does and what was read; and the reasons given with the verdict. */
export function MachineInTheHead() {
  const text = useText();
  const session = useSession();
  const head = session.head.value;
  const { notes, chalks, becauses, reflections } = session.state.value;
  if (chalks.length === 0 && becauses.length === 0 && reflections.length === 0)
    return <p>{text.t('panels.chalk.none')}</p>;
  if (!head) return <p role="status">{text.t('finish.working.title')} …</p>;
  const known = head.chalks.filter(({ does }) => does !== null);
  const right = known.filter(({ does, expect }) => does === expect).length;
  const way = (expect: Expectation | null) =>
    expect === null ? text.t('panels.chalk.notCounted') : text.t(`panels.chalk.${expect}`);
  const reading = (index: number) => {
    const note = notes[index]!;
    return `${sentence(noteName(text, note))} ${valueText(text, note)}`;
  };
  return (
    <>
      {known.length > 0 && <p>{text.t('panels.chalk.sum', { right, count: known.length })}</p>}
      <ul class="points">
        {head.chalks.map((one) => (
          <li key={one.note}>
            <strong>{reading(one.note)}</strong>
            <p>
              {text.t('panels.chalk.line', {
                cause: text.t(`names.cause.${one.cause}`),
                expect: way(one.expect),
                does: way(one.does),
                was: way(one.was),
              })}
            </p>
          </li>
        ))}
      </ul>
      {head.because && (
        <ul class="points">
          {(
            [
              [head.because.shows, head.because.showsBits],
              [head.because.rulesOut, head.because.rulesOutBits],
            ] as const
          ).map(([note, bits], i) => (
            <li key={i === 0 ? 'shows' : 'rulesOut'}>
              <strong>{reading(note)}</strong>
              <p>
                {bits === null
                  ? text.t('panels.because.notCounted')
                  : text.t(`panels.because.${bits >= 1 ? 'speaks' : bits <= -1 ? 'against' : 'neither'}`, {
                      cause: text.t(`names.cause.${head.because!.cause}`),
                      rival: text.t(`names.cause.${head.because!.rival}`),
                    })}
              </p>
            </li>
          ))}
        </ul>
      )}
      {head.reflection && <LookBack told={head.reflection} reading={reading} />}
    </>
  );
}

/** Bits from which a reading speaks for one of two causes. */
const SPEAKS = 1;

function LookBack(props: {
  readonly told: NonNullable<Head['reflection']>;
  readonly reading: (note: number) => string;
}) {
  const text = useText();
  const { cause, rival, sorted, missing, best } = props.told;
  const side = (which: 'verdict' | 'rival' | 'neither') =>
    text.t(`panels.reflect.${which}`, { cause: text.t(`names.cause.${which === 'rival' ? rival : cause}`) });
  const model = (bits: number | null) => {
    if (bits === null) return text.t('panels.chalk.notCounted');
    return side(bits >= SPEAKS ? 'verdict' : bits <= -SPEAKS ? 'rival' : 'neither');
  };
  const worth = (bits: number) => (bits >= 0.5 ? 'well' : bits >= 0.1 ? 'little' : 'not');
  return (
    <section class="stack" aria-labelledby="look-back">
      <h3 id="look-back">{text.t('panels.reflect.told')}</h3>
      <ul class="points">
        {sorted.map((one) => (
          <li key={one.note}>
            <strong>{props.reading(one.note)}</strong>
            <p>{text.t('panels.reflect.yours', { yours: side(one.side), model: model(one.bits) })}</p>
          </li>
        ))}
      </ul>
      {missing && (
        <p>
          {text.t('panels.reflect.missed', {
            reading: channelName(text, missing.channel),
            worth: text.t(`panels.reflect.worth.${worth(missing.bits)}`),
          })}
        </p>
      )}
      {best && best !== missing?.channel && (
        <p>{text.t('panels.reflect.best', { reading: channelName(text, best) })}</p>
      )}
    </section>
  );
}
