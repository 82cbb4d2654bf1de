/** The pieces of a round: the table of readings, the choice of a next one, own sums, the causes. */
import { useId, useState } from 'preact/hooks';
import type { CauseId } from '../../../physics/types';
import { REAL_WORLD } from '../../attempt';
import { isTellingSum } from '../../examiner/quanta';
import type { Measured } from '../../examiner/types';
import { fromShown, parseNumber } from '../../i18n';
import { amount, quantumName } from '../../panels/kit/message';
import { ScrollX } from '../../panels/kit/ScrollX';
import { sentence } from '../../panels/kit/say';
import { useText } from '../../panels/kit/text';
import { plateValue } from '../../practice/plate';
import type { Supports } from '../../practice/progress';
import type { Offer, Round, Shown } from '../../practice/round';
import { causeName, comparedName, shownValue } from './words';

interface TableProps {
  readonly caption: string;
  readonly shown: readonly Shown[];
  /** the one that was taken last */
  readonly fresh: Shown | null;
  readonly round: Round;
  readonly supports: Supports;
}

export function Table({ caption, shown, fresh, round, supports }: TableProps) {
  const text = useText();
  const { beside } = supports;
  const { atmosphere, setting } = round;
  const other = (one: Shown) => {
    const value = beside === 'twin' ? one.twin : plateValue(setting.callout, one.compared);
    return value === null ? text.t('practice.round.noPlate') : shownValue(text, one.compared, value, atmosphere);
  };
  return (
    <ScrollX label={caption}>
      <table class="readings">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{text.t('practice.round.reading')}</th>
            <th scope="col">{text.t('practice.round.read')}</th>
            {beside !== 'nothing' && <th scope="col">{text.t(`practice.round.${beside}`)}</th>}
          </tr>
        </thead>
        <tbody>
          {shown.map((one) => (
            <tr key={one.compared.id} data-fresh={one === fresh}>
              <th scope="row">{comparedName(text, one.compared)}</th>
              <td>
                <strong class="number">{shownValue(text, one.compared, one.value, atmosphere)}</strong>
              </td>
              {beside !== 'nothing' && <td class="number soft">{other(one)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollX>
  );
}

export function Picks({
  offers,
  onPick,
}: {
  readonly offers: readonly Offer[];
  readonly onPick: (offer: Offer) => void;
}) {
  const text = useText();
  return (
    <ul class="picks">
      {offers.map((offer) => (
        <li key={offer.compared.id}>
          <button type="button" class="row" onClick={() => onPick(offer)}>
            <span>{comparedName(text, offer.compared)}</span>
            <small class="soft">
              {text.t('practice.round.minutes', { minutes: text.number(Math.max(1, offer.compared.minutes)) })}
            </small>
          </button>
        </li>
      ))}
    </ul>
  );
}

export function Answers({
  causes,
  onAnswer,
}: {
  readonly causes: readonly CauseId[];
  readonly onAnswer: (cause: CauseId) => void;
}) {
  const text = useText();
  return (
    <ul class="picks">
      {causes.map((cause) => (
        <li key={cause}>
          <button type="button" class="row" onClick={() => onAnswer(cause)}>
            {sentence(causeName(text, cause))}
          </button>
        </li>
      ))}
    </ul>
  );
}

export function Because({
  shown,
  onBecause,
}: {
  readonly shown: readonly Shown[];
  readonly onBecause: (one: Shown) => void;
}) {
  const text = useText();
  return (
    <ul class="picks">
      {shown.map((one) => (
        <li key={one.compared.id}>
          <button type="button" class="row" onClick={() => onBecause(one)}>
            {comparedName(text, one.compared)}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** Two thermometers and the table's own lines may be read this far apart, K. */
const TOLERANCE = 1;
const ROWS = 5;
/** Pressure between two rows of the table, Pa. */
const ROW = 50_000;

export function OwnSum({
  offer,
  round,
  onDone,
}: {
  readonly offer: Offer;
  readonly round: Round;
  readonly onDone: () => void;
}) {
  const text = useText();
  const field = useId();
  const [typed, setTyped] = useState('');
  const [tries, setTries] = useState(0);
  const [said, setSaid] = useState<string | null>(null);
  const { compared, value, observations } = offer;
  const { sum } = compared.quantum;
  const inputs = observations as readonly Measured[];
  const line = sum === 'superheat' ? 'tDew' : 'tBubble';
  const hasTable = sum === 'superheat' || sum === 'subcooling';
  const check = () => {
    const number = parseNumber(typed);
    if (number === null) return setSaid(text.t('practice.round.sumBad'));
    const answer = fromShown('difference', number, text.system);
    if (Math.abs(answer - value) <= TOLERANCE) return onDone();
    if (tries > 0) {
      setSaid(text.t('practice.round.sumShown', { value: amount(text, 'difference', value, round.atmosphere) }));
      setTimeout(onDone, 0);
      return;
    }
    setTries(tries + 1);
    setSaid(text.t('practice.round.sumWrong'));
  };
  if (sum === undefined || !isTellingSum(sum)) return null;
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        check();
      }}
    >
      <ul>
        {inputs.map((each) => (
          <li key={each.channel}>
            {sentence(quantumName(text, { channel: each.channel }))}:{' '}
            <strong class="number">
              {amount(
                text,
                each.channel.includes('Pressure') ? 'pressure' : 'temperature',
                each.value,
                round.atmosphere,
              )}
            </strong>
          </li>
        ))}
      </ul>
      {hasTable && (
        <table class="saturation">
          <thead>
            <tr>
              <th scope="col">{text.t('practice.round.sumPressure')}</th>
              <th scope="col">{text.t('practice.round.sumTemperature')}</th>
            </tr>
          </thead>
          <tbody>
            {rowsAround(inputs[0]!.value, round.atmosphere).map((pressure) => {
              const temperature = REAL_WORLD.saturation(round.setting.callout.refrigerant)[line](pressure);
              return (
                temperature !== null && (
                  <tr key={pressure}>
                    <td>{amount(text, 'pressure', pressure, round.atmosphere)}</td>
                    <td>{text.quantity('temperature', temperature)}</td>
                  </tr>
                )
              );
            })}
          </tbody>
        </table>
      )}
      <label class="field" for={field}>
        <span>{text.t('practice.round.sumHelp', { unit: text.unit('difference') })}</span>
        <input
          id={field}
          inputMode="decimal"
          autocomplete="off"
          value={typed}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      {said && <p role="status">{said}</p>}
      <p>
        <button type="submit" class="main" disabled={typed.trim() === ''}>
          {text.t('practice.round.sumCheck')}
        </button>
      </p>
    </form>
  );
}

/** Even steps of gauge pressure around the reading, so that it lies between two rows. */
function rowsAround(pressure: number, atmosphere: number): number[] {
  const first = Math.floor((pressure - atmosphere) / ROW) - Math.floor((ROWS - 1) / 2);
  return Array.from({ length: ROWS }, (_, i) => (first + i) * ROW + atmosphere).filter((each) => each > atmosphere / 2);
}
