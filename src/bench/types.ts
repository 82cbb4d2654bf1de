/** What the app sees of the bench. */
import type { Place, PlantDrawing, Snapshot } from '../../physics/types';
import type { ViewId } from './geometry/layout';
import type { Light } from './paint/palette';
import type { Motion } from './scene/stage';
import type { RendererChoice } from './scene/start';

export type { Light, Motion, RendererChoice, ViewId };

/** Words that the bench shows or says; the app makes them from the catalogues (`bench.*`) in the reader's language. */
export interface BenchWords {
  /** name of the group of places for a screen reader, e.g. "The machine" */
  readonly machine: string;
  /** how to move about, read once on entering */
  readonly help: string;
  /** name of a place, with what it needs first, e.g. "liquid service port, cap to take off" */
  place(place: Place): string;
  /** the short name that is shown beside the place */
  shortPlace(place: Place): string;
  /** name of a half of the site, e.g. "Outdoors" */
  view(view: ViewId): string;
  /** name of the choice of halves */
  readonly chooseView: string;
  /** shown until the picture stands, and in its place when it cannot be drawn */
  readonly loading: string;
  readonly failed: string;
}

export interface BenchOptions {
  readonly words: BenchWords;
  readonly light?: Light;
  readonly motion?: Motion;
  /** false hides what runs inside the pipes and shows only what a person standing there could see */
  readonly inside?: boolean;
  /** 'auto' (if left out) takes WebGL only where a graphics chip does it */
  readonly renderer?: RendererChoice;
  /** called when the picture cannot be drawn; the places go on working */
  readonly onFailure?: (error: Error) => void;
}

/** A small text that hangs on a place. */
export interface PlaceTag {
  /** what was noted there: the name of the place says it too */
  readonly noted: string;
  /** what the tag shows: the same, or what the instrument has come to since */
  readonly shown: string;
  /** an instrument still sits there, and time has passed since the note */
  readonly live: boolean;
}

export interface PlacePosition {
  readonly id: string;
  /** CSS px from the host's top left corner */
  readonly x: number;
  readonly y: number;
  /** false while the place lies in the half of the site that is not shown */
  readonly visible: boolean;
}

export interface BenchHandle {
  /** Resolves when the picture stands; rejects never (see `onFailure`). */
  readonly ready: Promise<void>;
  update(snapshot: Snapshot): void;
  /** Marks a place as the one in hand and brings it into view; does not call back. */
  select(placeId: string | null): void;
  /** Moves the keyboard's focus to a place (to the current one if none is named). */
  focus(placeId?: string): void;
  /** Tells of a place that was tapped, clicked or chosen by Enter. Returns how to stop listening. */
  onPlace(callback: (placeId: string) => void): () => void;
  onLayout(callback: () => void): () => void;
  placePositions(): PlacePosition[];
  /** Small texts that hang on places; replaces the former ones. */
  setTags(tags: Readonly<Record<string, PlaceTag>>): void;
  setWords(words: BenchWords): void;
  setTheme(light: Light): void;
  setMotion(motion: Motion): void;
  setInside(inside: boolean): void;
  /** How much faster than usual what moves is shown; 1 if never called. */
  setPace(factor: number): void;
  readonly view: ViewId;
  setView(view: ViewId): void;
  /** Fits the picture to the host again; called by itself when the host's size changes. */
  resize(): void;
  /** Frames a second just now, 0 before the picture stands. */
  frameRate(): number;
  destroy(): void;
}

export type MountBench = (
  host: HTMLElement,
  drawing: PlantDrawing,
  places: readonly Place[],
  options: BenchOptions,
) => BenchHandle;
