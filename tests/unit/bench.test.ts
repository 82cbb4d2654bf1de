/** The drawn machine without a screen: geometry, what runs in the pipes, and the sentences. */
import { describe, expect, test } from 'vitest';
import {
  createMachine,
  type Faults,
  type OperatingMode,
  PLANTS,
  type PlantDescription,
  PROBES,
  plantDescription,
  type Snapshot,
} from '../../physics';
import { describeBench, sentenceText } from '../../src/bench/describe';
import { closestPair, layOut, TARGET, viewOf } from '../../src/bench/geometry/layout';
import { Route } from '../../src/bench/geometry/route';
import { contentAt, reachesOf, speedsOf } from '../../src/bench/model/reaches';
import { hatchOf } from '../../src/bench/paint/palette';
import { benchWords } from '../../src/bench/words';
import { createText } from '../../src/i18n';

/** Every plant in every mode, and variants that are drawn otherwise: what a line carries and what a place reads depends on it. */
const every = Object.values(PLANTS).flatMap(({ id, modes, refrigerants, variants }) => [
  ...(Object.keys(modes) as OperatingMode[]).map((mode) => ({
    ...plantDescription(id, mode),
    title: `${id}, ${mode}`,
  })),
  ...refrigerants
    .filter((refrigerant) => variants?.[refrigerant])
    .map((refrigerant) => ({
      ...plantDescription(id, undefined, refrigerant),
      refrigerants: [refrigerant],
      title: `${id} for ${refrigerant}`,
    })),
]);
/** One indoor unit; those with many have tests of their own in bench-many.test.ts. */
const plants = every.filter(({ units }) => units === undefined);

/** A receiver gives liquid until it is empty. */
function isReceiver(plant: PlantDescription): boolean {
  return plant.drawing.parts.some(({ kind }) => kind === 'receiver');
}

function settled(plant: PlantDescription, faults: Faults = {}): Snapshot {
  const conditions = plant.designConditions;
  return createMachine({ plant: plant.id, refrigerant: plant.refrigerants[0], conditions, faults }).steady();
}

function sentences(plant: PlantDescription, snapshot: Snapshot, language: 'en' | 'es' = 'en', inside = true): string[] {
  const text = createText(language, 'si');
  return describeBench(plant.drawing, snapshot, inside).map((sentence) => sentenceText(text, sentence));
}

