/**
 * The drawn machine by itself, for tests and for looking at it. Query: plant, moment (see bench-snapshot.ts), theme,
 * motion, inside, language, renderer, w and h of the stage.
 */
import '../../../src/styles/tokens.css';
import '../../../src/styles/base.css';
import { INVERTER_SPLIT_DRAWING } from '../../../physics/plants/inverterSplit/drawing';
import { INVERTER_SPLIT_PLACES } from '../../../physics/plants/inverterSplit/places';
import { ORIFICE_SPLIT_DRAWING } from '../../../physics/plants/orificeSplit/drawing';
import { ORIFICE_SPLIT_PLACES } from '../../../physics/plants/orificeSplit/places';
import { type BenchHandle, benchWords, describeBench, mountBench, sentenceText } from '../../../src/bench';
import { createText, type Language } from '../../../src/i18n';
import { MOMENTS } from '../../support/bench-snapshot';

declare global {
  interface Window {
    bench: BenchHandle;
    mountAgain: () => Promise<BenchHandle>;
    chosen: string[];
    sentences: string[];
  }
}

const query = new URLSearchParams(location.search);
const ask = (name: string, fallback: string) => query.get(name) ?? fallback;
const host = document.getElementById('bench');
if (!host) throw new Error('the page has no element with id "bench"');
if (query.has('w')) host.style.width = `${query.get('w')}px`;
if (query.has('h')) host.style.height = `${query.get('h')}px`;

const isInverter = ask('plant', 'orifice-split') === 'inverter-split';
const drawing = isInverter ? INVERTER_SPLIT_DRAWING : ORIFICE_SPLIT_DRAWING;
const places = isInverter ? INVERTER_SPLIT_PLACES : ORIFICE_SPLIT_PLACES;
const snapshot = MOMENTS[ask('moment', 'healthy')];
const theme = ask('theme', 'paper') === 'night' ? 'night' : 'paper';
document.documentElement.dataset.theme = theme;
const text = createText(ask('language', 'en') as Language, 'si');
const inside = ask('inside', 'yes') !== 'no';

async function mount(): Promise<BenchHandle> {
  const handle = mountBench(host as HTMLElement, drawing, places, {
    words: benchWords(text),
    light: theme,
    motion: ask('motion', 'full') === 'reduced' ? 'reduced' : 'full',
    inside,
    renderer: ask('renderer', 'canvas') === 'auto' ? 'auto' : 'canvas',
    onFailure: (error) => console.error(error),
  });
  handle.update(snapshot);
  handle.onPlace((id) => {
    window.chosen.push(id);
    handle.select(id);
  });
  await handle.ready;
  return handle;
}

window.chosen = [];
window.sentences = describeBench(drawing, snapshot, inside).map((sentence) => sentenceText(text, sentence));
window.mountAgain = mount;
window.bench = await mount();
document.documentElement.dataset.ready = 'yes';
