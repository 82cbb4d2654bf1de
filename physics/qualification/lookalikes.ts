/**
 * Machines that look alike and the readings that part them. "Alike": both depart the same way from the healthy machine by
 * twice the uncertainty. "Parted": the named reading of the two differs by more than twice its uncertainty; where the review
 * gives bands for either machine, each lies in its band. Every pair at 35 °C and at 22 °C with 10 % less indoor air.
 */
import { changeOf, interval, uncertainty } from './directions';
import { type Finding, finding } from './finding';
import {
  type Case,
  INVERTER_FREE,
  ORIFICE_R22,
  ORIFICE_R410A,
  type Reading,
  type Readings,
  steadyReadings,
  type Variant,
} from './machines';
import { SOURCES } from './sources';

interface Separator {
  readonly reading: Reading;
  /** which of the two reads more */
  readonly more: 'A' | 'B';
  /** by at least this; left out = twice the uncertainty */
  readonly by?: number;
  /** bands at the design point, where the review gives them */
  readonly A?: readonly [number, number];
  readonly B?: readonly [number, number];
}

interface Pair {
  readonly name: string;
  readonly machines: readonly Variant[];
  readonly A: Case;
  readonly B: Case;
  readonly alike: Readonly<Partial<Record<Reading, '+' | '-'>>>;
  readonly parts: readonly Separator[];
  readonly source: string;
  /** the bands hold for this variant only */
  readonly banded?: Variant;
}

const ORIFICES = [ORIFICE_R410A, ORIFICE_R22];