describe.each(plants)('the drawing of $title', (plant) => {
  const { drawing, places } = plant;

  test('pipes join the stations into one circuit, and each coil is met by its two pipes at its edge', () => {
    const next = new Map(drawing.pipes.map((pipe) => [pipe.from, pipe.to]));
    next.set('condenser-in', 'condenser-out');
    next.set('evaporator-in', 'evaporator-out');
    next.set('compressor-in', 'compressor-out');
    let station = 'compressor-out';
    for (let i = 0; i < 10; i++) station = next.get(station as never) ?? 'nowhere';
    expect(station).toBe('compressor-out');
    for (const coil of drawing.parts.filter((part) => part.kind === 'coil')) {
      const name = coil.role === 'condenser' ? 'condenser' : 'evaporator';
      const fed = drawing.pipes.find((pipe) => pipe.to === `${name}-in`)?.points.at(-1);
      const left = drawing.pipes.find((pipe) => pipe.from === `${name}-out`)?.points[0];
      for (const [x, y] of [fed ?? [0, 0], left ?? [0, 0]]) {
        expect(Math.min(Math.abs(x - coil.x), Math.abs(x - coil.x - coil.w))).toBeLessThan(1e-9);
        expect(y >= coil.y && y <= coil.y + coil.h).toBe(true);
      }
    }
  });

  test('a pipe begins where the one before it ended', () => {
    for (const pipe of drawing.pipes) {
      const after = drawing.pipes.find((candidate) => candidate.from === pipe.to);
      if (after) expect(after.points[0]).toEqual(pipe.points.at(-1));
    }
  });

  test('what is clamped or tapped lies on a pipe, and the pressure port before the drier is before it', () => {
    const routes = drawing.pipes.map((pipe) => new Route(pipe.points, 0.09));
    const spot = { x: 0, y: 0, angle: 0 };
    for (const place of places.filter(({ kind }) => kind === 'pipe' || kind === 'port')) {
      let nearest = Number.POSITIVE_INFINITY;
      for (const route of routes) {
        for (let i = 0; i < route.samples; i++) {
          route.sample(i, spot);
          nearest = Math.min(nearest, Math.hypot(spot.x - place.x, spot.y - place.y));
        }
      }
      expect(nearest, place.id).toBeLessThan(0.08);
    }
    // in heating the refrigerant passes them the other way
    const order = (id: string) => places.find((place) => place.id === id)?.order ?? Number.NaN;
    expect(order('liquid-port')).toBeLessThan(order('drier-outlet-pipe'));
  });

  test('every place has its own rank, reads something that the model computes, and lies in a view', () => {
    expect(new Set(places.map((place) => place.order)).size).toBe(places.length);
    expect(new Set(places.map((place) => place.id)).size).toBe(places.length);
    for (const place of places) {
      const { look, link, ...probes } = place.reads;
      for (const name of Object.values(probes)) expect(Object.keys(PROBES)).toContain(name);
      expect(Object.keys(place.reads).length, place.id).toBeGreaterThan(0);
      expect(['outdoor', 'indoor']).toContain(viewOf(drawing, place));
    }
  });

  test('targets keep 44 px apart on a phone in halves, and on a desk in one picture', () => {
    for (const view of drawing.views) {
      const layout = layOut(drawing, places, 390, 400, view.id);
      expect(layout.view).toBe(view.id);
      expect(closestPair(places, view) * layout.scale).toBeGreaterThanOrEqual(TARGET);
    }
    expect(layOut(drawing, places, 900, 600, 'whole').view).toBe('whole');
  });

  test('both languages name every place, differently from each other place', () => {
    for (const language of ['en', 'es'] as const) {
      const words = benchWords(createText(language, 'si'));
      const names = places.map((place) => words.shortPlace(place));
      expect(new Set(names).size).toBe(places.length);
      expect(names.filter((name, i) => name === places[i].id)).toEqual([]);
    }
  });
});

describe.each(plants)('what runs in the pipes of $title', (plant) => {
  const reaches = reachesOf(plant.drawing);
  const healthy = settled(plant);
  const at = (id: string, share: number, snapshot = healthy) => {
    const reach = reaches.find((candidate) => candidate.id === id || candidate.from === id);
    if (!reach) throw new Error(`no reach "${id}"`);
    return contentAt(reach, snapshot, share, { temperature: 0, gas: 0 });
  };

  test('gas leaves the compressor, liquid leaves the outdoor coil, a mixture feeds the indoor coil, gas comes back', () => {
    expect(at('compressor-out', 0.5).gas).toBe(1);
    expect(at('condenser-out', 0.5).gas).toBe(0);
    const feed = at('metering-in', 0.9).gas;
    expect(feed).toBeGreaterThan(0.5);
    expect(feed).toBeLessThan(1);
    expect(at('suction-port', 0.5).gas).toBe(1);
  });

  test('temperatures are those of the stations at the ends', () => {
    expect(at('compressor-out', 0).temperature).toBe(healthy.stations['compressor-out'].temperature);
    expect(at('compressor-out', 1).temperature).toBe(healthy.stations['condenser-in'].temperature);
    expect(at('metering-in', 1).temperature).toBe(healthy.stations['evaporator-in'].temperature);
  });

  test('speed is mass flow over density and bore: gas outruns liquid, and nothing moves in a standing machine', () => {
    const speeds = speedsOf(reaches, healthy);
    const of = (from: string) => speeds[reaches.findIndex((reach) => reach.from === from)];
    expect(of('suction-port')).toBeGreaterThan(2);
    expect(of('suction-port')).toBeLessThan(20);
    expect(of('condenser-out')).toBeLessThan(of('suction-port') / 3);
    const machine = createMachine({
      plant: plant.id,
      refrigerant: plant.refrigerants[0],
      conditions: plant.designConditions,
      faults: {},
    });
    const off = machine.snapshot(machine.start('standing', { ...machine.defaultControls, running: false }));
    for (const speed of speedsOf(reaches, off)) expect(speed).toBe(0);
  });

  test('short of refrigerant, bubbles run before the metering device', () => {
    const starved = settled(plant, { undercharge: isReceiver(plant) ? 0.5 : 0.3 });
    expect(at('drier-out', 0.5, starved).gas).toBeGreaterThan(0.05);
  });
});

