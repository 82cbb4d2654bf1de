import { PhysicsError } from '../errors';
import { R22 } from './data/R22';
import { R32 } from './data/R32';
import { R125 } from './data/R125';
import { R134a } from './data/R134a';
import { R290 } from './data/R290';
import { R404A } from './data/R404A';
import { R407C } from './data/R407C';
import { R410A } from './data/R410A';
import { R448A } from './data/R448A';
import { R454B } from './data/R454B';
import { R513A } from './data/R513A';
import { R744 } from './data/R744';
import { R1234yf } from './data/R1234yf';
import { FluidEos } from './fluidEos';
import type { RefrigerantData, RefrigerantId } from './refrigerantData';
import { FluidTable } from './table';
import { buildTable } from './tableBuild';

export * from './layout';
export type { RefrigerantData, RefrigerantId } from './refrigerantData';
export { FluidTable } from './table';

const DATA: ReadonlyMap<string, RefrigerantData> = new Map(
  [R32, R410A, R134a, R290, R22, R1234yf, R125, R744, R407C, R404A, R454B, R448A, R513A].map((d) => [d.id, d]),
);

export const REFRIGERANTS: readonly RefrigerantId[] = [...DATA.values()].map((d) => d.id);

const equations = new Map<string, FluidEos>();
const tables = new Map<string, FluidTable>();

/** Constants of a refrigerant. Throws `bad-input` for an unknown name. */
export function refrigerantData(id: string): RefrigerantData {
  const data = DATA.get(id);
  if (data === undefined) {
    throw new PhysicsError('bad-input', `unknown refrigerant "${id}": one of ${REFRIGERANTS.join(', ')}`, {
      refrigerant: id,
    });
  }
  return data;
}

/** The equation of state of a refrigerant, made once. Throws `bad-input` for an unknown name. */
export function fluidEos(id: string): FluidEos {
  let eos = equations.get(id);
  if (eos === undefined) {
    eos = new FluidEos(refrigerantData(id));
    equations.set(id, eos);
  }
  return eos;
}

/** The fast tables of a refrigerant, built once (milliseconds). Throws `bad-input` for an unknown name. */
export function fluidTable(id: string): FluidTable {
  let table = tables.get(id);
  if (table === undefined) {
    table = new FluidTable(buildTable(fluidEos(id)));
    tables.set(id, table);
  }
  return table;
}
