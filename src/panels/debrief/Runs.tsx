/** Every number of the debrief comes from a run of the model; here each run says what it was given. */
import { unitOf } from '../../../physics/types';
import { familyOf } from '../../attempt/remedies';
import type { Run } from '../../examiner/types';
import type { Text } from '../../i18n';
import { branchName } from '../../i18n/branches';
import { sentence } from '../kit/say';
import { useText } from '../kit/text';

export function Runs({ runs }: { readonly runs: readonly Run[] }) {
  const text = useText();
  const places = new Set(runs.map((run) => given(text, run)));
  return (
    <>
      <p class="soft">{text.t('debrief.runs.help')}</p>
      {places.size === 1 && <p>{sentence([...places][0]!)}</p>}
      <ol class="debrief-runs">
        {runs.map((run) => (
          <li key={run.id}>
            <strong>{sentence(faultsOf(text, run))}</strong>
            {places.size > 1 && <span>: {given(text, run)}</span>} <code>{run.id}</code>
          </li>
        ))}
      </ol>
    </>
  );
}

/** What does not differ between the causes is said once. */
function given(text: Text, { plant, refrigerant, conditions }: Run): string {
  return text.t('debrief.runs.given', {
    plant: text.t(`names.plant.${plant}`),
    refrigerant,
    outdoor: text.quantity('temperature', conditions.outdoor),
    indoor: text.quantity('temperature', conditions.indoor),
  });
}

/** As many digits as the terminal needs to run it again, without the dust of binary numbers. */
function sizeText(text: Text, size: number): string {
  const digits = String(Number(size.toFixed(6))).split('.')[1]?.length ?? 0;
  return text.number(size, digits);
}

function faultsOf(text: Text, { faults }: Run): string {
  const all = Object.entries(faults);
  if (all.length === 0) return text.t('debrief.runs.healthy');
  return all
    .map(([key, size]) =>
      [text.maybe(`names.cause.${familyOf(key)}`) ?? key, unitText(text, key), sizeText(text, size)]
        .filter(Boolean)
        .join(' '),
    )
    .join(', ');
}

function unitText(text: Text, key: string): string {
  const unit = unitOf(key);
  return unit === null ? '' : `(${branchName(text, unit)})`;
}
