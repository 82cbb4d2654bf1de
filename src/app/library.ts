/**
 * The packs that come with the page. Each is fetched with the page's own files when first asked for; tests prove the
 * shipped files against the schema, so they are not validated again here.
 */
import type { Callout, Pack } from '../attempt/pack/types';

const packFiles = import.meta.glob<Pack>('../../scenarios/*.pack.json', { import: 'default' });
let shelf: Promise<readonly Pack[]> | null = null;

/** All packs, the guided one first. */
export function packs(): Promise<readonly Pack[]> {
  shelf ??= Promise.all(Object.values(packFiles).map((load) => load())).then((list) =>
    [...list].sort((a, b) => rank(a) - rank(b) || a.id.localeCompare(b.id)),
  );
  return shelf;
}

const rank = (pack: Pack) => (pack.callouts.some((callout) => callout.mode === 'guided') ? 0 : 1);

/** A callout of a shipped pack, or a job that practice draws or keeps under this name. */
export async function findCallout(packId: string, calloutId: string): Promise<{ pack: Pack; callout: Callout } | null> {
  const shelved = await packs();
  const pack = shelved.find((one) => one.id === packId) ?? (await practised(packId, calloutId, shelved));
  const callout = pack?.callouts.find((one) => one.id === calloutId);
  return pack && callout ? { pack, callout } : null;
}

async function practised(packId: string, calloutId: string, shelved: readonly Pack[]): Promise<Pack | null> {
  const { practisedPack } = await import('./practice/jobs');
  return practisedPack(packId, calloutId, shelved);
}
