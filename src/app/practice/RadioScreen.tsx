/** On the radio: three readings out of a notebook, and what a colleague who knows only the work order makes of them. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { CauseId } from '../../../physics/types';
import { ScrollX } from '../../panels/kit/ScrollX';
import { sentence } from '../../panels/kit/say';
import { useText } from '../../panels/kit/text';
import { namedCauses } from '../../practice/edges';
import { type BestThree, beliefFrom, bestThree, makeRadio, type Noted, type Radio, TOLD } from '../../practice/radio';
import { newSeed } from '../saved';
import { breath, chapters, settingOf } from './atlas';
import { keepEntry } from './store';
import { causeName, comparedName, shownValue } from './words';

export function RadioScreen() {
  const text = useText();
  const [radio, setRadio] = useState<Radio | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const next = () => {
    setRadio(null);
    call().then(setRadio, (error: unknown) => setProblem(error instanceof Error ? error.message : String(error)));
  };
  useEffect(next, []);
  return (
    <>
      <header class="stack">
        <h1>{text.t('app.ways.radio.name')}</h1>
        <p class="soft">{text.t('practice.radio.intro')}</p>
      </header>
      {problem !== null && <p role="alert">{text.t('practice.failed', { reason: problem })}</p>}
      {!radio && problem === null && <p role="status">{text.t('practice.working')}</p>}
      {radio && <Message key={radio.seed} radio={radio} onNext={next} />}
    </>
  );
}

/** A machine with one indoor unit: a notebook of eight rooms is no message. */
async function call(): Promise<Radio> {
  const all = (await chapters()).flatMap(({ callouts }) => callouts);
  const seed = newSeed();
  const start = Number.parseInt(seed.replace(/[^0-9a-z]/g, '').slice(-5), 36);
  for (let i = 0; i < all.length; i++) {
    const { pack, callout } = all[(start + i) % all.length]!;
    if (callout.plant === 'multi-split' || callout.plant === 'heat-recovery') continue;
    const setting = await settingOf(pack, callout);
    if (setting) return makeRadio(setting, seed);
  }
  throw new Error('no place');
}

function Message({ radio, onNext }: { readonly radio: Radio; readonly onNext: () => void }) {
  const text = useText();
  const [told, setTold] = useState<readonly Noted[]>([]);
  const [sent, setSent] = useState(false);
  const [best, setBest] = useState<BestThree | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const { setting, notebook, truth, atmosphere } = radio;
  const { callout } = setting;
  const toggle = (one: Noted) =>
    setTold(told.includes(one) ? told.filter((each) => each !== one) : [...told, one].slice(-TOLD));
  useEffect(() => {
    if (best) heading.current?.focus();
  }, [best]);
  const send = async () => {
    setSent(true);
    const search = bestThree(radio);
    for (let step = search.next(); ; step = search.next()) {
      if (step.done) {
        setBest(step.value);
        const share = (list: readonly Noted[]) => Math.min(1, beliefFrom(radio, list)[truth] ?? 0);
        keepEntry({
          kind: 'radio',
          at: Date.now(),
          pack: setting.pack,
          callout: callout.id,
          seed: radio.seed,
          told: told.map(({ compared }) => compared.id),
          before: share([]),
          reached: share(told),
          best: Math.min(1, step.value.belief),
        });
        return;
      }
      await breath();
    }
  };
  return (
    <>
      <section class="stack" aria-labelledby="order">
        <h2 id="order">{text.local(callout.text.title)}</h2>
        <p class="soft">
          {sentence(text.t(`names.plant.${callout.plant}`))}.{' '}
          {text.t('practice.conditions', {
            refrigerant: callout.refrigerant,
            outdoor: text.quantity('temperature', callout.conditions.outdoor, 1),
            indoor: text.quantity('temperature', callout.conditions.indoor, 1),
          })}
        </p>
        <p>
          {text.t('practice.radio.tally')}{' '}
          {namedCauses(setting)
            .map((cause) => `${causeName(text, cause)} ${callout.tally[cause]}`)
            .join(', ')}
          .
        </p>
      </section>
      <ScrollX label={text.t('practice.radio.notebook')}>
        <table class="readings">
          <caption>{text.t('practice.radio.notebook')}</caption>
          <thead>
            <tr>
              <th scope="col">{text.t('practice.round.reading')}</th>
              <th scope="col">{text.t('practice.round.read')}</th>
              <th scope="col">{text.t('practice.round.twin')}</th>
            </tr>
          </thead>
          <tbody>
            {notebook.map((one) => (
              <tr key={one.compared.id} data-fresh={told.includes(one)}>
                <th scope="row">
                  <button
                    type="button"
                    class="row"
                    aria-pressed={told.includes(one)}
                    disabled={sent}
                    onClick={() => toggle(one)}
                  >
                    {comparedName(text, one.compared)}
                  </button>
                </th>
                <td>
                  <strong class="number">{shownValue(text, one.compared, one.value, atmosphere)}</strong>
                </td>
                <td class="number soft">
                  {one.twin === null
                    ? text.t('practice.round.noPlate')
                    : shownValue(text, one.compared, one.twin, atmosphere)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollX>
      {!sent && (
        <div class="wrap">
          <button type="button" class="main" disabled={told.length !== TOLD} onClick={() => void send()}>
            {text.t('practice.radio.send', { count: told.length, of: TOLD })}
          </button>
        </div>
      )}
      {sent && !best && <p role="status">{text.t('practice.working')}</p>}
      {best && <Heard radio={radio} told={told} best={best} heading={heading} onNext={onNext} />}
    </>
  );
}

interface HeardProps {
  readonly radio: Radio;
  readonly told: readonly Noted[];
  readonly best: BestThree;
  readonly heading: { current: HTMLHeadingElement | null };
  readonly onNext: () => void;
}

function Heard({ radio, told, best, heading, onNext }: HeardProps) {
  const text = useText();
  const { truth } = radio;
  const belief = beliefFrom(radio, told);
  const [leading] = (Object.entries(belief) as [CauseId, number][]).sort(([, a], [, b]) => b - a)[0]!;
  const rows = [
    [text.t('practice.radio.fromTally'), beliefFrom(radio, [])[truth] ?? 0],
    [text.t('practice.radio.fromYours'), belief[truth] ?? 0],
    [text.t('practice.radio.fromBest'), best.belief],
  ] as const;
  return (
    <section class="told stack" aria-labelledby="heard">
      <h2 id="heard" ref={heading} tabIndex={-1}>
        {text.t('practice.radio.heard', { cause: causeName(text, leading) })}{' '}
        {text.t('practice.round.truth', { cause: causeName(text, truth) })}
      </h2>
      <p>{text.t('practice.radio.belief', { cause: causeName(text, truth) })}</p>
      <ul class="heard">
        {rows.map(([name, share]) => (
          <li key={name}>
            <span>{name}</span>
            <span class="share-bar">
              <span class="share-fill" style={{ width: `${100 * share}%` }} />
              <span class="number">{text.t('practice.radio.of100', { count: Math.round(100 * share) })}</span>
            </span>
          </li>
        ))}
      </ul>
      <p>
        {text.t('practice.radio.best', {
          readings: best.told.map(({ compared }) => comparedName(text, compared)).join(', '),
        })}
      </p>
      <div class="wrap">
        <button type="button" class="main" onClick={onNext}>
          {text.t('practice.radio.next')}
        </button>
        <a class="button" href="#home">
          {text.t('app.nav.home')}
        </a>
      </div>
    </section>
  );
}
