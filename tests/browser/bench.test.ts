/** The drawn machine by itself: what it shows, how it is reached by finger and key, and that it goes away cleanly. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PLANTS } from '../../physics';
import { type BenchPageServer, serveBenchPage } from './support/bench-page';
import { type BenchPage, launchBrowser, MOVING, openBench } from './support/page';

let browser: Browser;
let server: BenchPageServer;
beforeAll(async () => {
  [browser, server] = await Promise.all([launchBrowser(), serveBenchPage()]);
});
afterAll(async () => {
  await browser.close();
  await server.close();
});

async function open(query: string, width = 1000, height = 640): Promise<BenchPage> {
  const bench = await openBench(browser, {
    path: `${server.url}?${query}`,
    context: { ...MOVING, viewport: { width, height } },
  });
  await bench.page.waitForSelector('html[data-ready=yes]', { timeout: 90_000 });
  return bench;
}

/** A digest of the canvas's pixels, so that two moments of the picture can be told apart. */
function picture(page: Page): Promise<number> {
  return page.evaluate(() => {
    const canvas = document.querySelector('canvas');
    const pixels = canvas?.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
    let sum = 7;
    for (let i = 0; i < pixels.length; i += 4) sum = (Math.imul(sum, 31) + pixels[i] + 3 * pixels[i + 2]) | 0;
    return sum;
  });
}

const frames = (page: Page, count: number) =>
  page.evaluate(
    (left) =>
      new Promise<void>((resolve) => {
        const next = (n: number) => (n === 0 ? resolve() : requestAnimationFrame(() => next(n - 1)));
        next(left);
      }),
    count,
  );

describe.each(Object.values(PLANTS))('$id', (plant) => {
  test('every place is a named button of at least 44 px, in the order of the path', async () => {
    const bench = await open(`plant=${plant.id}`);
    const buttons = bench.page.locator('.bench-place');
    const ids = await buttons.evaluateAll((all) => all.map((button) => (button as HTMLElement).dataset.place));
    const ordered = [...plant.places].sort((a, b) => a.order - b.order).map((place) => place.id);
    expect(ids).toEqual(ordered);
    for (const box of await Promise.all((await buttons.all()).map((button) => button.boundingBox()))) {
      expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
    }
    const names = await buttons.evaluateAll((all) => all.map((button) => button.getAttribute('aria-label') ?? ''));
    expect(new Set(names).size).toBe(names.length);
    expect(names.filter((name) => name === '' || name.includes('bench.'))).toEqual([]);
    expect(await bench.page.locator('canvas').getAttribute('aria-hidden')).toBe('true');
    await bench.finish();
  });

  test('at 390 × 844 a finger that misses by up to 12 px still hits the place that was meant', async () => {
    // A site of many units has the whole stage of a phone; the halves of a small one do with the height beside a sheet.
    const bench = await open(`plant=${plant.id}&h=${plant.units ? 560 : 400}`, 390, 844);
    const views = plant.drawing.views.filter(({ grain }) => grain !== 'coarse').map(({ id }) => id);
    const outcome = await bench.page.evaluate((parts) => {
      const host = document.getElementById('stage') as HTMLElement;
      const seen = new Set<string>();
      let touches = 0;
      let hits = 0;
      for (const part of parts) {
        window.bench.setView(part);
        const origin = host.getBoundingClientRect();
        for (const spot of window.bench.placePositions()) {
          if (!spot.visible) continue;
          seen.add(spot.id);
          for (let k = 0; k < 200; k++) {
            // A grid of misses over the whole square of ±12 px.
            const dx = ((k % 15) / 14 - 0.5) * 24;
            const dy = (Math.floor(k / 15) / 13 - 0.5) * 24;
            const hit = document.elementFromPoint(origin.left + spot.x + dx, origin.top + spot.y + dy);
            touches += 1;
            if (hit?.closest<HTMLElement>('.bench-place')?.dataset.place === spot.id) hits += 1;
          }
        }
      }
      return { seen: seen.size, share: hits / touches };
    }, views);
    expect(outcome.seen).toBe(plant.places.length);
    expect(outcome.share).toBeGreaterThanOrEqual(0.99);
    await bench.finish();
  });

  test('arrow keys walk every place along the path, across both halves, and Enter chooses', async () => {
    const bench = await open(`plant=${plant.id}&h=400`, 390, 844);
    await bench.page.locator('.bench-place[tabindex="0"]').focus();
    const walked: string[] = [];
    for (let i = 0; i < plant.places.length; i++) {
      walked.push(
        await bench.page.evaluate(() => {
          const button = document.activeElement as HTMLElement;
          const spot = window.bench.placePositions().find(({ id }) => id === button.dataset.place);
          return spot?.visible ? spot.id : `hidden: ${button.dataset.place}`;
        }),
      );
      await bench.page.keyboard.press('ArrowRight');
    }
    expect(walked).toEqual([...plant.places].sort((a, b) => a.order - b.order).map((place) => place.id));
    await bench.page.keyboard.press('Home');
    await bench.page.keyboard.press('Enter');
    expect(await bench.page.evaluate(() => window.chosen)).toEqual([walked[0]]);
    await bench.finish();
  });
});

