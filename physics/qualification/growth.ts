/**
 * What happens to a machine as a fault grows: nothing at severity zero, the telling reading goes one way throughout, no
 * reading jumps, and the corners that a technician knows (superheat gone, gas in the glass, valve at its stop, ice) are there.
 */
import { createMachine, type FamilyId, type Faults, familiesOf, faultFamily } from '../index';
import { uncertainty } from './directions';
import { type Finding, finding, statement } from './finding';
import {
  INVERTER_FIXED,
  INVERTER_FREE,
  ORIFICES,
  type Reading,
  type Readings,
  setupOf,
  steadyReadings,
  VARIANTS,
  type Variant,
} from './machines';
import { SOURCES } from './sources';

interface Corner {
  readonly name: string;
  readonly there: (readings: Readings) => boolean;
  /** severities between which it must appear */
  readonly from: number;
  readonly to: number;
}

interface Growth {
  /** the fault's key, a target after a colon where it needs one */
  readonly key: string;
  readonly machines: readonly Variant[];
  readonly telling: Reading;
  readonly sign: 1 | -1;
  readonly corners: readonly Corner[];
  /** first and last severity, where they are not zero and the family's own */
  readonly from?: number;
  readonly to?: number;
  /** why this fault may jump: it makes the machine's controller lose its signal */
  readonly jumps?: string;
}

const superheatGone = (from: number, to: number): Corner => ({
  name: 'superheat gone',
  there: (r) => r.SHout < 0.05,
  from,
  to,
});
const subcoolingGone = (from: number, to: number): Corner => ({
  name: 'subcooling gone',
  there: (r) => r.SC < 0.05,
  from,
  to,
});
const gasInGlass = (from: number, to: number): Corner => ({
  name: 'gas in the sight glass',
  there: (r) => r.glass > 0.02,
  from,
  to,
});
const valveOpen = (from: number, to: number): Corner => ({
  name: 'valve at its stop',
  there: (r) => r.opening > 0.999,
  from,
  to,
});
const ice = (from: number, to: number): Corner => ({ name: 'ice', there: (r) => r.frost > 0, from, to });

const cold = (reading: Reading, from: number, to: number): Corner => ({
  name: 'cold behind it',
  there: (r) => r[reading] > 1,
  from,
  to,
});

const INVERTERS = [INVERTER_FREE, INVERTER_FIXED];
const FIXED = [INVERTER_FIXED];
const FREE = [INVERTER_FREE];

