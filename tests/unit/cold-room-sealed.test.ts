import { describe, expect, test } from 'vitest';
import { createMachine, type Faults } from '../../physics';
import { FAULTS, familiesOf } from '../../physics/faults';
import { plantDescription } from '../../physics/plants';
import { REAL_WORLD } from '../../src/attempt/world';
import { cellsOf } from '../../src/examiner/nodes';

const { designConditions: conditions } = plantDescription('cold-room');
const sealed = (faults: Faults = {}) => createMachine({ plant: 'cold-room', refrigerant: 'R-290', conditions, faults });

describe('the sealed cold room unit for propane', () => {
  test('has neither a receiver nor service valves to look at, and the others have both', () => {
    const looks = (refrigerant: 'R-134a' | 'R-290') =>
      plantDescription('cold-room', 'cooling', refrigerant).places.flatMap(({ reads }) => reads.look ?? []);
    expect(looks('R-134a')).toEqual(expect.arrayContaining(['receiverLevel', 'suctionValveOpen']));
    expect(looks('R-290')).not.toContain('receiverLevel');
    expect(looks('R-290')).not.toContain('suctionValveOpen');
    expect(sealed().plant.drawing.parts.map(({ kind }) => kind)).not.toContain('receiver');
  });

  test('refuses a fault of a part that it lacks, and the examiner holds none against it', () => {
    expect(() => sealed({ 'service-valve-throttled': 0.3 })).toThrow('cannot occur on cold-room for R-290');
    expect(familiesOf('cold-room', 'cooling', 'R-290').length).toBe(familiesOf('cold-room', 'cooling').length - 2);
    const causes = cellsOf('cold-room', 'cooling', FAULTS, 'R-290').map(({ cause }) => cause);
    expect(causes).not.toContain('service-valve-throttled');
    expect(causes).toContain('undercharge');
  });

  test('is flammable, and holds less than half a kilogram', () => {
    expect(REAL_WORLD.flammable('R-290')).toBe(true);
    const { charge } = plantDescription('cold-room').nameplate('R-290');
    expect(charge).toBeLessThan(0.5);
    expect(sealed().steady().probes.refrigerantCharge.value).toBeCloseTo(charge, 6);
  });

  test('shows every gram: a tenth less is seen in its subcooling, which a receiver would hide', () => {
    const fall = (refrigerant: 'R-134a' | 'R-290') => {
      const at = (undercharge: number) =>
        createMachine({ plant: 'cold-room', refrigerant, conditions, faults: { undercharge } }).steady().probes
          .subcooling.value;
      return at(0) - at(0.1);
    };
    expect(fall('R-290')).toBeGreaterThan(2.4);
    expect(fall('R-134a')).toBeLessThan(0.5);
  });
});
