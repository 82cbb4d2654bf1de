/** Two faults at once: every pair solves or is refused for a named reason, in either order alike, with its balances closed. */
import { createMachine, type FamilyId, familiesOf, PhysicsError } from '../index';
import { type Finding, finding, statement } from './finding';
import { INVERTER_FREE, ORIFICE_R410A, setupOf, steadyReadings, type Variant } from './machines';
import { SOURCES } from './sources';

function keysOf(variant: Variant): { key: string; id: FamilyId; slight: number }[] {
  return familiesOf(variant.plant).map(({ id, slight, targets }) => ({
    key: targets ? `${id}:${targets[0]}` : id,
    id,
    slight,
  }));
}

/** Pairs that cannot be: more and less of one thing. */
const OPPOSITE: readonly (readonly [FamilyId, FamilyId])[] = [
  ['undercharge', 'overcharge'],
  ['orifice-oversize', 'orifice-undersize'],
  ['metering-valve-stuck-closing', 'metering-valve-stuck-opening'],
  ['metering-valve-stuck-closing', 'metering-valve-coil-unplugged'],
  ['metering-valve-stuck-opening', 'metering-valve-coil-unplugged'],
];

export function faultPairs(): Finding[] {
  return [ORIFICE_R410A, INVERTER_FREE].flatMap((variant) => {
    const keys = keysOf(variant);
    return keys.flatMap((a, i) =>
      keys.slice(i + 1).flatMap((b) => {
        if (OPPOSITE.some(([x, y]) => (x === a.id && y === b.id) || (x === b.id && y === a.id))) return [];
        const id = `pairs/${variant.id}/${a.key} + ${b.key}`;
        try {
          const one = createMachine(setupOf(variant, { faults: { [a.key]: a.slight, [b.key]: b.slight } }));
          const other = createMachine(setupOf(variant, { faults: { [b.key]: b.slight, [a.key]: a.slight } }));
          const snapshot = one.steady(variant.controls);
          const same = JSON.stringify(snapshot.probes) === JSON.stringify(other.steady(variant.controls).probes);
          return [
            finding(`${id}/energy`, SOURCES.own, 'first law', '-', snapshot.balance.energy, 0, 1e-3),
            finding(`${id}/charge`, SOURCES.own, 'charge', 'kg', snapshot.balance.mass, 0, 1e-9),
            statement(`${id}/order`, SOURCES.model, 'the order of the faults does not matter', same),
          ];
        } catch (error) {
          if (!(error instanceof PhysicsError)) throw error;
          return [statement(`${id}/solves`, SOURCES.model, `${error.code}: ${error.message}`, false)];
        }
      }),
    );
  });
}

/** What two faults do together, as a technician knows it. */
export function knownPairs(): Finding[] {
  const at = (faults: Record<string, number>) => steadyReadings(ORIFICE_R410A, { faults });
  const low = at({ undercharge: 0.15 });
  const masked = at({ undercharge: 0.15, 'condenser-dirty': 0.5 });
  const filter = at({ 'filter-dirty': 0.35 });
  const hidden = at({ undercharge: 0.12, 'filter-dirty': 0.35 });
  const alone = at({ undercharge: 0.12 });
  return [
    finding(
      'pairs/known/dirty condenser masks low charge: head',
      SOURCES.field,
      'head is higher by',
      'kPa',
      masked.pd - low.pd,
      55,
      2000,
    ),
    finding(
      'pairs/known/dirty condenser masks low charge: superheat',
      SOURCES.field,
      'superheat is lower by',
      'K',
      low.SH - masked.SH,
      1.2,
      30,
    ),
    finding(
      'pairs/known/dirty filter hides low charge: superheat',
      SOURCES.field,
      'superheat is lower by',
      'K',
      alone.SH - hidden.SH,
      2.4,
      30,
    ),
    finding(
      'pairs/known/dirty filter hides low charge: subcooling still tells',
      SOURCES.field,
      'subcooling is lower than with the filter alone by',
      'K',
      filter.SC - hidden.SC,
      2.4,
      30,
    ),
  ];
}
