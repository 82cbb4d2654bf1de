/**
 * The drawn machine by itself, for tests and for looking at it. Query: plant, faults (`undercharge:0.25,…`), state
 * (`settled` or `standing`), run (seconds of model time from there), mode, units (`unit3=off,…`: what single rooms
 * ask), indoor (°C), theme, motion, inside, language, renderer, w and h of the stage.
 */
import '../../../src/styles/tokens.css';
import '../../../src/styles/base.css';
import './page.css';
import {
  createMachine,
  type OperatingMode,
  type PlantId,
  plantDescription,
  type Snapshot,
  type UnitDemand,
} from '../../../physics';
import {
  type BenchHandle,
  benchWords,
  describeBench,
  mountBench,
  type RendererChoice,
  sentenceText,
} from '../../../src/bench';
import { createText, type Language } from '../../../src/i18n';

declare global {
  interface Window {
    bench: BenchHandle;
    mountAgain: () => Promise<BenchHandle>;
    show: (faults: string) => void;
    chosen: string[];
    sentences: string[];
  }
}

const query = new URLSearchParams(location.search);
const ask = (name: string, fallback: string) => query.get(name) ?? fallback;
const host = document.getElementById('stage') as HTMLDivElement;
if (query.has('w')) host.style.width = `${query.get('w')}px`;
if (query.has('h')) host.style.height = `${query.get('h')}px`;

const built = plantDescription(ask('plant', 'orifice-split') as PlantId);
const refrigerant = built.refrigerants.find((each) => each === query.get('refrigerant')) ?? built.refrigerants[0];
const plant = plantDescription(built.id, undefined, refrigerant);
const theme = ask('theme', 'paper') === 'night' ? 'night' : 'paper';
document.documentElement.dataset.theme = theme;
const text = createText(ask('language', 'en') as Language, 'si');
const inside = ask('inside', 'yes') !== 'no';

function pairs(list: string): string[][] {
  return list
    .split(',')
    .filter((part) => part !== '')
    .map((part) => part.split('='));
}

function compute(faultList: string): Snapshot {
  const faults = Object.fromEntries(pairs(faultList).map(([key, size]) => [key, Number(size)]));
  const design = plant.modes[ask('mode', 'cooling') as OperatingMode] ?? plant.designConditions;
  const conditions = query.has('indoor') ? { ...design, indoor: Number(query.get('indoor')) + 273.15 } : design;
  const machine = createMachine({ plant: plant.id, refrigerant, conditions, faults });
  const isStanding = ask('state', 'settled') === 'standing';
  const units = Object.fromEntries(pairs(ask('units', ''))) as Record<string, UnitDemand>;
  const controls = { ...machine.defaultControls, running: !isStanding, ...(query.has('units') ? { units } : {}) };
  if (!isStanding && !query.has('run')) return machine.steady(controls);
  let state = machine.start(isStanding ? 'standing' : 'settled', controls);
  for (let t = 0; t < Number(ask('run', '0')); t += 5) state = machine.step(state, controls, 5);
  return machine.snapshot(state);
}

async function mount(): Promise<BenchHandle> {
  const handle = mountBench(host, plant.drawing, plant.places, {
    words: benchWords(text),
    light: theme,
    motion: ask('motion', 'full') === 'reduced' ? 'reduced' : 'full',
    inside,
    renderer: ask('renderer', 'canvas') as RendererChoice,
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

let snapshot = compute(ask('faults', ''));
window.chosen = [];
window.show = (faults) => {
  snapshot = compute(faults);
  window.sentences = describeBench(plant.drawing, snapshot, inside).map((sentence) => sentenceText(text, sentence));
  window.bench?.update(snapshot);
};
window.mountAgain = mount;
window.show(ask('faults', ''));
window.bench = await mount();
document.documentElement.dataset.ready = 'yes';
