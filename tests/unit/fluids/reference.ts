import { readFileSync } from 'node:fs';
import { REFRIGERANTS, type RefrigerantId, refrigerantData } from '../../../physics/fluids/fluid';

export type Row = Record<string, number | null>;

export interface Reference {
  readonly checkStates: readonly Record<string, number>[];
  readonly saturation: readonly Row[];
  readonly superheated: readonly Record<string, number>[];
  readonly subcooled: readonly Record<string, number>[];
}

interface Sheet {
  columns: string[];
  rows: (number | null)[][];
}

/** The reference figures of a fluid, each row as an object by column name. See `source` in the files. */
export function reference(id: RefrigerantId): Reference {
  const url = new URL(`../../reference/fluids/${id}.json`, import.meta.url);
  const file = JSON.parse(readFileSync(url, 'utf8')) as Record<string, Sheet>;
  const named = ({ columns, rows }: Sheet) => rows.map((row) => Object.fromEntries(row.map((v, i) => [columns[i], v])));
  return {
    checkStates: named(file.checkStates) as Record<string, number>[],
    saturation: named(file.saturation),
    superheated: named(file.superheated) as Record<string, number>[],
    subcooled: named(file.subcooled) as Record<string, number>[],
  };
}

export const FLUIDS: readonly RefrigerantId[] = REFRIGERANTS;
/** Blends by their components: the reference has no check states and no transport for them. */
export const BLENDS = FLUIDS.filter((id) => refrigerantData(id).blend !== undefined);
export const SINGLE = FLUIDS.filter((id) => !BLENDS.includes(id));

type Figures = Record<string, number>;

/** Rows of the saturation table that have a bubble point, and those that have a dew point. */
export function saturated(id: RefrigerantId): { bubble: Figures[]; dew: Figures[] } {
  const rows = reference(id).saturation;
  return {
    bubble: rows.filter((row) => row.p_bubble !== null) as Figures[],
    dew: rows.filter((row) => row.p_dew !== null) as Figures[],
  };
}

/** Largest value seen under each name, so that a test states its bounds in one place and shows what it found. */
export class Worst {
  readonly seen: Record<string, number> = {};

  note(name: string, deviation: number): void {
    const size = Math.abs(deviation);
    // A NaN must not slip through a comparison.
    if (!(size <= (this.seen[name] ?? -1))) this.seen[name] = Number.isNaN(size) ? Infinity : size;
  }

  /** Names whose worst value is over its bound, or that were never noted. */
  over(bounds: Record<string, number>): string[] {
    return Object.entries(bounds)
      .filter(([name, bound]) => !(this.seen[name] <= bound))
      .map(([name, bound]) => `${name}: ${this.seen[name]} > ${bound}`);
  }
}

/** A repeatable stream of numbers in [0, 1). */
export function stream(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}
