/** Where each pair of causes can be practised: the shipped callouts with what every cause shows there. */
import type { PlantId } from '../../../physics/types';
import type { Callout, Pack } from '../../attempt/pack/types';
import { decodeDifferential } from '../../examiner/compact';
import type { Differential } from '../../examiner/types';
import { byNeed, type Edge, edgesOf } from '../../practice/edges';
import type { Setting } from '../../practice/setting';
import { shippedDifferential } from '../callout/differentials';
import { packs } from '../library';

export interface Chapter {
  readonly plant: PlantId;
  readonly callouts: readonly { readonly pack: Pack; readonly callout: Callout }[];
}

/** The plants in the order in which the packs bring them. */
export async function chapters(): Promise<Chapter[]> {
  const found = new Map<PlantId, { pack: Pack; callout: Callout }[]>();
  for (const pack of await packs()) {
    for (const callout of pack.callouts) {
      found.set(callout.plant, [...(found.get(callout.plant) ?? []), { pack, callout }]);
    }
  }
  return [...found].map(([plant, callouts]) => ({ plant, callouts }));
}

const differentials = new Map<string, Promise<Differential | null>>();

/** Null where none ships for this machine and physics: then there is nothing to practise here. */
export async function settingOf(pack: Pack, callout: Callout): Promise<Setting | null> {
  const id = `${pack.id}/${callout.id}`;
  let found = differentials.get(id);
  if (!found) {
    found = shippedDifferential(pack, callout).then((packed) => packed && decodeDifferential(packed));
    differentials.set(id, found);
  }
  const differential = await found;
  return differential && { pack: pack.id, callout, differential };
}

/** A pair with the places where it can be practised. */
export interface Placed extends Edge {
  readonly settings: readonly Setting[];
}

const known = new Map<PlantId, Promise<readonly Placed[]>>();

/** All pairs of a plant, the most needed first; each with every callout in whose tally both stand. */
export function edgesOn({ plant, callouts }: Chapter): Promise<readonly Placed[]> {
  let found = known.get(plant);
  if (!found) {
    found = place(callouts);
    known.set(plant, found);
  }
  return found;
}

async function place(callouts: Chapter['callouts']): Promise<readonly Placed[]> {
  const placed = new Map<string, Placed>();
  for (const { pack, callout } of callouts) {
    const setting = await settingOf(pack, callout);
    if (!setting) continue;
    for (const edge of edgesOf(setting)) {
      const other = placed.get(edge.id);
      const settings = [...(other?.settings ?? []), setting];
      const met = Math.max(edge.met, other?.met ?? 0);
      placed.set(edge.id, { ...(other && other.alike >= edge.alike ? other : edge), met, settings });
    }
    await breath();
  }
  // What the guided callout is about comes first: it has been met already.
  const guided = ({ settings }: Placed) => (settings[0]?.callout.mode === 'guided' ? 0 : 1);
  return [...placed.values()].sort((a, b) => guided(a) - guided(b) || byNeed(a, b));
}

/** Lets the page draw and hear between two pieces of work. */
export function breath(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

/** The pair of this id, if it can be practised anywhere. */
export async function edgeCalled(id: string): Promise<Placed | null> {
  const chapter = (await chapters()).find(({ plant }) => id.startsWith(`${plant}/`));
  return chapter ? ((await edgesOn(chapter)).find((edge) => edge.id === id) ?? null) : null;
}
