import { describe, expect, it } from 'vitest';
import { createMachine, type MachineSetup, PhysicsError } from '../../physics';

// Machines that npm run endurance drew and that the search once gave up on; each is solved, or its end has a name.

const at = (outdoor: number, indoor: number, wetBulb: number, altitude: number, mode: 'cooling' | 'heating') => ({
  outdoor: 273.15 + outdoor,
  indoor: 273.15 + indoor,
  wetBulb: 273.15 + wetBulb,
  altitude,
  mode,
});

describe('a compressor that leaks gets hotter the slower it runs', () => {
  const leaky = (outdoor: number, severity: number): MachineSetup => ({
    plant: 'inverter-split',
    refrigerant: 'R-32',
    conditions: at(outdoor, 25.06, 18.5, 1242, 'cooling'),
    faults: { 'compressor-leak-by': severity },
  });

  it('slows down to its least speed and is found there, hot', () => {
    const { probes, controller, balance } = createMachine(leaky(43.53, 0.21)).steady();
    expect(controller).toBe('slowed-by-discharge-heat');
    expect(probes.dischargeLineTemp.value).toBeGreaterThan(273.15 + 100);
    expect(balance.energy).toBeLessThan(1e-9);
  });

  it('stops on its discharge switch where it has no state on the way down', () => {
    try {
      createMachine(leaky(43.53, 0.27)).steady();
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(PhysicsError);
      expect(error).toMatchObject({ code: 'protection', details: { limit: 'discharge-heat' } });
    }
  });

  it('with several units too', () => {
    const { controller, balance } = createMachine({
      plant: 'heat-recovery',
      refrigerant: 'R-410A',
      conditions: at(43.66, 24.88, 18.23, 1335.7, 'cooling'),
      faults: { 'compressor-leak-by': 0.2864 },
    }).steady();
    expect(controller).toBe('slowed-by-discharge-heat');
    expect(balance.energy).toBeLessThan(1e-9);
  });
});

it('a heat pump in hard frost with a slow fan indoors runs hot, but runs', () => {
  const { probes, controller } = createMachine({
    plant: 'thermostatic-heat-pump',
    refrigerant: 'R-454B',
    conditions: at(-18.9, 23, 16, 0, 'heating'),
    faults: { 'condenser-fan-slow': 0.644 },
  }).steady();
  expect(controller).toBe('heating');
  expect(probes.dischargeLineTemp.value).toBeGreaterThan(273.15 + 110);
});