const PAIRS: readonly Pair[] = [
  {
    // The review's restriction costs about 900 kPa at the flow that is left.
    name: 'undercharge | restricted drier',
    machines: ORIFICES,
    A: { faults: { undercharge: 0.2 } },
    B: { faults: { 'drier-restriction': 0.95 } },
    alike: { Te: '-', SH: '+', Td: '+', drop: '-' },
    parts: [
      { reading: 'SC', more: 'B', A: [-0.5, 2], B: [9, 14] },
      { reading: 'drierFall', more: 'B', by: 1, A: [-0.1, 0.3], B: [2, 8] },
      { reading: 'drierDrop', more: 'B', by: 112, A: [0, 40], B: [700, 1000] },
    ],
    banded: ORIFICE_R410A,
    source: SOURCES.review,
  },
  {
    name: 'undercharge | clogged filter',
    machines: ORIFICES,
    A: { faults: { undercharge: 0.2 } },
    B: { faults: { 'filter-dirty': 0.45 } },
    alike: { Te: '-', capacity: '-' },
    parts: [
      { reading: 'SH', more: 'A', A: [15, 22], B: [-0.1, 2] },
      { reading: 'drop', more: 'B', A: [6, 9], B: [14, 17] },
      { reading: 'SC', more: 'B', A: [-0.5, 2], B: [4, 6] },
      { reading: 'filterDrop', more: 'B', by: 20, A: [30, 60], B: [120, 200] },
    ],
    banded: ORIFICE_R410A,
    source: SOURCES.review,
  },
  {
    name: 'undercharge | charge for the line never added',
    machines: ORIFICES,
    A: { faults: { undercharge: 0.18 } },
    B: { faults: { 'line-charge-not-added': 10.5 } },
    alike: { SH: '+', SC: '-' },
    parts: [{ reading: 'label', more: 'A', by: 0.5 }],
    source: SOURCES.memory,
  },
  {
    name: 'undercharge | orifice too small',
    machines: ORIFICES,
    A: { faults: { undercharge: 0.2 } },
    B: { faults: { 'orifice-undersize': 0.2 } },
    alike: { Te: '-', SH: '+', Td: '+' },
    parts: [{ reading: 'SC', more: 'B' }],
    source: SOURCES.field,
  },
  {
    name: 'dirty condenser | overcharge',
    machines: ORIFICES,
    A: { faults: { 'condenser-dirty': 0.5 } },
    B: { faults: { overcharge: 0.25 } },
    alike: { Tc: '+', current: '+' },
    parts: [
      { reading: 'rise', more: 'A', A: [19, 23], B: [9, 13] },
      { reading: 'SC', more: 'B', A: [4, 9], B: [11, 16] },
      { reading: 'liquidOverAir', more: 'A', by: 1.7, A: [11, 16], B: [2, 4] },
    ],
    banded: ORIFICE_R410A,
    source: SOURCES.review,
  },
  {
    name: 'dirty condenser | non-condensable gas',
    machines: ORIFICES,
    A: { faults: { 'condenser-dirty': 0.35 } },
    B: { faults: { 'non-condensable': 0.05 } },
    alike: { Tc: '+', current: '+' },
    parts: [
      { reading: 'rise', more: 'A' },
      { reading: 'standing', more: 'B', by: 35 },
    ],
    source: SOURCES.field,
  },
  {
    name: 'overcharge | non-condensable gas',
    machines: ORIFICES,
    A: { faults: { overcharge: 0.25 } },
    B: { faults: { 'non-condensable': 0.05 } },
    alike: { Tc: '+', current: '+' },
    parts: [
      { reading: 'standing', more: 'B', by: 35 },
      { reading: 'SC', more: 'A' },
    ],
    source: SOURCES.field,
  },
  {
    // Half of the air lost (what drifts through makes it 0.51) without dirt on the fins. The review's rise of 10…12 K stands for a machine that rises 10.5 K when sound; ours rises 9.9.
    name: 'condenser air loss | air recirculating',
    machines: ORIFICES,
    A: { faults: { 'condenser-fan-slow': 0.51 } },
    B: { faults: { 'air-recirculation': 0.35 } },
    alike: { Tc: '+', current: '+' },
    parts: [
      { reading: 'face', more: 'B', A: [34.5, 36], B: [40, 42] },
      { reading: 'rise', more: 'A', A: [19, 23], B: [9, 12] },
      { reading: 'TcOverFace', more: 'A', A: [18, 21], B: [11, 13] },
    ],
    banded: ORIFICE_R410A,
    source: SOURCES.review,
  },
  {
    name: 'dirty indoor coil | clogged filter',
    machines: ORIFICES,
    A: { faults: { 'evaporator-dirty': 0.45 } },
    B: { faults: { 'filter-dirty': 0.45 } },
    alike: { Te: '-', capacity: '-', drop: '+' },
    parts: [
      { reading: 'coilDrop', more: 'A', by: 20 },
      { reading: 'filterDrop', more: 'B', by: 20 },
    ],
    source: SOURCES.review,
  },
  {
    // The port is on the line's side of the valve: both show suction up and little cooling.
    name: 'suction service valve throttled | internal leak',
    machines: ORIFICES,
    A: { faults: { 'service-valve-throttled': 0.3 } },
    B: { faults: { 'compressor-leak-by': 0.22 } },
    alike: { Te: '+', capacity: '-' },
    parts: [{ reading: 'stem', more: 'B', by: 0.3 }],
    source: SOURCES.memory,
  },
  {
    // The review: low volts on both sides of the contactor = supply, more than 2…3 V over its poles = contact.
    name: 'low supply voltage | burnt contactor',
    machines: ORIFICES,
    A: { faults: { 'supply-voltage-low': 0.11 } },
    B: { faults: { 'contactor-burnt': 20 } },
    alike: { current: '+' },
    parts: [
      { reading: 'voltage', more: 'B', by: 5.6 },
      { reading: 'poleDrop', more: 'B', by: 3 },
    ],
    source: SOURCES.review,
  },
  {
    name: 'slow outdoor fan | weak capacitor of the outdoor fan',
    machines: ORIFICES,
    A: { faults: { 'condenser-fan-slow': 0.45 } },
    B: { faults: { 'fan-capacitor-weak': 0.6 } },
    alike: { Tc: '+', rise: '+' },
    parts: [{ reading: 'fanCapacitance', more: 'A', by: 0.5 }],
    source: SOURCES.review,
  },
  {
    // Both leave the room warm; the machine with the open supply joint is sound.
    name: 'open supply duct | loft air in the return',
    machines: ORIFICES,
    A: { faults: { 'duct-leak': 0.4 } },
    B: { faults: { 'return-duct-leak': 0.35 } },
    alike: {},
    parts: [
      { reading: 'ductPressure', more: 'B', by: 10 },
      { reading: 'intakeOver', more: 'B', by: 1 },
    ],
    source: SOURCES.review,
  },
  {
    name: 'worn compressor | weak run capacitor',
    machines: ORIFICES,
    A: { faults: { 'compressor-worn': 0.25 } },
    B: { faults: { 'capacitor-weak': 0.5 } },
    alike: { current: '+' },
    parts: [
      { reading: 'capacitance', more: 'A', by: 2.7 },
      { reading: 'Td', more: 'A' },
    ],
    source: SOURCES.memory,
  },
  {
    name: 'weak run capacitor | low voltage',
    machines: ORIFICES,
    A: { faults: { 'capacitor-weak': 0.4 } },
    B: { nuisance: { voltage: 0.87 } },
    alike: { current: '+' },
    parts: [
      { reading: 'capacitance', more: 'B', by: 2.7 },
      { reading: 'voltage', more: 'A', by: 5.6 },
    ],
    source: SOURCES.field,
  },
  {
    name: 'undercharge | restricted drier (regulating valve)',
    machines: [INVERTER_FREE],
    A: { faults: { undercharge: 0.2 } },
    B: { faults: { 'drier-restriction': 0.5 } },
    alike: { opening: '+' },
    parts: [
      { reading: 'SC', more: 'B' },
      { reading: 'drierFall', more: 'B', by: 1.4 },
      { reading: 'drierDrop', more: 'B', by: 112 },
    ],
    source: SOURCES.field,
  },
  {
    name: 'undercharge | valve stuck towards shut',
    machines: [INVERTER_FREE],
    A: { faults: { undercharge: 0.5 } },
    B: { faults: { 'metering-valve-stuck-closing': 0.3 } },
    alike: { SH: '+' },
    parts: [
      { reading: 'SC', more: 'B' },
      { reading: 'opening', more: 'A', by: 0.1 },
    ],
    source: SOURCES.field,
  },
  {
    name: 'thermistor reads high | thermistor out of its pocket',
    machines: [INVERTER_FREE],
    A: { faults: { 'thermistor-drift:suctionLine': 3 } },
    B: { faults: { 'thermistor-out-of-its-pocket:suctionLine': 0.12 } },
    // alike only in hot weather: the loose one goes with the air
    alike: {},
    parts: [{ reading: 'sensorSeat', more: 'A', by: 0.1 }],
    source: SOURCES.memory,
  },
  {
    // Both starve the coil with liquid enough before the drier; behind it one cools on its way and the other warms.
    name: 'kinked liquid line | heated liquid line',
    machines: ORIFICES,
    A: { faults: { 'liquid-line-kink': 0.85 } },
    B: { faults: { 'liquid-line-heated': 7 } },
    alike: { SH: '+', Td: '+' },
    parts: [{ reading: 'kinkFall', more: 'A', by: 4 }],
    source: SOURCES.memory,
  },
  {
    name: 'thermistor reads high | valve stuck open',
    machines: [INVERTER_FREE],
    A: { faults: { 'thermistor-drift:suctionLine': 5 } },
    B: { faults: { 'metering-valve-stuck-opening': 0.4 } },
    alike: { SH: '-', Td: '-' },
    // sensor ±0.5 K against a clamp ±0.7 K
    parts: [{ reading: 'sensorError', more: 'A', by: 1.8 }],
    source: SOURCES.field,
  },
];

