import { describe, expect, test } from 'vitest';
import { listedMisses, SECTIONS } from '../../physics/qualification';
import { CARDINAL, type DirectionFinding } from '../../physics/qualification/directions';
import { qualify } from './support';

describe('qualification', () => {
  const { findings } = qualify('directions');
  const entries = (): readonly DirectionFinding[] => findings() as readonly DirectionFinding[];

  test('directions: shares that hold', () => {
    const all = entries();
    const share = (which: (one: DirectionFinding) => boolean): number => all.filter(which).length / all.length;
    // at twice the instrument's uncertainty
    expect(share(({ holds }) => holds)).toBeGreaterThan(0.87);
    // not against the table: what misses by size alone has its sign right or stands still
    expect(share(({ holds, contrary }) => holds || !contrary)).toBeGreaterThan(0.965);
  });

  test('directions: none goes the wrong way among pressures, superheat and subcooling', () => {
    const cardinal = entries().filter(({ reading }) => CARDINAL.includes(reading));
    expect(cardinal.filter(({ holds, contrary }) => !holds && contrary)).toEqual([]);
    expect(cardinal.filter(({ holds }) => holds).length / cardinal.length).toBeGreaterThan(0.92);
  });
});

describe('the list of misses', () => {
  test('names no section that does not exist', () => {
    const known = new Set([...Object.keys(SECTIONS), 'nameplate', 'zero']);
    expect(listedMisses().filter((id) => !known.has(id.split('/')[0]))).toEqual([]);
  });
});
