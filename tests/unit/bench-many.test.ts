/** The drawn machine with many indoor units: geometry, what runs where in each mode, views, and the sentences. */
import { describe, expect, test } from 'vitest';
import {
  type Controls,
  createMachine,
  type Faults,
  type OperatingMode,
  PLANTS,
  type PlantDescription,
  PROBES,
  probeName,
  type Snapshot,
} from '../../physics';
import { describeBench, sentenceText } from '../../src/bench/describe';
import { closestPair, layOut, TARGET, viewOf } from '../../src/bench/geometry/layout';
import { Route } from '../../src/bench/geometry/route';
import { contentAt, type Reach, reachesOf, segmentsOf, speedsOf } from '../../src/bench/model/reaches';
import { benchWords } from '../../src/bench/words';
import { createText } from '../../src/i18n';
import { channelValue } from '../../src/instruments';
import { channelName, placeName } from '../../src/panels/kit/say';

const plants = [PLANTS['multi-split'], PLANTS['heat-recovery']];

function settled(
  plant: PlantDescription,
  mode: OperatingMode = 'cooling',
  faults: Faults = {},
  controls: Partial<Controls> = {},
): Snapshot {
  const conditions = plant.modes[mode];
  if (!conditions) throw new Error(`${plant.id} has no mode ${mode}`);
  return createMachine({ plant: plant.id, refrigerant: plant.refrigerants[0], conditions, faults }).steady(controls);
}

describe.each(plants)('the drawing of $id', (plant) => {
  const { drawing, places } = plant;
  const units = plant.units ?? [];

  test('each unit has its room, coil, valve, fan and filter, and pipes that meet its coil', () => {
    const reaches = reachesOf(drawing);
    for (const unit of units) {
      expect(drawing.blocks.some(({ id }) => id === `room@${unit}`)).toBe(true);
      for (const kind of ['coil', 'fan', 'filter'] as const) {
        expect(drawing.parts.filter((part) => part.of === unit && part.kind === kind)).toHaveLength(1);
      }
      const coil = reaches.find((reach) => reach.kind === 'coil' && reach.of === unit);
      const liquid = reaches.find(({ id }) => id === `liquid-pipe@${unit}`);
      expect(coil?.feeds).not.toBeNull();
      expect(liquid?.throttle, 'its valve sits on its liquid pipe').not.toBeNull();
    }
  });

  test('every stretch of pipe begins or ends where another one does, or where a coil or the compressor is', () => {
    const ends = drawing.pipes.flatMap(({ points }) => [points[0], points[points.length - 1]]);
    const routes = drawing.pipes.map(({ points }) => new Route(points, 0.09));
    const spot = { x: 0, y: 0, angle: 0 };
    const onSomePipe = ([x, y]: readonly [number, number], own: number) =>
      routes.some((route, k) => {
        if (k === own) return false;
        for (let i = 0; i < route.samples; i++) {
          route.sample(i, spot);
          if (Math.hypot(spot.x - x, spot.y - y) < 0.13) return true;
        }
        return false;
      });
    const onSomePart = ([x, y]: readonly [number, number]) =>
      drawing.parts.some(
        (part) =>
          ['coil', 'compressor', 'reversing-valve'].includes(part.kind) &&
          x > part.x - 0.02 &&
          x < part.x + part.w + 0.02 &&
          y > part.y - 0.02 &&
          y < part.y + part.h + 0.02,
      );
    const loose = ends.filter((end, i) => !onSomePipe(end, Math.floor(i / 2)) && !onSomePart(end));
    expect(loose).toEqual([]);
  });

  test('what is clamped or tapped lies on a pipe', () => {
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
      expect(nearest, place.id).toBeLessThan(0.1);
    }
  });

  test('every place has its own rank and name and reads something that the model computes', () => {
    const snapshot = settled(plant);
    expect(new Set(places.map((place) => place.order)).size).toBe(places.length);
    expect(new Set(places.map((place) => place.id)).size).toBe(places.length);
    for (const place of places) {
      const { look, link, ...probes } = place.reads;
      expect(Object.keys(place.reads).length, place.id).toBeGreaterThan(0);
      for (const key of Object.values(probes)) {
        expect(Object.keys(PROBES)).toContain(probeName(key));
        expect(channelValue(snapshot, key), key).toBeTypeOf('number');
      }
      if (look) expect(channelValue(snapshot, `look:${look}`)).toBeTypeOf('number');
      for (const channel of link ?? []) expect(Number.isFinite(channelValue(snapshot, channel)), channel).toBe(true);
    }
    for (const language of ['en', 'es'] as const) {
      const text = createText(language, 'si');
      const words = benchWords(text);
      const names = places.map((place) => words.shortPlace(place));
      expect(new Set(names).size).toBe(places.length);
      for (const { id, reads } of places) {
        expect(placeName(text, id)).not.toBe(id);
        for (const channel of reads.link ?? []) expect(channelName(text, channel)).not.toBe(channel);
      }
    }
  });

  test('targets keep 44 px apart: single rooms on a phone, storeys on a desk, and every place lies in a view', () => {
    const phone = layOut(drawing, places, 390, 600, 'whole');
    expect(phone.overview).toBe(true);
    expect(phone.choices).toContain(`room@${units[0]}`);
    for (const id of phone.choices.slice(1)) {
      const layout = layOut(drawing, places, 390, 560, id);
      const view = drawing.views.find((candidate) => candidate.id === id);
      if (!view) throw new Error(`no view ${id}`);
      expect(closestPair(places, view) * layout.scale, id).toBeGreaterThanOrEqual(TARGET);
    }
    const desk = layOut(drawing, places, 849, 760, 'whole');
    expect(desk.choices.some((id) => id.startsWith('room@'))).toBe(false);
    for (const { choices } of [phone, desk]) {
      for (const place of places) expect(choices).toContain(viewOf(drawing, place, choices));
    }
  });

  test('both languages name every view', () => {
    for (const language of ['en', 'es'] as const) {
      const words = benchWords(createText(language, 'si'));
      for (const { id } of drawing.views) expect(words.view(id)).not.toBe(id);
    }
  });
});

