/** `differential`: what every rival cause would show on a callout's machine, with its spread. */
import type { Command } from 'commander';
import { PROBES, type ProbeKey, probeName } from '../../physics/types';
import type { Channel, Component, Differential, JudgedState } from '../examiner/types';
import { isTransducer } from '../instruments';
import { csvLine } from './csv';
import { differentialOf } from './differentials';
import { type Io, write, writeJsonLine } from './io';
import { loadCallout } from './packs';
import { textTable } from './table';

export function registerDifferential(program: Command, io: Io): void {
  program
    .command('differential')
    .argument('<callout>', 'id of a callout in a shipped pack, or FILE#id')
    .description('expected reading of every probe under every rival cause, with its spread (SI)')
    .option('--json', 'everything, as one JSON object')
    .option('--csv', 'one row a cause, severity, state and channel')
    .action((reference: string, options: { json?: boolean; csv?: boolean }) => differential(reference, options, io));
}

async function differential(reference: string, options: { json?: boolean; csv?: boolean }, io: Io): Promise<void> {
  const { pack, callout } = await loadCallout(reference, io);
  const computed = differentialOf(pack, callout, io);
  if (options.json) return writeJsonLine(io, { pack: pack.id, callout: callout.id, ...computed });
  const rows = rowsOf(computed);
  if (!options.csv)
    return write(
      io.stdout,
      textTable(
        HEADER,
        rows.map((row) => row.map(shown)),
      ),
    );
  await write(io.stdout, csvLine(HEADER));
  for (const row of rows) await write(io.stdout, csvLine(row));
}

const HEADER = ['fault', 'severity', 'state', 'channel', 'unit', 'mean', 'spread'];
type Row = readonly (string | number)[];

function rowsOf({ channels, factors, nodes, states }: Differential): Row[] {
  const rows: Row[] = [];
  for (const node of nodes) {
    for (const state of states) {
      const components = node.states[state as JudgedState];
      if (!components) continue;
      channels.forEach((channel, index) => {
        const { mean, spread } = momentsOf(components, index, factors.length);
        rows.push([node.key || node.cause, node.severity, state, channel, unitOf(channel), mean, spread]);
      });
    }
  }
  return rows;
}

/** Mean and standard deviation of one channel over the components of a node. */
function momentsOf(components: readonly Component[], channel: number, factors: number) {
  let weight = 0;
  let mean = 0;
  let square = 0;
  for (const component of components) {
    const middle = component.mean[channel];
    const loadings = component.loadings.slice(channel * factors, (channel + 1) * factors);
    const variance = loadings.reduce((sum, each) => sum + each * each, component.unique[channel] ** 2);
    weight += component.weight;
    mean += component.weight * middle;
    square += component.weight * (middle * middle + variance);
  }
  mean /= weight;
  return { mean, spread: Math.sqrt(Math.max(0, square / weight - mean * mean)) };
}

function unitOf(channel: Channel): string {
  if (channel.startsWith('sensor:')) return isTransducer(channel) ? 'Pa' : 'K';
  return channel.startsWith('look:') ? '-' : PROBES[probeName(channel as ProbeKey)];
}

function shown(cell: string | number): string {
  return typeof cell === 'number' ? String(Number(cell.toPrecision(5))) : cell;
}
