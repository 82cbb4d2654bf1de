/**
 * Machines that look alike and the readings that part them. "Alike": both depart the same way from the healthy machine by
 * twice the uncertainty. "Parted": the named reading of the two differs by more than twice its uncertainty; where the review
 * gives bands for either machine, each lies in its band. Every pair at 35 °C and at 22 °C with 10 % less indoor air.
 */
import { changeOf, interval, uncertainty } from './directions';
import { type Finding, finding } from './finding';
import { PAIRS, type Pair } from './lookalikePairs';
import {
  type Case,
  ORIFICE_R22,
  ORIFICE_R410A,
  type Reading,
  type Readings,
  steadyReadings,
  type Variant,
} from './machines';
import { SOURCES } from './sources';

const ORIFICES = [ORIFICE_R410A, ORIFICE_R22];

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
