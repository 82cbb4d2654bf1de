/** Half-made choices survive a killed tab like the attempt itself; they are no part of its record. */
import type { Drafts } from '../../panels/session';

export const NO_DRAFTS: Drafts = {
  chips: null,
  sum: null,
  verdict: {},
  repair: { steps: [] },
  proof: [],
  guide: { twinSeen: false, prediction: null },
};

const key = (attempt: string) => `coldbench.drafts.${attempt}`;

export function loadDrafts(attempt: string): Drafts {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(key(attempt)) ?? 'null');
    return typeof stored === 'object' && stored !== null ? { ...NO_DRAFTS, ...stored } : NO_DRAFTS;
  } catch {
    return NO_DRAFTS;
  }
}

export function storeDrafts(attempt: string, drafts: Drafts): void {
  try {
    if (drafts === NO_DRAFTS) return;
    localStorage.setItem(key(attempt), JSON.stringify(drafts));
  } catch {
    // Only half-made choices are lost.
  }
}
