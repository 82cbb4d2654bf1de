/** What is known before the van door opens. */
import type { InstallRecord } from '../../../physics/types';
import { branchName } from '../../i18n/branches';
import { ScrollX } from '../kit/ScrollX';
import { sentence } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';
import { Tally } from './Tally';

export function WorkOrder() {
  const text = useText();
  const { callout } = useSession();
  const { conditions } = callout;
  return (
    <>
      <blockquote class="complaint">
        <p class="soft">{text.t('panels.job.complaint')}</p>
        <p>{text.local(callout.text.complaint)}</p>
      </blockquote>
      <section>
        <h3>{text.t('panels.job.site')}</h3>
        <p>{text.local(callout.text.site)}</p>
      </section>
      <section>
        <h3>{text.t('panels.job.history')}</h3>
        <p>{text.local(callout.text.history)}</p>
      </section>
      <section>
        <h3>{text.t('panels.job.weather')}</h3>
        <Facts
          rows={[
            [text.t('panels.job.outdoor'), text.quantity('temperature', conditions.outdoor, 1)],
            [text.t('panels.job.indoor'), text.quantity('temperature', conditions.indoor, 1)],
            [text.t('panels.job.wetBulb'), text.quantity('temperature', conditions.wetBulb, 1)],
            [text.t('panels.job.altitude'), text.quantity('length', conditions.altitude)],
          ]}
        />
      </section>
      <Tally />
      <Nameplate />
      <p class="soft">{text.t('panels.job.budget', { minutes: callout.budget })}</p>
    </>
  );
}

function Nameplate() {
  const text = useText();
  const { callout, plant, state } = useSession();
  const plate = state.value.site.nameplate;
  const rows: [string, string][] = [
    [text.t('panels.job.machine'), text.t(`names.plant.${callout.plant}`)],
    [text.t('panels.job.refrigerant'), plate.refrigerant],
    [text.t('panels.job.charge'), text.quantity('mass', plate.charge)],
    [text.t('panels.job.capacity'), text.quantity('power', plate.ratedCapacity)],
    [text.t('panels.job.current'), text.quantity('current', plate.ratedCurrent)],
    [text.t('panels.job.voltage'), text.quantity('voltage', plate.supplyVoltage)],
    [text.t('panels.job.airFlow'), text.quantity('flow', plate.ratedAirFlow)],
    // Printed as plates do: absolute pressure, so that it holds at any altitude.
    [text.t('panels.job.highLimit'), text.quantity('pressure', plate.highPressureLimit)],
  ];
  const asks = Object.keys(plant.modes).length > 1;
  if (asks) rows.splice(1, 0, [text.t('panels.job.asked'), text.t(`names.mode.${callout.conditions.mode}`)]);
  if (plate.capacitance !== null) {
    rows.push([text.t('panels.job.capacitance'), text.quantity('capacitance', plate.capacitance)]);
  }
  if (plate.targetSuperheat !== null) {
    rows.push([text.t('panels.job.superheat'), text.quantity('difference', plate.targetSuperheat)]);
  }
  if (plate.targetSubcooling !== null) {
    rows.push([text.t('panels.job.subcooling'), text.quantity('difference', plate.targetSubcooling)]);
  }
  return (
    <section>
      <h3>{text.t('panels.job.nameplate')}</h3>
      <div class="plate">
        <Facts rows={rows} />
      </div>
      {plate.install && <Install record={plate.install} />}
    </section>
  );
}

/** What the installer left on record: pipes by unit, and the rule by which the charge was worked out. */
function Install({ record }: { readonly record: InstallRecord }) {
  const text = useText();
  const { units, mainMetres, base, perWatt, perMainMetre, perUnitMetre } = record;
  const grams = (kilograms: number) => text.quantity('mass', kilograms, 0.001);
  return (
    <>
      <h3>{text.t('panels.job.install')}</h3>
      <ScrollX label={text.t('panels.job.install')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{text.t('panels.job.unit')}</th>
              <th scope="col">{text.t('panels.job.capacity')}</th>
              <th scope="col">{text.t('panels.job.pipe')}</th>
              <th scope="col">{text.t('panels.job.lift')}</th>
            </tr>
          </thead>
          <tbody>
            {units.map(({ id, rated, metres, lift }) => (
              <tr key={id}>
                <th scope="row">{sentence(branchName(text, id))}</th>
                <td class="number">{text.quantity('power', rated)}</td>
                <td class="number">{text.quantity('length', metres)}</td>
                <td class="number">{text.quantity('length', lift, 0.1)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollX>
      <p class="soft">
        {text.t('panels.job.chargeRule', {
          base: text.quantity('mass', base),
          size: grams(1000 * perWatt),
          main: grams(perMainMetre),
          metres: text.quantity('length', mainMetres),
          pipe: grams(perUnitMetre),
        })}
      </p>
    </>
  );
}

function Facts({ rows }: { readonly rows: readonly (readonly [string, string])[] }) {
  return (
    <dl class="facts">
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd class="number">{value}</dd>
        </div>
      ))}
    </dl>
  );
}
