import { expect, test } from 'vitest';
import { type Finding, listedMisses, reasonFor, reportTable, SECTIONS } from '../../physics/qualification';

/** One test a section: nothing out of tolerance but the reasoned misses, and none of those that holds again. */
export function qualify(section: keyof typeof SECTIONS): { readonly findings: () => readonly Finding[] } {
  let findings: readonly Finding[] | null = null;
  const all = (): readonly Finding[] => {
    findings ??= SECTIONS[section]();
    return findings;
  };
  test(`${section}: all that its sources ask for holds, or is a miss with a reason`, { timeout: 120_000 }, () => {
    const bad = all().filter(({ id, holds }) => !holds && reasonFor(id) === null);
    expect(bad, reportTable(bad)).toEqual([]);
  });
  test(`${section}: ids are unique and every figure is a number or "never"`, () => {
    const ids = all().map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(all().filter(({ low, high }) => Number.isNaN(low) || Number.isNaN(high))).toEqual([]);
  });
  test(`${section}: no miss is listed that holds again`, () => {
    const held = new Set(all().flatMap(({ id, holds }) => (holds ? [id] : [])));
    expect(listedMisses().filter((id) => held.has(id))).toEqual([]);
  });
  return { findings: all };
}
