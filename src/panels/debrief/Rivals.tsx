/** Every rival: what was read, what it would have shown, and whether the two fit. */
import type { RivalRow, ValuedCandidate } from '../../examiner/types';
import { amount, quantumName } from '../kit/message';
import { ScrollX } from '../kit/ScrollX';
import { instrumentName, noteName } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';

interface Props {
  readonly rows: readonly RivalRow[];
  /** the reading that would have told most, when there was one left */
  readonly missed: ValuedCandidate | null;
}

export function Rivals({ rows, missed }: Props) {
  const text = useText();
  const { atmosphere } = useSession().state.value.site;
  return (
    <>
      <p class="soft">{text.t('debrief.rivals.help')}</p>
      <ScrollX label={text.t('debrief.layer.rivals')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{text.t('debrief.rivals.cause')}</th>
              <th scope="col">{text.t('debrief.rivals.belief')}</th>
              <th scope="col">{text.t('debrief.rivals.read')}</th>
              <th scope="col">{text.t('debrief.rivals.expected')}</th>
            </tr>
          </thead>
          <tbody>
            {rows.flatMap((row) =>
              (row.readings.length > 0 ? row.readings : [null]).map((reading, index) => (
                <tr key={`${row.cause}/${index}`}>
                  {index === 0 && (
                    <>
                      <th scope="row" rowSpan={Math.max(1, row.readings.length)} class="first">
                        {text.t(`names.cause.${row.cause}`)}
                      </th>
                      <td rowSpan={Math.max(1, row.readings.length)}>{text.number(100 * row.posterior)}</td>
                    </>
                  )}
                  <td>
                    {reading && (
                      <>
                        <span class="first">{quantumName(text, reading.quantum)}</span>{' '}
                        <strong class="number">{amount(text, reading.kind, reading.read, atmosphere)}</strong>
                      </>
                    )}
                  </td>
                  <td>
                    {reading && (
                      <>
                        {amount(text, reading.kind, reading.band.low, atmosphere)} –{' '}
                        {amount(text, reading.kind, reading.band.high, atmosphere)}{' '}
                        <em>
                          <span aria-hidden="true">{reading.fits ? '✓' : '✗'}</span>{' '}
                          {text.t(reading.fits ? 'debrief.rivals.fits' : 'debrief.rivals.misfits')}
                        </em>
                      </>
                    )}
                  </td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </ScrollX>
      {missed && (
        <p>
          {text.t('debrief.missed', { what: `${noteName(text, missed)} (${instrumentName(text, missed.instrument)})` })}
        </p>
      )}
    </>
  );
}
