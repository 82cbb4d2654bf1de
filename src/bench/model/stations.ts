/** What runs at the named ends of pipes, for machines with one indoor unit and with many. */
import type { BranchSnapshot, Duty, LookName, ProbeName, Snapshot, Station, StationKey } from '../../../physics/types';

/** An indoor unit or outdoor module; null where the machine has none of that name. */
export function branchOf(snapshot: Snapshot, id: string): BranchSnapshot | null {
  return find(snapshot.units, id) ?? find(snapshot.modules, id);
}

function find(branches: readonly BranchSnapshot[] | undefined, id: string): BranchSnapshot | null {
  return branches?.find((branch) => branch.id === id) ?? null;
}

/** A machine that runs the other way than it is drawn: its coils have changed roles, and the liquid runs back. */
const TURNED: Readonly<Partial<Record<StationKey, StationKey>>> = {
  'condenser-in': 'evaporator-out',
  'condenser-out': 'evaporator-in',
  'evaporator-in': 'condenser-out',
  'evaporator-out': 'condenser-in',
  'liquid-port': 'drier-out',
  'drier-out': 'liquid-port',
};

/** Throws RangeError for a unit that the machine does not have: a mistake in its drawing. */
export function stationAt(snapshot: Snapshot, key: StationKey): Station {
  const { stations } = snapshot;
  switch (key) {
    // Two pipes: the same one carries what comes back from the rooms and, when they are heated, hot gas to them.
    case 'gas-header':
      return stations[heatsRooms(snapshot) ? 'compressor-out' : 'evaporator-out'];
    case 'suction-header':
      return stations['evaporator-out'];
    case 'hot-header':
      return stations['compressor-out'];
  }
  const [side, id] = key.split('@') as ['gas' | 'liquid', string | undefined];
  if (id === undefined) {
    const shown = (snapshot.turnedOver ? TURNED[key] : undefined) ?? key;
    return stations[shown as keyof Snapshot['stations']];
  }
  const branch = branchOf(snapshot, id);
  if (!branch) throw new RangeError(`no unit or module "${id}" on this machine`);
  return branch[side];
}

function heatsRooms({ units }: Snapshot): boolean {
  return units?.some(({ role }) => role === 'condenser') ?? false;
}

/** What a branch does now: a unit boils to cool its room, a module condenses for it. Null while it rests. */
export function dutyOf(snapshot: Snapshot, id: string): Duty | null {
  const branch = branchOf(snapshot, id);
  if (!branch || branch.role === 'idle') return null;
  const isUnit = find(snapshot.units, id) !== null;
  return (branch.role === 'evaporator') === isUnit ? 'cooling' : 'heating';
}

/** kg/s of these branches: along the pipe as it is drawn, negative against it. */
export function flowOf(snapshot: Snapshot, of: readonly string[], only?: Duty): number {
  let sum = 0;
  for (const id of of) {
    const duty = dutyOf(snapshot, id);
    const flow = branchOf(snapshot, id)?.gas.massFlow ?? 0;
    if (only) sum += duty === only ? flow : 0;
    else sum += duty === 'cooling' ? flow : duty === 'heating' ? -flow : 0;
  }
  return sum;
}

/** A look at one unit or module, or at the machine as a whole. */
export function lookAt({ looks }: Snapshot, name: LookName, of?: string): number {
  return looks[`${name}@${of}`] ?? looks[name];
}

/** Value of a probe of one unit or module, or of the machine as a whole, SI. */
export function probeAt({ probes }: Snapshot, name: ProbeName, of?: string): number {
  const own: { readonly value: number } | undefined = probes[`${name}@${of}`];
  return (own ?? probes[name]).value;
}
