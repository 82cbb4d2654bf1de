/** Which way readings go under each fault on machines with many units: free and fixed speed, cooling and heating. */
import { type FamilyId, faultFamily, PhysicsError } from '../index';
import { interval } from './directions';
import type { Sign } from './directionTables';
import { type Finding, finding } from './finding';
import { INVERTER_FREE } from './machines';
import { NETWORK_ROWS, type NetworkRow } from './networkDirectionTables';
import { type NetworkCase, type NetworkReadings, type NetworkVariant, networkRead } from './networkMachines';
import { SOURCES } from './sources';

/** Change is a share of the healthy value instead of a difference. */
const RELATIVE = ['capacity', 'power', 'effort', 'speed', 'opening'];

function caseOf(row: NetworkRow, severity: number): NetworkCase {
  const key = row.sensor ? `${row.fault}:${row.sensor}` : row.fault;
  return { mode: row.mode, fixed: row.speed === 'fixed', faults: { [key]: severity } };
}

/** What the machine asks of its valves: units in cooling, modules in heating. */
const openings = (readings: NetworkReadings): number => readings.opening;

/** Severity at which all valves are open; the family's last where they never are. */
function stopOf(row: NetworkRow, variant: NetworkVariant): number {
  const { max } = faultFamily(row.fault as FamilyId);
  for (let k = 5; k < 48; k++) {
    const severity = k / 50;
    if (severity > max) return max;
    if (openings(networkRead(variant, caseOf(row, severity))) > 0.995) return severity;
  }
  return max;
}

function severitiesOf(row: NetworkRow, variant: NetworkVariant): number[] {
  const { slight, clear, severe, max } = faultFamily(row.fault as FamilyId);
  switch (row.level) {
    case 'slight':
      return [slight];
    case 'regulating':
      return [0.8 * stopOf(row, variant)];
    case 'open': {
      const stop = stopOf(row, variant) + 0.1;
      return stop < max ? [stop, max] : [max];
    }
    case 'severe':
      return [severe, max];
    default:
      return [clear, severe, max];
  }
}

/** As for the other machines: an entry too small to read yet not contrary is read again where the fault is stronger. */
function entry(
  section: string,
  variant: NetworkVariant,
  row: NetworkRow,
  reading: string,
  sign: Sign,
  runs: readonly { readonly severity: number; readonly change: (reading: string) => number }[],
): Finding {
  const [low, high] = boundsOf(reading, sign);
  const at = ({ severity, change }: (typeof runs)[number]): Finding =>
    finding(
      `${section}/${variant.id}/${row.mode}, ${row.speed} speed: ${row.name}/${reading}`,
      SOURCES.review,
      `${reading} ${sign}, severity ${severity.toFixed(2)}`,
      RELATIVE.includes(reading) ? 'share' : 'K',
      change(reading),
      low,
      high,
    );
  const first = at(runs[0]);
  const contrary = sign === '+' ? first.ours < 0 : first.ours > 0;
  if (first.holds || (sign !== '+' && sign !== '-') || contrary) return first;
  return (
    runs
      .slice(1)
      .map(at)
      .find(({ holds }) => holds) ?? first
  );
}

function boundsOf(reading: string, sign: Sign): readonly [number, number] {
  const like = reading === 'SCunit' ? 'SC' : reading === 'SHout' ? 'SH' : reading;
  return interval(sign, like as Parameters<typeof interval>[1], INVERTER_FREE);
}

export function networkDirections(section: string, variant: NetworkVariant, rows: readonly NetworkRow[]): Finding[] {
  return rows.flatMap((row) => {
    const healthy = networkRead(variant, { mode: row.mode, fixed: row.speed === 'fixed' });
    const runs = severitiesOf(row, variant).flatMap((severity) => {
      try {
        const ill = networkRead(variant, caseOf(row, severity));
        const change = (reading: string): number => {
          const key = reading as keyof NetworkReadings;
          const difference = (ill[key] as number) - (healthy[key] as number);
          return RELATIVE.includes(reading) ? difference / (healthy[key] as number) : difference;
        };
        return [{ severity, change }];
      } catch (error) {
        if (error instanceof PhysicsError && error.code === 'protection') return [];
        throw error;
      }
    });
    return Object.entries(row.signs).map(([reading, sign]) => entry(section, variant, row, reading, sign, runs));
  });
}

/** Rows for a machine: all, or those of cooling. */
export const rowsOf = (mode: NetworkRow['mode'] | 'both'): readonly NetworkRow[] =>
  NETWORK_ROWS.filter((row) => mode === 'both' || row.mode === mode);
