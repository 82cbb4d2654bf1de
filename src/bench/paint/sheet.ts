/** The still layer of the picture: all that lies under what moves. */
import type { PlantDrawing, Snapshot } from '../../../physics/types';
import type { Reach } from '../model/reaches';
import { lookAt } from '../model/stations';
import { paintCoil, paintFilter } from './coils';
import { BACKGROUND } from './parts';
import { ink, open, type Pen } from './pen';
import { paintSite } from './site';
import { paintPipe } from './tubes';

/** Changes only with size and light. */
export function paintGroundwork(pen: Pen, drawing: PlantDrawing): void {
  paintSite(pen, drawing);
  for (const part of drawing.parts) BACKGROUND[part.kind]?.(pen, part);
  for (const wire of drawing.wires) {
    ink(pen, open(wire.points), { line: pen.ink.wire, weight: 1.6 });
  }
  ink(pen, open(drawing.drain), { line: pen.ink.ink, weight: 4.4 });
  ink(pen, open(drawing.drain), { line: pen.ink.inside, weight: 2.4 });
}

/** Changes with the machine: warmth, frost, dust. */
export function paintWorks(
  pen: Pen,
  drawing: PlantDrawing,
  reaches: readonly Reach[],
  snapshot: Snapshot | null,
  inside: boolean,
): void {
  for (const part of drawing.parts) {
    if (part.kind === 'filter') paintFilter(pen, part, snapshot ? lookAt(snapshot, 'filterDust', part.of) : 0);
    if (part.kind !== 'coil') continue;
    const reach = reaches.find((candidate) => candidate.id === part.id);
    if (reach) paintCoil(pen, part, reach, drawing, snapshot, inside);
  }
  for (const reach of reaches) if (reach.kind === 'pipe') paintPipe(pen, reach, snapshot, inside);
}

/** What the picture of the works depends on, rounded to what an eye could tell: repaint only when it changes. */
export function worksKey(snapshot: Snapshot | null, inside: boolean): string {
  if (!snapshot) return `none ${inside}`;
  const key: (number | boolean)[] = [inside];
  const temperature = (kelvin: number) => key.push(Math.round(kelvin * 2));
  for (const station of Object.values(snapshot.stations)) temperature(station.temperature);
  const branches = [...(snapshot.modules ?? []), ...(snapshot.units ?? [])];
  for (const { role, gas, liquid } of branches) {
    temperature(gas.temperature);
    temperature(liquid.temperature);
    key.push(role === 'condenser');
  }
  const coils = branches.length > 0 ? branches.map(({ coil }) => coil) : [snapshot.condenser, snapshot.evaporator];
  for (const segment of coils.flat()) {
    temperature(segment.temperature);
    temperature(segment.wall);
    key.push(Math.round(segment.frost * 1000));
  }
  for (const [name, share] of Object.entries(snapshot.looks)) {
    if (/^(filterDust|condenserDirt)/.test(name)) key.push(Math.round((share ?? 0) * 50));
  }
  return key.join(' ');
}
