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

export async function findCallout(packId: string, calloutId: string): Promise<{ pack: Pack; callout: Callout } | null> {
  const pack = (await packs()).find((one) => one.id === packId);
  const callout = pack?.callouts.find((one) => one.id === calloutId);
  return pack && callout ? { pack, callout } : null;
}
