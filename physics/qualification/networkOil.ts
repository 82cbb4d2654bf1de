/** Oil that is fetched after hours at low speed: when it begins, what it looks like, and that the machine comes back from it. */
import { type Controls, createMachine, plantDescription } from '../index';
import { type Finding, finding, statement } from './finding';
import { NetworkBooks } from './networkBooks';
import type { Mode } from './networkCourse';
import { SOURCES } from './sources';

/** s: of slow running that are shortened by long steps, of the course that is followed closely, and its step */
const QUIET = 14_340;
const WATCHED = 3600;
const STEP = 1;

/** The first rooms alone, for hours, on a multi-split. */
function oilFetched(mode: Mode, rooms: number, outdoor: number): Finding[] {
  const plant = plantDescription('multi-split');
  const conditions = { ...(plant.modes[mode] ?? plant.designConditions), outdoor };
  const machine = createMachine({ plant: 'multi-split', refrigerant: 'R-410A', conditions, faults: {} });
  const units = Object.fromEntries((plant.units ?? []).slice(rooms).map((id) => [id, 'off' as const]));
  const controls: Controls = { ...machine.defaultControls, units, ...(mode === 'heating' && { setPoint: 297.15 }) };
  let state = machine.start('settled', controls);
  for (let time = 0; time < QUIET; time += 30) state = machine.step(state, controls, 30);
  const before = machine.snapshot(state);
  const books = new NetworkBooks(machine, state);
  let begins = Number.NaN;
  let ends = Number.NaN;
  let stopped = false;
  let lowest = Number.POSITIVE_INFINITY;
  let driest = Number.NEGATIVE_INFINITY;
  let after = before;
  for (let time = STEP; time <= WATCHED; time += STEP) {
    state = machine.step(state, controls, STEP);
    after = books.step(state, STEP);
    const sweeps = after.controller === 'bringing-oil-back';
    if (sweeps && Number.isNaN(begins)) begins = time;
    if (!sweeps && !Number.isNaN(begins) && Number.isNaN(ends)) ends = time;
    stopped ||= after.controller.startsWith('stopped-on-');
    // the first minutes are valves and coils on their way
    if (!sweeps || time < begins + 120) continue;
    lowest = Math.min(lowest, after.probes.suctionPressure.value);
    driest = Math.max(driest, after.probes.superheat.value);
  }
  const { defect, moved, mass } = books.ledger;
  const id = `networkTime/multi-split/${mode}/oil`;
  const again = after.probes.suctionPressure.value / before.probes.suctionPressure.value;
  const fallen = lowest / before.probes.suctionPressure.value;
  return [
    finding(`${id}/begins`, SOURCES.field, 'slow running before it', 'h', (QUIET + begins) / 3600, 2, 8),
    finding(`${id}/lasts`, SOURCES.field, 'it lasts', 'min', (ends - begins) / 60, 2, 8),
    finding(`${id}/suction`, SOURCES.field, 'lowest suction pressure over that before', '-', fallen, 0.4, 0.95),
    finding(`${id}/superheat`, SOURCES.field, 'largest superheat from its second minute on', 'K', driest, -1, 1),
    finding(`${id}/comes back`, SOURCES.model, 'suction pressure long after over that before', '-', again, 0.97, 1.03),
    statement(`${id}/runs on`, SOURCES.field, 'no safety switch opens', !stopped),
    finding(
      `${id}/energy`,
      SOURCES.own,
      'first law over the run, share of the heat moved',
      '-',
      Math.abs(defect) / moved,
      0,
      1e-3,
    ),
    finding(`${id}/charge`, SOURCES.own, 'worst departure from the charge', 'kg', mass, 0, 1e-6),
  ];
}

export function networkOil(): Finding[] {
  return [...oilFetched('cooling', 2, 308.15), ...oilFetched('heating', 1, 280.15)];
}
