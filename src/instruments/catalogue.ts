/**
 * The bag. Accuracies are half-widths taken as 2 standard deviations; sources stand beside the figures
 * ("field kit" = requirements for field instruments in a state energy code's verification protocol: thermometer
 * ±1.3 °F (0.72 K), digital pressure ±3.5 psi suction (24 kPa) and ±7.0 psi liquid (48 kPa), air sensor within
 * accuracy after 15 s and pipe clamp after 90 s from 22 K away). With them superheat and subcooling of R-410A come out
 * at about ±1.2 K. "Memory" = common practice, from memory.
 */
import type { Instrument, InstrumentId } from './types';

const NOTHING_LEAVES = { invasive: false, spill: 0, hose: 0 } as const;

/** 1.5 m of hose of 5 mm bore, m3 (memory). */
const HOSE = 2.9e-5;

export const CATALOGUE: Readonly<Record<InstrumentId, Instrument>> = {
  eyes: {
    id: 'eyes',
    fits: ['look'],
    measures: ['look'],
    accuracy: {},
    resolution: {},
    lag: 0,
    dwell: 0,
    cost: { connect: 0, read: 15 },
    ...NOTHING_LEAVES,
  },
  hand: {
    id: 'hand',
    fits: ['pipe'],
    measures: ['touch'],
    accuracy: {},
    resolution: {},
    lag: 0,
    dwell: 0,
    cost: { connect: 0, read: 10 },
    ...NOTHING_LEAVES,
  },
  // Spans: what an R-410A or R-32 kit carries (low side standing at 50 °C is 3.1 MPa; high side trips near 4.4 MPa).
  'low-gauge': {
    id: 'low-gauge',
    fits: ['port'],
    measures: ['pressure'],
    accuracy: { pressure: { absolute: 24e3, ofReading: 0 } },
    span: 3.5e6,
    resolution: { pressure: 1e3 },
    lag: 2,
    dwell: 15,
    cost: { connect: 90, read: 10 },
    invasive: true,
    spill: 0.001,
    hose: HOSE,
  },
  // The liquid that fills its hose moves the machine: a careful person waits until that has passed.
  'high-gauge': {
    id: 'high-gauge',
    fits: ['port'],
    measures: ['pressure'],
    accuracy: { pressure: { absolute: 48e3, ofReading: 0 } },
    span: 5.5e6,
    resolution: { pressure: 1e3 },
    lag: 2,
    dwell: 90,
    cost: { connect: 90, read: 10 },
    invasive: true,
    spill: 0.028,
    hose: HOSE,
  },
  'pipe-clamp': {
    id: 'pipe-clamp',
    fits: ['pipe', 'air'],
    measures: ['temperature'],
    accuracy: { temperature: { absolute: 0.7, ofReading: 0 } },
    resolution: { temperature: 0.1 },
    lag: 15,
    dwell: 90,
    cost: { connect: 30, read: 5 },
    ...NOTHING_LEAVES,
  },
  // Wet bulb from its humidity sensor: ±0.5 K (memory: ±0.3…0.5 K for a wetted wick, ±2…3 % relative humidity).
  'air-probe': {
    id: 'air-probe',
    fits: ['air', 'pipe'],
    measures: ['temperature', 'wetBulb'],
    accuracy: { temperature: { absolute: 0.5, ofReading: 0 }, wetBulb: { absolute: 0.5, ofReading: 0 } },
    resolution: { temperature: 0.1, wetBulb: 0.1 },
    lag: 4,
    dwell: 20,
    cost: { connect: 15, read: 5 },
    ...NOTHING_LEAVES,
  },
  // ±2 % and 5 digits (memory).
  'clamp-ammeter': {
    id: 'clamp-ammeter',
    fits: ['wire'],
    measures: ['current'],
    accuracy: { current: { absolute: 0.05, ofReading: 0.02 } },
    span: 100,
    resolution: { current: 0.01 },
    lag: 0.5,
    dwell: 5,
    cost: { connect: 20, read: 5 },
    ...NOTHING_LEAVES,
  },
  // ±1 % volts, ±3 % capacitance, ±1 % ohms (memory).
  multimeter: {
    id: 'multimeter',
    fits: ['terminals'],
    measures: ['voltage', 'capacitance', 'resistance'],
    accuracy: {
      voltage: { absolute: 0.5, ofReading: 0.01 },
      capacitance: { absolute: 1e-7, ofReading: 0.03 },
      resistance: { absolute: 0.2, ofReading: 0.01 },
    },
    span: 600,
    resolution: { voltage: 0.1, capacitance: 1e-7, resistance: 0.1 },
    lag: 0.5,
    dwell: 5,
    cost: { connect: 30, read: 5 },
    ...NOTHING_LEAVES,
  },
  // ±5 Pa (memory).
  manometer: {
    id: 'manometer',
    fits: ['duct'],
    measures: ['differentialPressure'],
    accuracy: { differentialPressure: { absolute: 5, ofReading: 0 } },
    span: 2500,
    resolution: { differentialPressure: 1 },
    lag: 2,
    dwell: 10,
    cost: { connect: 60, read: 5 },
    ...NOTHING_LEAVES,
  },
  // The machine's own thermistors as made: ±0.5 K (memory); its current sensor ±5 % (memory). Each sensor is its own.
  'data-link': {
    id: 'data-link',
    fits: ['panel'],
    measures: ['temperature', 'pressure', 'current', 'speed', 'opening'],
    accuracy: {
      temperature: { absolute: 0.5, ofReading: 0 },
      pressure: { absolute: 30e3, ofReading: 0 },
      current: { absolute: 0.1, ofReading: 0.05 },
    },
    resolution: { temperature: 0.5, pressure: 10e3, current: 0.1, speed: 1, opening: 0.01 },
    lag: 0,
    dwell: 0,
    cost: { connect: 180, read: 10 },
    ...NOTHING_LEAVES,
  },
};

/** What a person always has along, whatever the bag holds. */
export const OWN_SENSES: readonly InstrumentId[] = ['eyes', 'hand'];

/** Simulated seconds to take a cap off (each time), to open a panel (once a unit) and to wrap a clamp (each time). */
export const PREPARING = { cap: 20, panel: 60, wrap: 15 } as const;
