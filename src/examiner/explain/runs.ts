/** Runs of the model behind the numbers of a debrief, each with an id; a reader can open any of them on the bench. */
import type { MachineSetup, Snapshot } from '../../../physics/types';
import { machineNuisance } from '../../attempt/seeds';
import type { Case } from '../case';
import { sourceOf } from '../source';
import type { JudgedState, Node, PressureEnthalpy, Run } from '../types';

type Cycle = PressureEnthalpy['cycles'][number];

export class RunBook {
  private readonly runs = new Map<string, Run>();

  constructor(private readonly one: Case) {}

  /** A middle machine with the node's fault. */
  ofNode(node: Node, state: JudgedState): string {
    const faults = node.key === '' ? {} : { [node.key]: node.severity };
    const id = `${node.key || 'no-fault'}@${Number(node.severity.toFixed(3))}/${state}`;
    return this.add({ id, faults, nuisance: {} }, state);
  }

  /** The machine of the callout itself, as found or without its faults. */
  ofMachine(what: 'as-found' | 'healthy', state: JudgedState = 'running'): string {
    const { faults, machineSeed } = this.one.state.site.callout;
    return this.add(
      { id: `${what}/${state}`, faults: what === 'healthy' ? {} : faults, nuisance: machineNuisance(machineSeed) },
      state,
    );
  }

  all(): Run[] {
    return [...this.runs.values()];
  }

  /** Stations of the run's circuit in steady state; null where it has none, or stands: nothing goes round then. */
  stations(id: string): Cycle['stations'] | null {
    const snapshot = this.snapshot(id);
    if (snapshot?.regime !== 'flow') return null;
    const entries = Object.entries(snapshot.stations).map(([name, { pressure, enthalpy, temperature }]) => [
      name,
      { pressure, enthalpy, temperature },
    ]);
    return Object.fromEntries(entries) as Cycle['stations'];
  }

  private snapshot(id: string): Snapshot | null {
    const run = this.runs.get(id);
    if (!run) return null;
    const { plant, refrigerant, conditions, faults, nuisance } = run;
    const setup: MachineSetup = { plant, refrigerant, conditions, faults, nuisance };
    return sourceOf(this.one.state.site.world).snapshots(setup, ['running']).running ?? null;
  }

  private add(run: Pick<Run, 'id' | 'faults' | 'nuisance'>, state: JudgedState): string {
    const { plant, refrigerant, conditions } = this.one.state.site.callout;
    const controls = state === 'full-speed' ? { fixedSpeed: true } : state === 'standing' ? { running: false } : {};
    this.runs.set(run.id, { ...run, plant, refrigerant, conditions, controls });
    return run.id;
  }
}
