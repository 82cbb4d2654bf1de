/** Puts the bench into an element: the buttons at once, the picture when Phaser has come. */
import type { Place, PlantDrawing, Snapshot } from '../../physics/types';
import { type Layout, layOut, type ViewId } from './geometry/layout';
import { reachesOf } from './model/reaches';
import { createOverlay } from './overlay';
import type { Look } from './scene/BenchScene';
import type { RunningScene } from './scene/start';
import type { BenchHandle, BenchOptions, Light, Motion } from './types';

/** Finer than this no eye tells, but memory and paint time grow with its square. */
const FINEST = 3;

export function mountBench(
  host: HTMLElement,
  drawing: PlantDrawing,
  places: readonly Place[],
  options: BenchOptions,
): BenchHandle {
  let light: Light = options.light ?? 'paper';
  let motion: Motion = options.motion ?? 'full';
  let inside = options.inside ?? true;
  let pace = 1;
  let wanted: ViewId = 'whole';
  let snapshot: Snapshot | null = null;
  let scene: RunningScene | null = null;
  let gone = false;
  const placeListeners = new Set<(placeId: string) => void>();
  const layoutListeners = new Set<() => void>();

  host.classList.add('bench-host');
  const canvasHost = document.createElement('div');
  canvasHost.className = 'bench-canvas';
  canvasHost.setAttribute('aria-hidden', 'true');
  const notice = document.createElement('p');
  notice.className = 'bench-notice';
  host.append(canvasHost, notice);
  host.dataset.picture = 'loading';
  let words = options.words;
  showNotice();
  const overlay = createOverlay(host, drawing, places, options.words, {
    onPlace(placeId) {
      for (const listener of placeListeners) listener(placeId);
    },
    onView: (view) => setView(view),
  });

  let layout = fitToHost();
  overlay.setLayout(layout);
  host.dataset.light = light;

  function showNotice(): void {
    const { picture } = host.dataset;
    notice.hidden = picture === 'drawn';
    notice.textContent = picture === 'failed' ? words.failed : words.loading;
  }

  function setPicture(state: 'drawn' | 'failed'): void {
    host.dataset.picture = state;
    showNotice();
  }

  function fitToHost(): Layout {
    return layOut(drawing, places, Math.max(1, host.clientWidth), Math.max(1, host.clientHeight), wanted);
  }

  function look(): Look {
    const density = Math.min(FINEST, Math.max(1, window.devicePixelRatio || 1));
    return { layout, density, light, motion, inside };
  }

  function relay(): void {
    if (gone) return;
    layout = fitToHost();
    overlay.setLayout(layout);
    scene?.setLook(look());
    for (const listener of layoutListeners) listener();
  }

  function setView(view: ViewId): void {
    if (view === layout.view) return;
    wanted = view;
    relay();
  }

  const observer = new ResizeObserver(() => {
    if (host.clientWidth !== layout.width || host.clientHeight !== layout.height) relay();
  });
  observer.observe(host);

  async function draw(): Promise<void> {
    try {
      const { startScene } = await import('./scene/start');
      if (gone) return;
      const started = await startScene(canvasHost, drawing, reachesOf(drawing), look(), options.renderer ?? 'auto');
      if (gone) {
        started.destroy();
        return;
      }
      scene = started;
      scene.setLook(look());
      scene.setPace(pace);
      if (snapshot) scene.show(snapshot);
      setPicture('drawn');
    } catch (error) {
      if (gone) return;
      setPicture('failed');
      options.onFailure?.(error instanceof Error ? error : new Error(String(error)));
    }
  }

  return {
    ready: draw(),
    update(next) {
      snapshot = next;
      scene?.show(next);
    },
    select: overlay.select,
    focus: overlay.focus,
    onPlace(callback) {
      placeListeners.add(callback);
      return () => placeListeners.delete(callback);
    },
    onLayout(callback) {
      layoutListeners.add(callback);
      return () => layoutListeners.delete(callback);
    },
    placePositions: overlay.positions,
    setTags: overlay.setTags,
    setWords(next) {
      words = next;
      showNotice();
      overlay.setWords(next);
    },
    setTheme(next) {
      light = next;
      host.dataset.light = next;
      scene?.setLook(look());
    },
    setMotion(next) {
      motion = next;
      scene?.setLook(look());
    },
    setInside(next) {
      inside = next;
      scene?.setLook(look());
    },
    setPace(factor) {
      pace = factor;
      scene?.setPace(factor);
    },
    get view() {
      return layout.view;
    },
    setView,
    resize: relay,
    frameRate: () => scene?.frameRate() ?? 0,
    destroy() {
      if (gone) return;
      gone = true;
      observer.disconnect();
      scene?.destroy();
      overlay.destroy();
      canvasHost.remove();
      notice.remove();
      host.classList.remove('bench-host');
      delete host.dataset.light;
      delete host.dataset.picture;
      placeListeners.clear();
      layoutListeners.clear();
    },
  };
}