/** Where the corners lie: judged (common practice, no source), wide on purpose; that they exist is the point. */
const GROWTHS: readonly Growth[] = [
  {
    key: 'undercharge',
    machines: ORIFICES,
    telling: 'SH',
    sign: 1,
    corners: [subcoolingGone(0.1, 0.25), gasInGlass(0.1, 0.3)],
  },
  {
    key: 'undercharge',
    machines: INVERTERS,
    telling: 'opening',
    sign: 1,
    corners: [subcoolingGone(0.05, 0.2), gasInGlass(0.05, 0.25), valveOpen(0.25, 0.56)],
    to: 0.56,
  },
  {
    key: 'line-charge-not-added',
    machines: ORIFICES,
    telling: 'SH',
    sign: 1,
    corners: [subcoolingGone(6, 11.9)],
  },
  { key: 'thermostat-misplaced', machines: ORIFICES, telling: 'thermostatOver', sign: 1, corners: [] },
  { key: 'overcharge', machines: VARIANTS, telling: 'SC', sign: 1, corners: [] },
  { key: 'overcharge', machines: ORIFICES, telling: 'pd', sign: 1, corners: [superheatGone(0.03, 0.2)] },
  { key: 'non-condensable', machines: VARIANTS, telling: 'standing', sign: 1, corners: [] },
  { key: 'non-condensable', machines: FIXED, telling: 'SC', sign: 1, corners: [] },
  {
    key: 'drier-restriction',
    machines: VARIANTS,
    telling: 'drierDrop',
    sign: 1,
    corners: [gasInGlass(0.1, 0.8)],
    to: 0.95,
  },
  {
    key: 'drier-restriction',
    machines: INVERTERS,
    telling: 'opening',
    sign: 1,
    corners: [valveOpen(0.3, 0.9)],
    to: 0.95,
  },
  {
    key: 'liquid-line-kink',
    machines: ORIFICES,
    telling: 'kinkFall',
    sign: 1,
    corners: [cold('kinkFall', 0.2, 0.9)],
    to: 0.95,
  },
  { key: 'liquid-line-kink', machines: ORIFICES, telling: 'SH', sign: 1, corners: [], to: 0.95 },
  {
    key: 'liquid-line-heated',
    machines: ORIFICES,
    telling: 'kinkFall',
    sign: -1,
    corners: [],
    // beyond it the liquid flashes and its temperature is that of its bubbles
    to: 6,
  },
  { key: 'liquid-line-heated', machines: ORIFICES, telling: 'SH', sign: 1, corners: [] },
  { key: 'suction-line-uninsulated', machines: ORIFICES, telling: 'suctionWarming', sign: 1, corners: [] },
  { key: 'suction-line-uninsulated', machines: ORIFICES, telling: 'Td', sign: 1, corners: [] },
  { key: 'service-valve-throttled', machines: [...ORIFICES, INVERTER_FIXED], telling: 'ps', sign: 1, corners: [] },
  { key: 'service-valve-throttled', machines: VARIANTS, telling: 'stem', sign: -1, corners: [] },
  {
    key: 'service-valve-throttled',
    machines: ORIFICES,
    telling: 'capacity',
    sign: -1,
    corners: [superheatGone(0.05, 0.35)],
  },
  { key: 'condenser-dirty', machines: [...ORIFICES, INVERTER_FIXED], telling: 'Tc', sign: 1, corners: [] },
  { key: 'condenser-dirty', machines: ORIFICES, telling: 'rise', sign: 1, corners: [superheatGone(0.2, 0.6)] },
  { key: 'condenser-fan-slow', machines: [...ORIFICES, INVERTER_FIXED], telling: 'Tc', sign: 1, corners: [] },
  { key: 'condenser-fan-slow', machines: FREE, telling: 'rise', sign: 1, corners: [] },
  { key: 'air-recirculation', machines: VARIANTS, telling: 'face', sign: 1, corners: [] },
  { key: 'air-recirculation', machines: VARIANTS, telling: 'Tc', sign: 1, corners: [] },
  { key: 'filter-dirty', machines: VARIANTS, telling: 'drop', sign: 1, corners: [] },
  { key: 'filter-dirty', machines: ORIFICES, telling: 'filterDrop', sign: 1, corners: [superheatGone(0.15, 0.45)] },
  {
    key: 'filter-dirty',
    machines: [...ORIFICES, INVERTER_FIXED],
    telling: 'Te',
    sign: -1,
    corners: [ice(0.4, 0.85)],
    to: 0.85,
  },
  { key: 'evaporator-dirty', machines: VARIANTS, telling: 'coilDrop', sign: 1, corners: [] },
  {
    key: 'evaporator-dirty',
    machines: [...ORIFICES, INVERTER_FIXED],
    telling: 'Te',
    sign: -1,
    corners: [ice(0.35, 0.85)],
    to: 0.85,
  },
  { key: 'evaporator-fan-slow', machines: VARIANTS, telling: 'filterDrop', sign: -1, corners: [] },
  { key: 'evaporator-fan-slow', machines: ORIFICES, telling: 'drop', sign: 1, corners: [superheatGone(0.15, 0.45)] },
  { key: 'compressor-worn', machines: VARIANTS, telling: 'effort', sign: 1, corners: [] },
  { key: 'compressor-worn', machines: [...ORIFICES, INVERTER_FIXED], telling: 'Td', sign: 1, corners: [] },
  { key: 'duct-leak', machines: ORIFICES, telling: 'ductPressure', sign: -1, corners: [] },
  { key: 'return-duct-leak', machines: ORIFICES, telling: 'intakeOver', sign: 1, corners: [] },
  { key: 'return-duct-leak', machines: ORIFICES, telling: 'ps', sign: 1, corners: [] },
  { key: 'fan-capacitor-weak', machines: ORIFICES, telling: 'fanCapacitance', sign: -1, corners: [] },
  { key: 'fan-capacitor-weak', machines: ORIFICES, telling: 'Tc', sign: 1, corners: [superheatGone(0.4, 0.72)] },
  { key: 'supply-voltage-low', machines: VARIANTS, telling: 'voltage', sign: -1, corners: [] },
  { key: 'supply-voltage-low', machines: VARIANTS, telling: 'current', sign: 1, corners: [] },
  { key: 'contactor-burnt', machines: ORIFICES, telling: 'poleDrop', sign: 1, corners: [] },
  { key: 'contactor-burnt', machines: ORIFICES, telling: 'current', sign: 1, corners: [] },
  { key: 'compressor-leak-by', machines: [...ORIFICES, INVERTER_FIXED], telling: 'capacity', sign: -1, corners: [] },
  { key: 'compressor-leak-by', machines: VARIANTS, telling: 'effort', sign: 1, corners: [] },
  { key: 'compressor-leak-by', machines: ORIFICES, telling: 'ps', sign: 1, corners: [superheatGone(0.05, 0.2)] },
  { key: 'orifice-undersize', machines: ORIFICES, telling: 'SH', sign: 1, corners: [] },
  { key: 'orifice-oversize', machines: ORIFICES, telling: 'SC', sign: -1, corners: [superheatGone(0.03, 0.2)] },
  { key: 'metering-valve-stuck-closing', machines: FREE, telling: 'opening', sign: -1, corners: [] },
  {
    // Measured from where the healthy valve stands at free speed: at rated speed that is a little wide, so it starts later.
    key: 'metering-valve-stuck-closing',
    machines: FIXED,
    telling: 'SH',
    sign: 1,
    corners: [ice(0.2, 0.5)],
    from: 0.04,
    to: 0.5,
  },
  {
    key: 'metering-valve-stuck-opening',
    machines: INVERTERS,
    telling: 'SC',
    sign: -1,
    corners: [superheatGone(0.01, 0.2), subcoolingGone(0.2, 0.7)],
    to: 0.6,
  },
  { key: 'capacitor-weak', machines: ORIFICES, telling: 'current', sign: 1, corners: [] },
  {
    key: 'thermistor-out-of-its-pocket:suctionLine',
    machines: INVERTERS,
    telling: 'SH',
    sign: -1,
    corners: [superheatGone(0.12, 0.35), valveOpen(0.15, 0.45)],
    jumps: 'once the coil floods its superheat is zero whatever the valve does: the controller opens it to the stop',
  },
  {
    key: 'thermistor-drift:suctionLine',
    machines: INVERTERS,
    telling: 'SH',
    sign: -1,
    corners: [superheatGone(2.5, 5.5), valveOpen(3, 8)],
    jumps: 'once the coil floods its superheat is zero whatever the valve does: the controller opens it to the stop',
  },
];

