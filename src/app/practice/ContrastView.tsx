/** Side by side: what two causes do alike on this machine, and what parts them; every number from the differential. */
import { useMemo } from 'preact/hooks';
import { classOf, senseOf } from '../../instruments/looks';
import { Bands } from '../../panels/kit/Bands';
import { amount } from '../../panels/kit/message';
import { ScrollX } from '../../panels/kit/ScrollX';
import { sentence } from '../../panels/kit/say';
import { useText } from '../../panels/kit/text';
import { type ContrastRow, contrastOf, type Range } from '../../practice/contrast';
import type { Edge } from '../../practice/edges';
import type { Compared } from '../../practice/quanta';
import type { Setting } from '../../practice/setting';
import { causeName, comparedName, pairName, shownValue } from './words';

interface Props {
  readonly setting: Setting;
  readonly edge: Pick<Edge, 'causes'>;
  readonly atmosphere: number;
  readonly onRead: () => void;
}

export function ContrastView({ setting, edge, atmosphere, onRead }: Props) {
  const text = useText();
  const contrast = useMemo(() => contrastOf(setting, edge), [setting, edge]);
  const range = (one: Compared, { low, high, middle }: Range) => {
    const sense = one.quantum.sum === undefined ? senseOf(one.quantum.channel) : null;
    if (sense) return shownValue(text, one, classOf(sense, middle), atmosphere);
    return text.t('practice.contrast.range', {
      low: amount(text, one.kind, low, atmosphere),
      high: amount(text, one.kind, high, atmosphere),
    });
  };
  const [one, other] = edge.causes;
  return (
    <>
      <header class="stack">
        <p class="soft">{text.t('practice.contrast.title')}</p>
        <h1>{pairName(text, edge.causes)}</h1>
      </header>
      <section class="stack" aria-labelledby="alike">
        <h2 id="alike">{text.t('practice.contrast.alike')}</h2>
        {contrast.alike.length === 0 && <p>{text.t('practice.contrast.alikeNone')}</p>}
        <ul class="alike">
          {contrast.alike.map(({ compared, ways }) => (
            <li key={compared.id} data-way={ways[0]}>
              {text.t('practice.contrast.row', {
                reading: comparedName(text, compared),
                way: text.t(`practice.contrast.${ways[0]}`),
              })}
            </li>
          ))}
        </ul>
      </section>
      <section class="stack" aria-labelledby="parting">
        <h2 id="parting">{text.t('practice.contrast.parting')}</h2>
        {contrast.parting.map((row) => (
          <figure key={row.compared.id} class="debrief-picture contrast">
            <figcaption>
              <h3>{comparedName(text, row.compared)}</h3>
            </figcaption>
            <ScrollX label={comparedName(text, row.compared)}>
              <table>
                <tbody>
                  {(
                    [
                      [text.t('practice.contrast.sound'), row.sound],
                      [causeName(text, one), row.of[0]],
                      [causeName(text, other), row.of[1]],
                    ] as const
                  ).map(([name, of]) => (
                    <tr key={name}>
                      <th scope="row">{sentence(name)}</th>
                      <td>{range(row.compared, of)}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </ScrollX>
            {isNumber(row) && (
              <Bands
                bands={[
                  { cause: one, ...row.of[0] },
                  { cause: other, ...row.of[1] },
                ]}
                read={null}
                kind={row.compared.kind}
                atmosphere={atmosphere}
              />
            )}
          </figure>
        ))}
        <p class="soft">{text.t('practice.contrast.picture')}</p>
      </section>
      <div class="wrap">
        <button type="button" class="main" onClick={onRead}>
          {text.t('practice.contrast.twin')}
        </button>
      </div>
    </>
  );
}

const isNumber = ({ compared }: ContrastRow): boolean =>
  compared.quantum.sum !== undefined || senseOf(compared.quantum.channel) === null;
