import { describe, expect, it } from 'vitest';
import { createMachine, type MachineSetup } from '../../physics';
import { fluidTable } from '../../physics/fluids/fluid';
import { Vessel } from '../../physics/solve/vessels';

describe('a vessel that holds more than the tables reach', () => {
  const fluid = fluidTable('R-410A');

  it('says so instead of showing a pressure that its mass does not fit', () => {
    // 1.5 kg of hot gas in a litre and a half
    expect(() => new Vessel().settle(fluid, 1.5, 1.5 * 4.5e5, 1.5e-3, 3e6)).toThrow(
      expect.objectContaining({ code: 'table-end' }),
    );
  });
});

const STARTS: [string, MachineSetup, { outdoorFanRunning?: boolean; units?: Record<string, 'heating' | 'cooling'> }][] =
  [
    [
      'one unit, no outdoor air',
      {
        plant: 'orifice-split',
        refrigerant: 'R-410A',
        conditions: { outdoor: 318, indoor: 303.41, wetBulb: 298.09, mode: 'cooling', altitude: 1139 },
        faults: {},
      },
      { outdoorFanRunning: false },
    ],
    [
      'several units in great heat',
      {
        plant: 'heat-recovery',
        refrigerant: 'R-410A',
        conditions: { outdoor: 317.4, indoor: 297.95, wetBulb: 293.77, mode: 'cooling', altitude: 550 },
        faults: { 'metering-valve-not-closing': 0.17, undercharge: 0.19 },
      },
      { units: { unit1: 'cooling', unit4: 'cooling', unit5: 'heating', unit6: 'heating', unit7: 'cooling' } },
    ],
  ];

it.each(STARTS)(
  'a start that ends on its high-pressure switch keeps its charge, however long the steps: %s',
  (_, setup, asked) => {
    const machine = createMachine(setup);
    const controls = {
      ...machine.defaultControls,
      ...asked,
      indoorFan: 'low' as const,
      setPoint: 302,
      fixedSpeed: true,
    };
    for (const short of [0, 15, 22, 240]) {
      let state = machine.start('standing', controls);
      let seen = '';
      let missed = 0;
      for (let time = 0; time < 240 && !seen.startsWith('stopped-on-'); ) {
        const dt = time < short ? 1 : 30;
        state = machine.step(state, controls, dt);
        time += dt;
        const { controller, balance } = machine.snapshot(state);
        seen = controller;
        missed = Math.max(missed, balance.mass);
      }
      expect(seen).toBe('stopped-on-high-pressure');
      expect(missed).toBeLessThan(1e-6);
    }
  },
);
