/** Another cause, another size: the same machine computed anew, beside what was read. */
import { useEffect, useMemo } from 'preact/hooks';
import { type Snapshot, type StationId, unitOf } from '../../../physics/types';
import { causesToTry, comparison, readRows, senseBehind, wouldRead } from '../../examiner/otherCause';
import type { TrialAnswer } from '../../examiner/trials';
import type { Cause, Debrief, ReadRow } from '../../examiner/types';
import type { Text } from '../../i18n';
import { branchName } from '../../i18n/branches';
import type { ChannelName } from '../../instruments/types';
import { amount, quantumName } from '../kit/message';
import { ScrollX } from '../kit/ScrollX';
import { channelName, sentence } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';
import { Cycle } from './Cycle';

export function Replay({ told }: { readonly told: Debrief }) {
  const text = useText();
  const session = useSession();
  const state = session.state.value;
  const causes = useMemo(() => causesToTry(state), [state]);
  const first = useMemo(() => beginWith(told, causes), [told, causes]);
  const tried = session.tried.value;
  const { key, severity } = tried ?? first;
  const chosen = causes.find((each) => each.key === key) ?? causes[0]!;
  useEffect(() => {
    if (!session.tried.peek()) session.tryCause(first.key, first.severity);
  }, [session, first]);
  const answer = tried?.outcome ?? tried?.before ?? null;
  const working = tried === null || tried.outcome === null;
  return (
    <div class="stack replay">
      <p class="soft">{text.t('debrief.replay.help')}</p>
      <div class="replay-choice">
        <label class="field">
          <span>{text.t('debrief.replay.cause')}</span>
          <select
            value={key}
            onChange={(event) => {
              const next = causes.find((each) => each.key === event.currentTarget.value)!;
              session.tryCause(next.key, middleOf(next));
            }}
          >
            {causes.map((each) => (
              <option key={each.key} value={each.key}>
                {sentence(causeName(text, each))}
              </option>
            ))}
          </select>
        </label>
        {chosen.key !== '' && (
          <label class="field">
            <span>
              {text.t('debrief.replay.size')}: <strong class="number">{sizeText(text, chosen, severity)}</strong>
            </span>
            <input
              type="range"
              min={chosen.from}
              max={chosen.to}
              step={chosen.step}
              value={severity}
              aria-valuetext={sizeText(text, chosen, severity)}
              onInput={(event) => session.tryCause(key, Number(event.currentTarget.value))}
            />
          </label>
        )}
      </div>
      <p role="status" class="soft">
        {working ? text.t('debrief.replay.working') : said(text, answer)}
      </p>
      {answer?.as === 'runs' && (
        <div class="stack" data-working={working}>
          <Rows rows={readRows(state)} snapshots={answer.snapshots} />
          {answer.snapshots.running && <Cycle cycles={withChosen(told, chosen, answer.snapshots.running)} />}
        </div>
      )}
    </div>
  );
}

/** The rival of the debrief, as large as it fits the readings best; else what the work order names first. */
function beginWith({ cycles, runs }: Debrief, causes: readonly Cause[]): { key: string; severity: number } {
  const rival = cycles.cycles.find(({ what }) => what === 'rival');
  const [found] = Object.entries(runs.find(({ id }) => id === rival?.run)?.faults ?? {});
  if (found && causes.some(({ key }) => key === found[0])) return { key: found[0], severity: found[1] };
  const first = causes[1] ?? causes[0]!;
  return { key: first.key, severity: middleOf(first) };
}

const middleOf = ({ from, to, step }: Cause): number => (from < 0 ? to / 2 : Math.round((from + to) / 2 / step) * step);

function causeName(text: Text, { cause, key }: Cause): string {
  const name = text.t(`names.cause.${cause}`);
  const target = key.split(':')[1];
  if (target) return `${name} (${channelName(text, `sensor:${target}` as ChannelName)})`;
  const unit = unitOf(key);
  return unit === null ? name : `${name} (${branchName(text, unit)})`;
}

function sizeText(text: Text, { unit }: Cause, severity: number): string {
  if (unit === 'K') return text.quantity('difference', severity, 0.1);
  if (unit === 'm') return text.quantity('length', severity, 0.1);
  if (unit === 'Pa') return text.quantity('differentialPressure', severity, 1000);
  return unit === 'V' ? text.quantity('voltage', severity, 0.1) : text.quantity('share', severity);
}

/** Why the machine does not run like that, in words. */
function said(text: Text, answer: TrialAnswer | null): string {
  switch (answer?.as) {
    case 'stops':
      return text.t('debrief.replay.stops', {
        why: text.maybe(`names.controller.stopped-on-${answer.limit}`) ?? answer.limit,
      });
    case 'unsolved':
      return text.t('debrief.replay.unsolved', { code: answer.code });
    case 'failed':
      return text.t('debrief.replay.failed', { reason: answer.reason });
    default:
      return text.t('debrief.replay.done');
  }
}

interface RowsProps {
  readonly rows: readonly ReadRow[];
  readonly snapshots: Parameters<typeof wouldRead>[1];
}

function Rows({ rows, snapshots }: RowsProps) {
  const text = useText();
  const { atmosphere, saturation } = useSession().state.value.site;
  if (rows.length === 0) return <p class="soft">{text.t('debrief.replay.nothingRead')}</p>;
  return (
    <ScrollX label={text.t('debrief.layer.replay')}>
      <table>
        <thead>
          <tr>
            <th scope="col">{text.t('debrief.replay.what')}</th>
            <th scope="col">{text.t('debrief.replay.read')}</th>
            <th scope="col">{text.t('debrief.replay.would')}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const would = wouldRead(row, snapshots, saturation);
            const how = would === null ? null : comparison(row, would);
            return (
              <tr key={`${JSON.stringify(row.quantum)}/${row.state}/${row.as}`} data-how={how ?? 'none'}>
                <th scope="row" class="first">
                  {quantumName(text, row.quantum)}
                  {row.state !== 'running' && <span class="soft"> ({text.t(`names.state.${row.state}`)})</span>}
                </th>
                <td class="number">{shown(text, row, row.read, atmosphere)}</td>
                <td>
                  {would === null || how === null ? (
                    text.t('debrief.replay.noState')
                  ) : (
                    <>
                      <strong class="number">{shown(text, row, would, atmosphere)}</strong>{' '}
                      <em>
                        <span aria-hidden="true">{SIGN[how]}</span> {text.t(`debrief.replay.how.${how}`)}
                      </em>
                    </>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </ScrollX>
  );
}

const SIGN = { alike: '=', higher: '↑', lower: '↓' } as const;

function shown(text: Text, row: ReadRow, value: number, atmosphere: number): string {
  if (row.as === 'number') return amount(text, row.kind, value, atmosphere);
  const { quantum } = row;
  const word = quantum.sum === undefined ? senseBehind(quantum.channel).classes[value]?.word : undefined;
  return text.maybe(`names.sense.${word}`) ?? '';
}

/** Healthy and as found as in the debrief, the chosen one instead of its rival. */
function withChosen({ cycles }: Debrief, { cause }: Cause, { stations }: Snapshot): Debrief['cycles'] {
  const kept = cycles.cycles.filter(({ what }) => what !== 'rival');
  const all = stations as Readonly<Record<StationId, Snapshot['stations'][StationId]>>;
  return { ...cycles, cycles: [...kept, { what: 'chosen', cause, run: 'chosen', stations: all }] };
}
