/**
 * The differential: what every channel would read under every rival, with its spread, for one machine in one weather.
 * The same machine is run with every fault in cells of severity, in every judged state, with its own differences drawn
 * from stated ranges. About 100 cells × 24 draws × 2–3 states; done in steps, so that a worker can report and be ended.
 */

import type { MachineSetup, Snapshot } from '../../physics/types';
import { channelValue } from '../instruments/places';
import { channelsOf, regimeOf } from './channels';
import { decodeDifferential, encodeDifferential } from './compact';
import { type Draw, fitComponents } from './fit';
import { type DifferentialOptions, DRAWS, differentialKey } from './key';
import { type Cell, cellsOf } from './nodes';
import { EVEN, latinScores, NUISANCE_NAMES, nuisanceAt } from './nuisance';
import { type MachineSource, statesOf } from './source';
import type {
  Channel,
  Component,
  Differential,
  DifferentialInput,
  DifferentialProgress,
  JudgedState,
  Node,
} from './types';

/** Runs a node a step; the last value is the differential, rounded exactly as it is shipped. */
export function* differentialSteps(
  input: DifferentialInput,
  source: MachineSource,
  options: DifferentialOptions = {},
): Generator<DifferentialProgress, Differential> {
  const { draws = DRAWS, seed = 'differential' } = options;
  const plant = source.plant(input);
  const channels = channelsOf(plant);
  const states = statesOf(plant);
  const cells = cellsOf(input.plant, input.conditions.mode, source.families, input.refrigerant);
  const scores = latinScores(seed, draws, NUISANCE_NAMES.length + 1);
  const nodes: Node[] = [];
  let failed = 0;
  for (const cell of cells) {
    yield { done: nodes.length, total: cells.length };
    const byState: Partial<Record<JudgedState, readonly Component[]>> = {};
    const found = new Map<JudgedState, Draw[]>(states.map((state) => [state, []]));
    for (const each of scores) {
      const snapshots = source.snapshots(setupOf(input, cell, each), states);
      for (const state of states) {
        const snapshot = snapshots[state];
        if (snapshot) found.get(state)!.push(drawOf(snapshot, each, channels));
        else failed += 1;
      }
    }
    for (const [state, list] of found) if (list.length > 0) byState[state] = fitComponents(list, draws);
    nodes.push({ ...cell, states: byState });
  }
  yield { done: cells.length, total: cells.length };
  const { refrigerant, conditions } = input;
  const key = differentialKey(input, source, options);
  const factors = [...NUISANCE_NAMES, 'severity'];
  const head = { format: 1 as const, physics: source.version, key, plant: input.plant, refrigerant, conditions };
  return decodeDifferential(encodeDifferential({ ...head, channels, factors, states, nodes, draws, failed }));
}

function setupOf(input: DifferentialInput, cell: Cell, scores: readonly number[]): MachineSetup {
  const half = (cell.to - cell.from) / 2;
  const severity = cell.severity + (half * scores[NUISANCE_NAMES.length]) / EVEN;
  const { plant, refrigerant, conditions } = input;
  const faults = cell.key === '' ? {} : { [cell.key]: severity };
  return { plant, refrigerant, conditions, faults, nuisance: nuisanceAt(scores) };
}

function drawOf(snapshot: Snapshot, scores: readonly number[], channels: readonly Channel[]): Draw {
  const values = channels.map((channel) => channelValue(snapshot, channel));
  return { scores, regime: regimeOf(snapshot), values };
}

export function computeDifferentialFrom(
  input: DifferentialInput,
  source: MachineSource,
  onProgress?: (progress: DifferentialProgress) => void,
  options?: DifferentialOptions,
): Differential {
  const steps = differentialSteps(input, source, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    onProgress?.(step.value);
  }
}
