/** Small packs that this device keeps: visits to which the van comes back, traps that somebody sent. */
import { machineFacts } from '../../attempt/pack/facts';
import { checkPack } from '../../attempt/pack/load';
import type { Pack } from '../../attempt/pack/types';

const STORE = 'coldbench.packs';
const ASIDE = 'coldbench.packs.aside';
/** Visits and traps that are kept; the oldest go first. */
const MOST = 30;

export const isKept = (id: string): boolean => id.startsWith('van-') || id.startsWith('trap-');

function stored(): unknown[] {
  const text = localStorage.getItem(STORE);
  if (text === null) return [];
  try {
    const value: unknown = JSON.parse(text);
    if (Array.isArray(value)) return value;
  } catch {
    // Set aside below, like anything else that is no list.
  }
  localStorage.setItem(ASIDE, text);
  localStorage.removeItem(STORE);
  return [];
}

/** All that are whole, the newest first; none where the browser keeps nothing. */
export function keptPacks(): Pack[] {
  try {
    const whole = stored().flatMap((each): Pack[] => {
      const outcome = checkPack(each, machineFacts);
      return outcome.ok && isKept(outcome.pack.id) ? [outcome.pack] : [];
    });
    return whole.reverse();
  } catch {
    return [];
  }
}

/** Throws where the browser does not let the page save. */
export function keepPack(pack: Pack): void {
  const others = stored().filter((each) => (each as { id?: unknown } | null)?.id !== pack.id);
  localStorage.setItem(STORE, JSON.stringify([...others, pack].slice(-MOST)));
}