test('the picture moves with the machine, and stands still when the machine does or when motion is unwanted', async () => {
  for (const [query, moves] of [
    ['', true],
    ['&motion=reduced', false],
    ['&state=standing', false],
  ] as const) {
    const bench = await open(`plant=orifice-split${query}`);
    await frames(bench.page, 30);
    const before = await picture(bench.page);
    await frames(bench.page, 20);
    expect((await picture(bench.page)) !== before, query).toBe(moves);
    await bench.finish();
  }
});

test('another fault gives another picture and other sentences without motion', async () => {
  const bench = await open('plant=orifice-split&motion=reduced');
  const seen = new Map<number, string>();
  for (const faults of ['', 'undercharge=0.25', 'filter-dirty=0.5', 'condenser-dirty=0.5', 'condenser-fan-slow=0.5']) {
    await bench.page.evaluate((list) => window.show(list), faults);
    await bench.page.waitForTimeout(400);
    await frames(bench.page, 10);
    seen.set(await picture(bench.page), (await bench.page.evaluate(() => window.sentences)).join(' '));
  }
  expect(seen.size).toBe(5);
  expect(new Set(seen.values()).size).toBe(5);
  await bench.finish();
});

test('on a screen of double density the canvas has double the pixels and the same size', async () => {
  const bench = await openBench(browser, {
    path: `${server.url}?plant=orifice-split`,
    context: { ...MOVING, viewport: { width: 800, height: 600 }, deviceScaleFactor: 2 },
  });
  await bench.page.waitForSelector('html[data-ready=yes]', { timeout: 90_000 });
  const sizes = () =>
    bench.page.evaluate(() => {
      const canvas = document.querySelector('canvas') as HTMLCanvasElement;
      const box = canvas.getBoundingClientRect();
      return [canvas.width, canvas.height, Math.round(box.width), Math.round(box.height)];
    });
  expect(await sizes()).toEqual([1600, 1200, 800, 600]);
  await bench.page.setViewportSize({ width: 640, height: 500 });
  await expect.poll(sizes).toEqual([1280, 1000, 640, 500]);
  await bench.finish();
});

test('twenty benches come and go and leave no canvas, no button and no growing heap', async () => {
  const bench = await open('plant=orifice-split');
  const session = await bench.context.newCDPSession(bench.page);
  const measure = async () => {
    await session.send('HeapProfiler.collectGarbage');
    const { nodes, jsEventListeners } = await session.send('Memory.getDOMCounters');
    const { usedSize } = await session.send('Runtime.getHeapUsage');
    return { nodes, jsEventListeners, usedSize };
  };
  const again = (times: number) =>
    bench.page.evaluate(async (count) => {
      for (let i = 0; i < count; i++) {
        window.bench.destroy();
        window.bench = await window.mountAgain();
        await new Promise((resolve) => setTimeout(resolve, 60));
      }
    }, times);
  await again(3);
  const before = await measure();
  await again(20);
  const after = await measure();
  expect(await bench.page.locator('canvas').count()).toBe(1);
  expect(await bench.page.locator('.bench-places').count()).toBe(1);
  expect(after.nodes - before.nodes).toBeLessThan(200);
  expect(after.jsEventListeners - before.jsEventListeners).toBeLessThan(40);
  expect(after.usedSize - before.usedSize).toBeLessThan(4e6);
  await bench.finish();
});

test('by WebGL too every wing of air is whole, wherever it flies', async () => {
  // A wing drawn with a wrong sampler shows as a sliver: compare ink in the sky of both renderers.
  const ink: number[] = [];
  for (const renderer of ['canvas', 'webgl']) {
    const bench = await open(`plant=inverter-split&motion=reduced&renderer=${renderer}`, 500, 400);
    await frames(bench.page, 5);
    const shot = (await bench.page.screenshot({ clip: { x: 90, y: 80, width: 110, height: 30 } })).toString('base64');
    ink.push(await bench.page.evaluate(darkPixels, shot));
    await bench.finish();
  }
  expect(ink[0]).toBeGreaterThan(50);
  expect(Math.abs(ink[1] - ink[0]) / ink[0]).toBeLessThan(0.25);
});

test('without a graphics chip the plain canvas is taken', async () => {
  const bench = await open('plant=inverter-split&renderer=auto', 500, 400);
  expect(await bench.page.evaluate(() => document.querySelector('canvas')?.getContext('2d') !== null)).toBe(true);
  await bench.finish();
});

/** Runs in the page: how many pixels of a screenshot are clearly darker than paper. */
async function darkPixels(base64: string): Promise<number> {
  const image = await createImageBitmap(new Blob([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))]));
  const context = new OffscreenCanvas(image.width, image.height).getContext('2d') as OffscreenCanvasRenderingContext2D;
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, image.width, image.height);
  let dark = 0;
  for (let i = 0; i < data.length; i += 4) if (data[i] + data[i + 1] + data[i + 2] < 600) dark += 1;
  return dark;
}
