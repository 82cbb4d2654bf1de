/** Cells of severity: for every fault that can occur on a plant, and for none, how large it may be. */
import { canOccur, isFelt } from '../../physics/faults';
import type { RefrigerantId } from '../../physics/fluids/fluid';
import { plantDescription } from '../../physics/plants';
import type { FaultFamily, OperatingMode, PlantId, SensorName, TransducerName } from '../../physics/types';
import type { Node } from './types';

export type Cell = Omit<Node, 'states'>;

/**
 * A fault that brings a call is seldom barely visible and seldom extreme; shares of the cells between
 * slight – clear – severe – max, each span halved. Common practice, no source.
 */
const SHARES = [0.18, 0.22, 0.22, 0.18, 0.12, 0.08];
/** The same for faults with several targets or signs, spans not halved, to keep the number of cells in bounds. */
const COARSE_SHARES = [0.4, 0.4, 0.2];

/** What cannot be felt in the mode that the machine is called to is no cause of its call. */
export function cellsOf(
  plant: PlantId,
  mode: OperatingMode,
  families: readonly FaultFamily[],
  refrigerant?: RefrigerantId,
): Cell[] {
  const healthy: Cell = { cause: 'no-fault', key: '', from: 0, severity: 0, to: 0, weight: 1 };
  const possible = families.filter((family) => canOccur(family, plant, refrigerant) && isFelt(family, plant, mode));
  const { units = [] } = plantDescription(plant);
  return [healthy, ...possible.flatMap((family) => familyCells(family, faultKeys(family, units)))];
}

/** Sensors that every indoor unit has of its own. */
const OF_UNITS: readonly (SensorName | TransducerName)[] = ['suctionLine', 'evaporatorCoil', 'returnAir'];

/** The keys under which a family can occur: one a sensor that may drift, one a unit that it may sit in. */
export function faultKeys({ id, targets, perUnit }: FaultFamily, units: readonly string[]): string[] {
  if (!perUnit || units.length === 0) return targets ? targets.map((target) => `${id}:${target}`) : [id];
  if (!targets) return units.map((unit) => `${id}@${unit}`);
  return targets.flatMap((target) =>
    OF_UNITS.includes(target) ? units.map((unit) => `${id}:${target}@${unit}`) : [`${id}:${target}`],
  );
}

function familyCells(family: FaultFamily, keys: readonly string[]): Cell[] {
  const { slight, clear, severe, max } = family;
  const signs = family.signed ? [1, -1] : [1];
  const coarse = keys.length * signs.length > 1;
  const marks = [slight, clear, severe, max];
  const bounds = coarse ? marks : marks.flatMap((mark, i) => (i === 0 ? [mark] : [(marks[i - 1] + mark) / 2, mark]));
  const shares = coarse ? COARSE_SHARES : SHARES;
  return keys.flatMap((key) =>
    signs.flatMap((sign) =>
      shares.map((share, i) => ({
        cause: family.id,
        key,
        from: sign * bounds[i],
        severity: (sign * (bounds[i] + bounds[i + 1])) / 2,
        to: sign * bounds[i + 1],
        weight: share / (keys.length * signs.length),
      })),
    ),
  );
}