const WEATHERS: readonly { readonly name: string; readonly at: Case }[] = [
  { name: 'design', at: {} },
  { name: '22 °C, 10 % less air', at: { outdoor: 22, nuisance: { evaporatorAir: 0.9 } } },
];

/** Two cases at once: the pair's own nuisance is kept. */
function joined(one: Case, other: Case): Case {
  return { ...one, ...other, nuisance: { ...one.nuisance, ...other.nuisance } };
}

function partsOf(pair: Pair, variant: Variant, weather: string, a: Readings, b: Readings): Finding[] {
  return pair.parts.flatMap((part) => {
    const id = `lookalikes/${variant.id}/${pair.name}/${weather}/${part.reading}`;
    const more = part.more === 'A' ? a[part.reading] - b[part.reading] : b[part.reading] - a[part.reading];
    const by = part.by ?? 2 * uncertainty(part.reading, variant);
    const findings = [
      finding(`${id} parts`, pair.source, `${part.reading} of ${part.more} is more`, '', more, by, Infinity),
    ];
    if (weather === 'design' && pair.banded === variant) {
      for (const side of ['A', 'B'] as const) {
        const band = part[side];
        if (band === undefined) continue;
        const ours = (side === 'A' ? a : b)[part.reading];
        findings.push(finding(`${id} of ${side}`, pair.source, `${part.reading} of ${side}`, '', ours, ...band));
      }
    }
    return findings;
  });
}