describe.each(plants)('what runs in the pipes of $id', (plant) => {
  const reaches = reachesOf(plant.drawing);
  const speeds = (snapshot: Snapshot) => {
    const all = speedsOf(reaches, snapshot);
    return (id: string) => all[reaches.findIndex((reach) => reach.id === id)];
  };
  const reachOf = (id: string): Reach => {
    const reach = reaches.find((candidate) => candidate.id === id);
    if (!reach) throw new Error(`no reach ${id}`);
    return reach;
  };

  test('cooling: liquid to every unit, gas back; the main carries what the units behind it take', () => {
    const snapshot = settled(plant);
    const of = speeds(snapshot);
    for (const unit of plant.units ?? []) {
      expect(of(`liquid-pipe@${unit}`)).toBeGreaterThan(0);
      expect(of(`gas-pipe@${unit}`)).toBeGreaterThan(0);
      expect(contentAt(reachOf(`gas-pipe@${unit}`), snapshot, 0.5, { temperature: 0, gas: 0 }).gas).toBe(1);
      expect(contentAt(reachOf(`liquid-pipe@${unit}`), snapshot, 0.1, { temperature: 0, gas: 0 }).gas).toBe(0);
    }
    const storey = plant.drawing.views.find(({ grain }) => grain === 'coarse')?.id;
    expect(of(`liquid-${storey}-1`)).toBeGreaterThan(of(`liquid-${storey}-2`));
  });

  test('heating: the same pipes run the other way, and a coil is hottest where the gas comes in', () => {
    const snapshot = settled(plant, 'heating');
    const of = speeds(snapshot);
    for (const unit of plant.units ?? []) {
      expect(of(`liquid-pipe@${unit}`)).toBeLessThan(0);
      const segments = segmentsOf({ of: unit, role: 'evaporator' }, snapshot);
      expect(segments.at(-1)?.temperature).toBeGreaterThan(segments[0]?.temperature ?? 0);
    }
    for (const module of snapshot.modules ?? []) expect(of(`coil-gas@${module.id}`)).toBeLessThan(0);
  });

  test('a unit that is off lets nothing through in cooling, and nothing moves in a standing machine', () => {
    const of = speeds(settled(plant, 'cooling', {}, { units: { unit2: 'off' } }));
    expect(Math.abs(of('gas-pipe@unit2'))).toBe(0);
    expect(of('gas-pipe@unit1')).toBeGreaterThan(0);
    const conditions = plant.designConditions;
    const machine = createMachine({ plant: plant.id, refrigerant: plant.refrigerants[0], conditions, faults: {} });
    const off = machine.snapshot(machine.start('standing', { ...machine.defaultControls, running: false }));
    for (const speed of speedsOf(reaches, off)) expect(Math.abs(speed)).toBe(0);
  });
});

test('at once cooling and heating, each changeover box leads one way only', () => {
  const plant = PLANTS['heat-recovery'];
  const snapshot = settled(plant, 'simultaneous');
  const reaches = reachesOf(plant.drawing);
  const all = speedsOf(reaches, snapshot);
  const of = (id: string) => all[reaches.findIndex((reach) => reach.id === id)];
  expect(new Set(snapshot.units?.map(({ role }) => role)).size).toBeGreaterThan(1);
  for (const { id, role } of snapshot.units ?? []) {
    expect(of(`suction-branch@${id}`) > 0).toBe(role === 'evaporator');
    expect(of(`hot-branch@${id}`) > 0).toBe(role === 'condenser');
  }
});

describe.each(plants)('sentences of $id', (plant) => {
  const said = (snapshot: Snapshot, language: 'en' | 'es', inside: boolean) => {
    const text = createText(language, 'si');
    return describeBench(plant.drawing, snapshot, inside).map((sentence) => sentenceText(text, sentence));
  };

  test('both languages say the same things of every unit in every mode, with no key left over', () => {
    for (const mode of Object.keys(plant.modes) as OperatingMode[]) {
      const snapshot = settled(plant, mode);
      for (const inside of [true, false]) {
        const english = said(snapshot, 'en', inside);
        const spanish = said(snapshot, 'es', inside);
        expect(spanish.length).toBe(english.length);
        for (const sentence of [...english, ...spanish]) expect(sentence).not.toMatch(/bench\.|\{\{|undefined|NaN/);
        expect(new Set(english).size).toBe(english.length);
        for (let i = 1; i <= 8; i++) expect(english.some((line) => line.startsWith(`Unit ${i}:`))).toBe(true);
      }
    }
  });

  test('a dirty filter changes what is said of its own unit alone', () => {
    const healthy = said(settled(plant), 'en', false);
    const changed = said(settled(plant, 'cooling', { 'filter-dirty@unit6': 0.5 }), 'en', false).filter(
      (line) => !healthy.includes(line),
    );
    expect(changed.length).toBeGreaterThan(0);
    expect(changed.filter((line) => !line.startsWith('Unit 6:'))).toEqual([]);
  });

  test('from outside nobody is told what runs in the pipes', () => {
    expect(said(settled(plant), 'en', false).join(' ')).not.toMatch(/liquid|\bgas\b/i);
  });
});