describe('sentences', () => {
  test.each(plants)(
    '$title: both languages say the same things in as many sentences, with no key left over',
    (plant) => {
      const cases: Faults[] = [{}, { undercharge: 0.3 }, { 'condenser-dirty': 0.5 }];
      if (plant.drawing.parts.some(({ kind }) => kind === 'filter')) cases.push({ 'filter-dirty': 0.5 });
      for (const faults of cases) {
        const snapshot = settled(plant, faults);
        for (const inside of [true, false]) {
          const english = sentences(plant, snapshot, 'en', inside);
          const spanish = sentences(plant, snapshot, 'es', inside);
          expect(spanish.length).toBe(english.length);
          for (const sentence of [...english, ...spanish]) expect(sentence).not.toMatch(/bench\.|\{\{|undefined/);
          expect(new Set(english).size).toBe(english.length);
        }
      }
    },
  );

  test('they walk round the circuit from the compressor and end with the drain', () => {
    const [first, ...rest] = describeBench(PLANTS['orifice-split'].drawing, settled(PLANTS['orifice-split']));
    expect(first.about).toBe('compressor');
    const about = rest.map((sentence) => sentence.about);
    const circuit = ['discharge', 'outdoor-coil', 'condenser-outlet', 'liquid-riser', 'liquid-line', 'indoor-coil'];
    const ranks = [...circuit, 'suction-line', 'compressor-inlet'].map((id) => about.indexOf(id));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(Math.min(...ranks)).toBeGreaterThanOrEqual(0);
    expect(about.at(-1)).toBe('drain');
  });

  test('each visible fault changes the sentence about what shows it', () => {
    const plant = PLANTS['orifice-split'];
    const healthy = sentences(plant, settled(plant), 'en', false);
    const cases: [Faults, string][] = [
      [{ undercharge: 0.3 }, 'Sight glass'],
      [{ 'filter-dirty': 0.5 }, 'Air filter'],
      [{ 'condenser-dirty': 0.5 }, 'Outdoor coil'],
      [{ 'condenser-fan-slow': 0.4 }, 'Outdoor fan'],
      [{ 'evaporator-fan-slow': 0.4 }, 'Indoor fan'],
    ];
    for (const [faults, about] of cases) {
      const changed = sentences(plant, settled(plant, faults), 'en', false).filter((line) => !healthy.includes(line));
      expect(
        changed.some((line) => line.startsWith(about)),
        about,
      ).toBe(true);
    }
  });

  test('from outside nobody is told what runs in the pipes', () => {
    const plant = PLANTS['orifice-split'];
    const told = sentences(plant, settled(plant), 'en', false).join(' ');
    expect(told).not.toMatch(/liquid|gas|\bhot\b|\bcold\b/i);
  });
});

test('a route is walked evenly and clamped at its ends', () => {
  const route = new Route(
    [
      [0, 0],
      [2, 0],
      [2, 1],
    ],
    0.1,
  );
  expect(route.length).toBeGreaterThan(2.9);
  expect(route.length).toBeLessThan(3);
  const spot = { x: 0, y: 0, angle: 0 };
  expect(route.at(1, spot)).toMatchObject({ x: expect.closeTo(1, 2), y: 0, angle: 0 });
  expect(route.at(99, spot)).toMatchObject({ x: 2, y: 1 });
  expect(() => new Route([[1, 1]], 0.1)).toThrow('two different points');
});

test('cold and hot differ by the kind of their hatch, and more of either by closer strokes', () => {
  expect(hatchOf(273).kind).toBe('slant');
  expect(hatchOf(297).kind).toBe('none');
  expect(hatchOf(353).kind).toBe('cross');
  expect(hatchOf(353).gap).toBeLessThan(hatchOf(315).gap);
  expect(hatchOf(268).gap).toBeLessThan(hatchOf(288).gap);
});
