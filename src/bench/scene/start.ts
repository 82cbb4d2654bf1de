/** Starts Phaser. Only this file and what it imports load Phaser; `mount.ts` fetches it when a bench is opened. */
import { CANVAS, Core, Display, Game, Scale, WEBGL } from 'phaser';
import type { PlantDrawing, Snapshot } from '../../../physics/types';
import type { Reach } from '../model/reaches';
import { BenchScene, type Look } from './BenchScene';

export type RendererChoice = 'auto' | 'canvas' | 'webgl';

export interface RunningScene {
  show(snapshot: Snapshot): void;
  setLook(look: Look): void;
  setPace(factor: number): void;
  /** Frames a second that the loop reaches just now. */
  frameRate(): number;
  destroy(): void;
}

/**
 * Canvas size is CSS size × device pixels, shrunk back by `zoom`: RESIZE would draw one pixel a CSS pixel and blur.
 * Phaser gets no keyboard, pointer or sound: focus, keys and touch belong to the page.
 */
export function startScene(
  host: HTMLElement,
  drawing: PlantDrawing,
  reaches: readonly Reach[],
  look: Look,
  renderer: RendererChoice,
): Promise<RunningScene> {
  return new Promise((resolve) => {
    const scene = new BenchScene(drawing, reaches, look, () => {
      game.canvas.setAttribute('aria-hidden', 'true');
      resolve(running);
    });
    const game = new Game({
      type: isWebGL(renderer) ? WEBGL : CANVAS,
      parent: host,
      width: Math.ceil(look.layout.width * look.density),
      height: Math.ceil(look.layout.height * look.density),
      scale: { mode: Scale.NONE, zoom: 1 / look.density },
      scene,
      transparent: true,
      banner: false,
      autoFocus: false,
      disableContextMenu: false,
      input: { keyboard: false, mouse: false, touch: false, gamepad: false, windowEvents: false },
      audio: { noAudio: true },
      // One texture a batch: see spriteSheet.ts.
      render: { antialiasGL: false, maxTextures: 1, powerPreference: 'low-power' },
    });
    const running: RunningScene = {
      show: (snapshot) => scene.setSnapshot(snapshot),
      setLook(next) {
        game.scale.resize(Math.ceil(next.layout.width * next.density), Math.ceil(next.layout.height * next.density));
        game.scale.setZoom(1 / next.density);
        scene.setLook(next);
      },
      setPace: (factor) => scene.setPace(factor),
      frameRate: () => game.loop.actualFps,
      destroy() {
        game.events.once(Core.Events.DESTROY, () => forgetTileSprite(game));
        // A sleeping loop would never come to the step in which the game takes itself down.
        if (!game.loop.running) game.loop.wake();
        game.destroy(true);
      },
    };
  });
}

/**
 * Phaser 4.2.1's texture manager keeps a tile sprite of its own and never takes its canvas out of the page-wide pool: each
 * bench ever opened would stay in memory (about 200 kB).
 */
function forgetTileSprite(game: Game): void {
  const { tileSprite } = game.textures as unknown as { readonly tileSprite?: unknown };
  if (tileSprite) (Display.Canvas.CanvasPool as unknown as { remove(parent: unknown): void }).remove(tileSprite);
}

/** How renderers without a chip name themselves; not every browser owns up by `failIfMajorPerformanceCaveat`. */
const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i;

/** WebGL where a graphics chip does it; made in software it is slower than the plain canvas (20 against 60 frames/s). */
function isWebGL(choice: RendererChoice): boolean {
  if (choice !== 'auto') return choice === 'webgl';
  const probe = document.createElement('canvas').getContext('webgl', { failIfMajorPerformanceCaveat: true });
  if (!probe) return false;
  const names = probe.getExtension('WEBGL_debug_renderer_info');
  const maker = String(probe.getParameter(names ? names.UNMASKED_RENDERER_WEBGL : probe.RENDERER));
  probe.getExtension('WEBGL_lose_context')?.loseContext();
  return !SOFTWARE.test(maker);
}
