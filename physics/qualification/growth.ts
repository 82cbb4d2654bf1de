/**
 * What happens to a machine as a fault grows: nothing at severity zero, the telling reading goes one way throughout, no
 * reading jumps, and the corners that a technician knows (superheat gone, gas in the glass, valve at its stop, ice) are there.
 */
import { createMachine, type FamilyId, type Faults, familiesOf, faultFamily } from '../index';
import { uncertainty } from './directions';
import { type Finding, finding, statement } from './finding';
import { GROWTHS, type Growth } from './growthTable';
import { type Reading, type Readings, setupOf, steadyReadings, VARIANTS, type Variant } from './machines';
import { SOURCES } from './sources';

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

export function oneGrowth(growth: Growth, variant: Variant): Finding[] {
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
    finding(`${id} one way`, SOURCES.model, 'largest step back over the whole travel', '-', back, 0, 2e-3),
    statement(`${id} travels`, SOURCES.model, 'the telling reading travels', travel > 0),
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
    findings.push(finding(`${id} no jump of ${reading}`, SOURCES.model, 'largest of the steps', '', most, 0, bound));
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
      return statement(`zero/${variant.id}/${family.id}`, SOURCES.model, 'severity 0 is the healthy machine', same);
    });
  });
}