const STEPS = 28;
/** Readings that must not jump. */
const SMOOTH: readonly Reading[] = ['ps', 'pd', 'SH', 'SC', 'Td', 'capacity'];
/** Largest share of a reading's whole travel in one of the steps (or what two readings tell apart by little). */
const LARGEST_STEP = 0.3;

function visible(reading: Reading, healthy: Readings, variant: Variant): number {
  if (reading === 'ps') return 4 * 17.5;
  if (reading === 'pd') return 4 * 27.5;
  const share = reading === 'capacity' ? healthy.capacity : 1;
  return 4 * uncertainty(reading, variant) * share;
}

function sweep(growth: Growth, variant: Variant): { severity: number; readings: Readings }[] {
  const last = growth.to ?? faultFamily(growth.key.split(':')[0] as FamilyId).max;
  const first = growth.from ?? 0;
  return Array.from({ length: STEPS + 1 }, (_, i) => {
    const severity = first + ((last - first) * i) / STEPS;
    return { severity, readings: steadyReadings(variant, { faults: { [growth.key]: severity } }) };
  });
}

function oneGrowth(growth: Growth, variant: Variant): Finding[] {
  const points = sweep(growth, variant);
  const healthy = points[0].readings;
  const { telling, sign } = growth;
  const id = `growth/${variant.id}/${growth.key}/${telling}`;
  const travel = sign * (points[STEPS].readings[telling] - healthy[telling]);
  let back = 0;
  for (let i = 0; i < STEPS; i++) {
    const step = sign * (points[i + 1].readings[telling] - points[i].readings[telling]);
    back = Math.max(back, -step / travel);
  }
  const findings = [
    finding(`${id} one way`, SOURCES.own, 'largest step back over the whole travel', '-', back, 0, 2e-3),
    statement(`${id} travels`, SOURCES.own, 'the telling reading travels', travel > 0),
  ];
  for (const corner of growth.corners) {
    const first = points.find(({ readings }) => corner.there(readings));
    findings.push(
      finding(
        `${id} ${corner.name}`,
        SOURCES.field,
        'severity at which it comes',
        '-',
        first ? first.severity : Number.NaN,
        corner.from,
        corner.to,
      ),
    );
  }
  for (const reading of growth.jumps ? [] : SMOOTH) {
    const values = points.map(({ readings }) => readings[reading]);
    const range = Math.max(...values) - Math.min(...values);
    let most = 0;
    for (let i = 0; i < STEPS; i++) most = Math.max(most, Math.abs(values[i + 1] - values[i]));
    const bound = Math.max(LARGEST_STEP * range, visible(reading, healthy, variant));
    findings.push(finding(`${id} no jump of ${reading}`, SOURCES.own, 'largest of the steps', '', most, 0, bound));
  }
  return findings;
}

export function growth(): Finding[] {
  return GROWTHS.flatMap((one) => one.machines.flatMap((variant) => oneGrowth(one, variant)));
}

/** Every family at severity zero is the healthy machine to the last bit, steady and in time. */
export function zeroSeverity(): Finding[] {
  return VARIANTS.flatMap((variant) => {
    const sound = createMachine(setupOf(variant));
    const steady = JSON.stringify(sound.steady(variant.controls));
    const controls = { ...sound.defaultControls, ...variant.controls };
    const later = JSON.stringify(sound.step(sound.start('standing'), controls, 30));
    return familiesOf(variant.plant).map((family) => {
      const key = family.targets ? `${family.id}:${family.targets[0]}` : family.id;
      const faults: Faults = { [key]: 0 };
      const machine = createMachine(setupOf(variant, { faults }));
      const same =
        JSON.stringify(machine.steady(variant.controls)) === steady &&
        JSON.stringify(machine.step(machine.start('standing'), controls, 30)) === later;
      return statement(`zero/${variant.id}/${family.id}`, SOURCES.own, 'severity 0 is the healthy machine', same);
    });
  });
}
