/** Set the trap: a fault and its size, the cause that it is to be taken for, the examiner's check, and a link to send. */
import { useEffect, useState } from 'preact/hooks';
import { FAULTS } from '../../../physics';
import type { CauseId } from '../../../physics/types';
import { saveFile } from '../../panels/kit/file';
import { sentence } from '../../panels/kit/say';
import { useText } from '../../panels/kit/text';
import { namedCauses } from '../../practice/edges';
import type { Setting } from '../../practice/setting';
import { checkTrap, packToCode, type TrapCheck, trapCallout, trapFaults, trapPack } from '../../practice/trap';
import { packs } from '../library';
import { practiceLink } from '../route';
import { breath, chapters, settingOf } from './atlas';
import { causeName } from './words';

const STEPS = 40;

export function TrapScreen() {
  const text = useText();
  const [places, setPlaces] = useState<readonly Setting[]>([]);
  const [place, setPlace] = useState<Setting | null>(null);
  useEffect(() => {
    void (async () => {
      const all = (await chapters()).flatMap(({ callouts }) => callouts);
      const found: Setting[] = [];
      for (const { pack, callout } of all) {
        // Of many rooms one is set, and whoever looks there first has it: no trap.
        if (callout.plant === 'multi-split' || callout.plant === 'heat-recovery') continue;
        const setting = await settingOf(pack, callout);
        if (!setting) continue;
        found.push(setting);
        setPlaces([...found]);
        if (found.length === 1) setPlace(setting);
      }
    })();
  }, []);
  return (
    <>
      <header class="stack">
        <h1>{text.t('app.ways.trap.name')}</h1>
        <p class="soft">{text.t('practice.trap.intro')}</p>
      </header>
      {!place && <p role="status">{text.t('practice.working')}</p>}
      {place && (
        <label class="field">
          <span>{text.t('practice.jobs.place')}</span>
          <select
            value={places.indexOf(place)}
            onChange={(event) => setPlace(places[Number(event.currentTarget.value)] ?? place)}
          >
            {places.map((each, i) => (
              <option key={`${each.pack}/${each.callout.id}`} value={i}>
                {text.local(each.callout.text.title)}
              </option>
            ))}
          </select>
        </label>
      )}
      {place && <Workbench key={`${place.pack}/${place.callout.id}`} setting={place} />}
    </>
  );
}

function Workbench({ setting }: { readonly setting: Setting }) {
  const text = useText();
  const faults = trapFaults(setting);
  const [fault, setFault] = useState(faults[0]!);
  // A fault of moderate size: the largest are seen by everybody.
  const [step, setStep] = useState(STEPS / 4);
  const others = namedCauses(setting).filter((cause) => cause !== fault.cause);
  const [imitates, setImitates] = useState<CauseId>(others[0]!);
  const [check, setCheck] = useState<TrapCheck | 'working' | null>(null);
  const as = imitates === fault.cause ? others[0]! : imitates;
  const severity = Number((fault.from + ((fault.to - fault.from) * step) / STEPS).toPrecision(3));
  const draft = { fault: fault.fault, severity, imitates: as };
  const family = FAULTS.find(({ id }) => id === fault.cause)!;
  const kind = { share: 'share', K: 'difference', V: 'voltage', m: 'length', Pa: 'pressure' } as const;
  const run = async () => {
    setCheck('working');
    await breath();
    setCheck(checkTrap(setting, trapCallout(setting, draft), as));
  };
  const edit = (change: () => void) => {
    change();
    setCheck(null);
  };
  const send = async (how: 'link' | 'file' | 'play') => {
    const home = (await packs()).find(({ id }) => id === setting.pack)!;
    const pack = trapPack(home, trapCallout(setting, draft));
    if (how === 'file') return saveFile(`${pack.id}.json`, 'application/json', JSON.stringify(pack));
    const link = practiceLink('trap', packToCode(pack));
    if (how === 'play') {
      location.hash = link;
      return;
    }
    await navigator.clipboard?.writeText(new URL(link, location.href).href).catch(() => {});
    setLink(new URL(link, location.href).href);
  };
  const [link, setLink] = useState<string | null>(null);
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void run();
      }}
    >
      <label class="field">
        <span>{text.t('practice.trap.fault')}</span>
        <select
          value={fault.cause}
          onChange={(event) => {
            const found = faults.find(({ cause }) => cause === event.currentTarget.value);
            if (found) edit(() => setFault(found));
          }}
        >
          {faults.map(({ cause }) => (
            <option key={cause} value={cause}>
              {sentence(causeName(text, cause))}
            </option>
          ))}
        </select>
      </label>
      <label class="field">
        <span>{text.t('practice.trap.size', { size: text.quantity(kind[family.unit], severity, severity / 20) })}</span>
        <input
          type="range"
          min={0}
          max={STEPS}
          value={step}
          onInput={(event) => {
            const next = Number(event.currentTarget.value);
            edit(() => setStep(next));
          }}
        />
      </label>
      <label class="field">
        <span>{text.t('practice.trap.imitates')}</span>
        <select value={as} onChange={(event) => edit(() => setImitates(event.currentTarget.value as CauseId))}>
          {others.map((cause) => (
            <option key={cause} value={cause}>
              {sentence(causeName(text, cause))}
            </option>
          ))}
        </select>
      </label>
      <div class="wrap">
        <button type="submit" class="main" disabled={check === 'working'}>
          {text.t('practice.trap.check')}
        </button>
      </div>
      {check === 'working' && <p role="status">{text.t('practice.working')}</p>}
      {check && check !== 'working' && (
        <section class="told stack" aria-live="polite">
          <Checked check={check} truth={fault.cause} imitates={as} />
          {check.as === 'checked' && check.works && check.fair && (
            <>
              <div class="wrap">
                <button type="button" onClick={() => void send('link')}>
                  {text.t('practice.trap.link')}
                </button>
                <button type="button" onClick={() => void send('file')}>
                  {text.t('practice.trap.file')}
                </button>
                <button type="button" onClick={() => void send('play')}>
                  {text.t('practice.trap.play')}
                </button>
              </div>
              {link !== null && (
                <label class="field">
                  <span>{text.t('practice.trap.linkHere')}</span>
                  <textarea rows={3} readOnly value={link} />
                </label>
              )}
              <p class="soft">{text.t('practice.trap.packed')}</p>
            </>
          )}
        </section>
      )}
    </form>
  );
}

interface CheckedProps {
  readonly check: TrapCheck;
  readonly truth: CauseId;
  readonly imitates: CauseId;
}

function Checked({ check, truth, imitates }: CheckedProps) {
  const text = useText();
  if (check.as === 'stops') return <p>{text.t('practice.trap.stops')}</p>;
  const of100 = (share: number | undefined) => Math.round(100 * (share ?? 0));
  const names = { truth: causeName(text, truth), imitated: causeName(text, imitates) };
  const line = (key: 'first' | 'all') =>
    text.t(`practice.trap.${key}`, {
      ...names,
      ofTruth: of100(check[key][truth]),
      ofImitated: of100(check[key][imitates]),
    });
  return (
    <>
      <h2>
        {text.t(
          check.works && check.fair
            ? 'practice.trap.good'
            : check.works
              ? 'practice.trap.unfair'
              : check.fair
                ? 'practice.trap.seen'
                : 'practice.trap.neither',
        )}
      </h2>
      <p>{line('first')}</p>
      <p>{line('all')}</p>
    </>
  );
}