export function lookalikes(): Finding[] {
  return PAIRS.flatMap((pair) =>
    pair.machines.flatMap((variant) =>
      WEATHERS.flatMap(({ name, at }) => {
        const healthy = steadyReadings(variant, at);
        const a = steadyReadings(variant, joined(at, pair.A));
        const b = steadyReadings(variant, joined(at, pair.B));
        const alike = Object.entries(pair.alike).flatMap(([key, sign]) => {
          const reading = key as Reading;
          const [low, high] = interval(sign, reading, variant);
          return (['A', 'B'] as const).map((side) =>
            finding(
              `lookalikes/${variant.id}/${pair.name}/${name}/${reading} of ${side} alike`,
              pair.source,
              `${reading} ${sign} against the healthy machine`,
              '',
              changeOf(reading, healthy, side === 'A' ? a : b),
              low,
              high,
            ),
          );
        });
        return [...alike, ...partsOf(pair, variant, name, a, b)];
      }),
    ),
  );
}

/** A machine with an internal leak against a sound one that merely has other weather: same pressures, other capacity. */
export function leakOrLightLoad(): Finding[] {
  return ORIFICES.flatMap((variant) => {
    const leak = steadyReadings(variant, { faults: { 'compressor-leak-by': 0.15 } });
    const healthy = steadyReadings(variant);
    const innocent = steadyReadings(variant, { outdoor: 33.5, wetBulb: 22 });
    const id = `lookalikes/${variant.id}/internal leak | other weather`;
    return [
      finding(`${id}/head`, SOURCES.field, 'head below the design point: leak', 'kPa', leak.pd - healthy.pd, -500, -28),
      finding(`${id}/head too`, SOURCES.field, 'and weather', 'kPa', innocent.pd - healthy.pd, -500, -28),
      finding(`${id}/suction`, SOURCES.field, 'suction above it: leak', 'kPa', leak.ps - healthy.ps, 17.5, 200),
      finding(`${id}/suction too`, SOURCES.field, 'and weather', 'kPa', innocent.ps - healthy.ps, 17.5, 200),
      finding(
        `${id}/capacity`,
        SOURCES.field,
        'leak: capacity over that of a sound machine in this weather',
        '-',
        leak.capacity / healthy.capacity,
        0.6,
        0.94,
      ),
      finding(
        `${id}/superheat`,
        SOURCES.field,
        'superheat of the sound machine is more',
        'K',
        innocent.SH - leak.SH,
        2.4,
        Number.POSITIVE_INFINITY,
      ),
    ];
  });
}

/** A mild restriction must stay hidden: 300 kPa across the drier and no cold pipe behind it. */
export function mildRestriction(): Finding[] {
  return [
    finding(
      'lookalikes/orifice-r410a/mild restriction/drierFall',
      SOURCES.review,
      'temperature fall over a drier that costs about 300 kPa',
      'K',
      steadyReadings(ORIFICE_R410A, { faults: { 'drier-restriction': 0.2 } }).drierFall,
      0,
      0.3,
    ),
  ];
}
