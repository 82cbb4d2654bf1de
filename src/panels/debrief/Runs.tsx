/** Every number of the debrief comes from a run of the model; here each run says what it was given. */
import type { Run } from '../../examiner/types';
import { useText } from '../kit/text';

export function Runs({ runs }: { readonly runs: readonly Run[] }) {
  const text = useText();
  return (
    <>
      <p class="soft">{text.t('debrief.runs.help')}</p>
      <ol class="stack">
        {runs.map((run) => (
          <li key={run.id}>
            <strong>{run.id}</strong>: {text.t(`names.plant.${run.plant}`)}, {run.refrigerant},{' '}
            {text.t('panels.job.outdoor')} {text.quantity('temperature', run.conditions.outdoor)},{' '}
            {text.t('panels.job.indoor')} {text.quantity('temperature', run.conditions.indoor)},{' '}
            {Object.keys(run.faults).length === 0
              ? text.t('debrief.runs.healthy')
              : text.t('debrief.runs.faults', {
                  faults: Object.entries(run.faults)
                    .map(([key, size]) => `${text.maybe(`names.cause.${key.split(':')[0]}`) ?? key} ${size}`)
                    .join(', '),
                })}
          </li>
        ))}
      </ol>
    </>
  );
}
