/** Short bag and closed circuit: another job at a known place, with less in the bag. */
import { useEffect, useState } from 'preact/hooks';
import type { Callout, Pack } from '../../attempt/pack/types';
import type { InstrumentId } from '../../instruments/types';
import { instrumentName, sentence } from '../../panels/kit/say';
import { useText } from '../../panels/kit/text';
import { BAG_SIZE, bagChoices, closedBag, type JobPack, jobId } from '../../practice/jobs';
import { packs } from '../library';
import { calloutLink } from '../route';
import { newSeed } from '../saved';

interface Place {
  readonly pack: Pack;
  readonly callout: Callout;
}

export function JobsScreen({ way }: { readonly way: JobPack }) {
  const text = useText();
  const [places, setPlaces] = useState<readonly Place[]>([]);
  const [place, setPlace] = useState<Place | null>(null);
  const [bag, setBag] = useState<readonly InstrumentId[]>([]);
  useEffect(() => {
    void packs().then((shelf) => {
      const all = shelf.flatMap((pack) => pack.callouts.map((callout) => ({ pack, callout })));
      setPlaces(all);
      setPlace(all[0] ?? null);
    });
  }, []);
  const choose = (id: string) => {
    const found = places.find(({ pack, callout }) => `${pack.id}/${callout.id}` === id);
    if (!found) return;
    setPlace(found);
    setBag(bag.filter((each) => bagChoices(found.callout).includes(each)));
  };
  const toggle = (id: InstrumentId) =>
    setBag(bag.includes(id) ? bag.filter((each) => each !== id) : [...bag, id].slice(-BAG_SIZE));
  if (!place) return <p role="status">{text.t('practice.working')}</p>;
  const { pack, callout } = place;
  const carried = way === 'closed-circuit' ? closedBag(callout) : bag;
  const ready = way === 'closed-circuit' || bag.length === BAG_SIZE;
  const go = () => {
    location.hash = calloutLink(way, jobId(pack.id, callout.id, carried, newSeed().replace('-', '').slice(-12)));
  };
  return (
    <>
      <header class="stack">
        <h1>{text.t(`app.ways.${way}.name`)}</h1>
        <p class="soft">{text.t(way === 'short-bag' ? 'practice.jobs.shortBag' : 'practice.jobs.closedCircuit')}</p>
      </header>
      <label class="field">
        <span>{text.t('practice.jobs.place')}</span>
        <select value={`${pack.id}/${callout.id}`} onChange={(event) => choose(event.currentTarget.value)}>
          {places.map((each) => (
            <option key={`${each.pack.id}/${each.callout.id}`} value={`${each.pack.id}/${each.callout.id}`}>
              {text.local(each.callout.text.title)}
            </option>
          ))}
        </select>
      </label>
      <p class="soft">{sentence(text.t(`names.plant.${callout.plant}`))}.</p>
      <blockquote class="complaint">
        <p>{text.local(callout.text.complaint)}</p>
      </blockquote>
      <fieldset class="slot">
        <legend>
          {way === 'short-bag'
            ? text.t('practice.jobs.bag', { count: bag.length, of: BAG_SIZE })
            : text.t('practice.jobs.inBag')}
        </legend>
        <div class="wrap">
          {(way === 'short-bag' ? bagChoices(callout) : carried).map((id) =>
            way === 'short-bag' ? (
              <button type="button" key={id} aria-pressed={bag.includes(id)} onClick={() => toggle(id)}>
                {sentence(instrumentName(text, id))}
              </button>
            ) : (
              <span key={id} class="carried">
                {sentence(instrumentName(text, id))}
              </span>
            ),
          )}
        </div>
        <p class="soft">{text.t('practice.jobs.senses')}</p>
      </fieldset>
      <div class="wrap">
        <button type="button" class="main" disabled={!ready} onClick={go}>
          {text.t('practice.jobs.go')}
        </button>
      </div>
    </>
  );
}
