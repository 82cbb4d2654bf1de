/** Sizes of fault effects against published envelopes, at 35 °C outdoors, 26.7/19.4 °C indoors. */
import { type Finding, finding } from './finding';
import {
  type Case,
  INVERTER_FIXED,
  ORIFICE_R22,
  ORIFICE_R410A,
  type Readings,
  steadyReadings,
  type Variant,
} from './machines';
import { SOURCES } from './sources';

const ROOM = { outdoor: 35, indoor: 26.7, wetBulb: 19.4 };

type Show = (healthy: Readings, ill: Readings) => number;
type Expectation = readonly [name: string, unit: string, show: Show, low: number, high: number];

interface Envelope {
  readonly name: string;
  readonly machines: readonly Variant[];
  readonly case: Case;
  readonly expects: readonly Expectation[];
}

const INFINITE = Number.POSITIVE_INFINITY;
const ORIFICES = [ORIFICE_R410A, ORIFICE_R22];
const ALL = [...ORIFICES, INVERTER_FIXED];

const capacity = (low: number, high: number): Expectation => [
  'capacity ratio',
  '-',
  (a, b) => b.capacity / a.capacity,
  low,
  high,
];
const cop = (low: number, high: number): Expectation => ['COP ratio', '-', (a, b) => b.cop / a.cop, low, high];

const ENVELOPES: readonly Envelope[] = [
  {
    name: 'undercharge 10 %, regulating valve',
    machines: [INVERTER_FIXED],
    case: { faults: { undercharge: 0.1 } },
    expects: [
      capacity(0.94, 1),
      cop(0.95, 1.02),
      ['subcooling falls', 'K', (a, b) => a.SC - b.SC, 2, 5],
      ['superheat stays', 'K', (a, b) => b.SH - a.SH, -1.5, 1.5],
    ],
  },
  {
    // "Superheat up" is only for a valve at full stroke (review): a wide electronic valve holds it and opens.
    name: 'undercharge 30 %, regulating valve',
    machines: [INVERTER_FIXED],
    case: { faults: { undercharge: 0.3 } },
    expects: [
      capacity(0.75, 0.92),
      cop(0.8, 0.93),
      ['subcooling', 'K', (_, b) => b.SC, -0.5, 2],
      ['valve opens', '-', (a, b) => b.opening / a.opening, 1.1, INFINITE],
    ],
  },
  {
    name: 'undercharge 15 %, orifice',
    machines: ORIFICES,
    case: { faults: { undercharge: 0.15 } },
    expects: [capacity(0.78, 0.95), cop(0.85, 0.97), ['superheat rises', 'K', (a, b) => b.SH - a.SH, 4, INFINITE]],
  },
  {
    name: 'overcharge 20 %',
    machines: ALL,
    case: { faults: { overcharge: 0.2 } },
    expects: [
      capacity(0.91, 1.03),
      cop(0.92, 0.99),
      ['subcooling rises', 'K', (a, b) => b.SC - a.SC, 3, INFINITE],
      ['condensing temperature rises', 'K', (a, b) => b.Tc - a.Tc, 1, 4],
    ],
  },
  {
    name: 'condenser air −50 %',
    machines: ALL,
    case: { nuisance: { condenserAir: 0.5 } },
    expects: [
      capacity(0.92, 0.98),
      cop(0.75, 0.85),
      ['compressor power ratio', '-', (a, b) => b.power / a.power, 1.15, 1.25],
      ['condensing temperature rises', 'K', (a, b) => b.Tc - a.Tc, 6, 12],
    ],
  },
  {
    name: 'evaporator air −25 %',
    machines: ALL,
    case: { nuisance: { evaporatorAir: 0.75 } },
    expects: [
      capacity(0.87, 0.96),
      cop(0.88, 0.97),
      ['air drop rises', 'K', (a, b) => b.drop - a.drop, 1, INFINITE],
      ['evaporating temperature falls', 'K', (a, b) => a.Te - b.Te, 1, 4],
    ],
  },
  {
    name: 'liquid-line pressure difference +20 %, orifice',
    machines: ORIFICES,
    case: { faults: { 'drier-restriction': 0.2 } },
    expects: [
      capacity(0.87, 0.97),
      cop(0.87, 0.99),
      ['subcooling not lower', 'K', (a, b) => b.SC - a.SC, 0, INFINITE],
      ['superheat rises', 'K', (a, b) => b.SH - a.SH, 2.4, INFINITE],
    ],
  },
  {
    // The valve opens and takes it up: the size comes from units whose valve could not. Only what must not fall is asked.
    name: 'liquid-line pressure difference +20 %, regulating valve',
    machines: [INVERTER_FIXED],
    case: { faults: { 'drier-restriction': 0.2 } },
    expects: [
      ['subcooling not lower', 'K', (a, b) => b.SC - a.SC, -0.1, INFINITE],
      ['valve opens', '-', (a, b) => b.opening / a.opening, 1.1, INFINITE],
    ],
  },
  {
    // 60 % of the gas that the empty machine holds at 1 atm, pressed into the volume that liquid leaves: 0.05 of standing
    // pressure (review).
    name: 'non-condensable gas, 60 % of a fill at 1 atm',
    machines: ALL,
    case: { faults: { 'non-condensable': 0.05 } },
    expects: [
      capacity(0.98, 1.02),
      cop(0.92, 0.97),
      ['apparent subcooling rises', 'K', (a, b) => b.SC - a.SC, 2, 6],
      ['head rises', 'kPa', (a, b) => b.pd - a.pd, 56, INFINITE],
    ],
  },
];

export function envelopes(): Finding[] {
  return ENVELOPES.flatMap((envelope) =>
    envelope.machines.flatMap((variant) => {
      const healthy = steadyReadings(variant, ROOM);
      const ill = steadyReadings(variant, { ...ROOM, ...envelope.case });
      return envelope.expects.map(([name, unit, show, low, high]) =>
        finding(
          `envelopes/${variant.id}/${envelope.name}/${name}`,
          SOURCES.envelope,
          name,
          unit,
          show(healthy, ill),
          low,
          high,
        ),
      );
    }),
  );
}
