/** Keys of the bench: one listener, the acts of keys.ts. Keys that a focused element handles itself never arrive here. */
import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';
import type { BenchHandle } from '../../bench';
import type { Session } from '../../panels/session';
import { focusSheet, toHints } from './focusSheet';
import { ACT_OF, isTyping, type KeyAct } from './keys';

/** Seconds that `w` lets pass. */
const WAIT = 300;

export function useKeys(
  session: Session,
  bench: RefObject<BenchHandle | null>,
  open: (over: 'keys' | 'command') => void,
): void {
  useEffect(() => {
    const acts: Readonly<Record<KeyAct, () => void>> = {
      help: () => open('keys'),
      command: () => open('command'),
      places: () => bench.current?.focus(session.place.value ?? undefined),
      job: () => show(session, 'job'),
      notebook: () => show(session, 'notebook'),
      stakes: () => show(session, 'stakes'),
      machine: () => show(session, 'machine'),
      finish: () => show(session, 'finish'),
      wait: () => session.dispatch({ kind: 'wait', seconds: WAIT }),
      hint: () => toHints(session),
      undo: () => session.dispatch({ kind: 'undo' }),
      escape: () => step(session, bench.current),
    };
    const onKey = (event: KeyboardEvent) => {
      if (isTyping(event)) return;
      if (/^[1-9]$/.test(event.key) && takeByDigit(session, Number(event.key))) {
        event.preventDefault();
        requestAnimationFrame(() => bench.current?.focus(session.place.value ?? undefined));
        return;
      }
      if (event.key.startsWith('Arrow') && event.target === document.body) {
        event.preventDefault();
        bench.current?.focus(session.place.value ?? undefined);
        return;
      }
      const act = ACT_OF.get(event.key);
      if (!act) return;
      event.preventDefault();
      acts[act]();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [session, bench, open]);
}

function show(session: Session, sheet: NonNullable<Session['sheet']['value']>): void {
  session.placeOpen.value = false;
  session.sheet.value = sheet;
  // A sheet that lies open already is not drawn anew, so it does not take the focus by itself.
  requestAnimationFrame(() => focusSheet(sheet));
}

/** The digit takes what fits the open place, or the place that has the focus. */
function takeByDigit(session: Session, digit: number): boolean {
  const focused = (document.activeElement as HTMLElement | null)?.dataset.place;
  const place = session.placeOpen.value ? session.place.value : (focused ?? null);
  const option = place === null ? undefined : session.optionsAt(place)[digit - 1];
  if (place === null || !option) return false;
  session.place.value = place;
  session.take(option);
  return true;
}

/** Escape closes what lies on top, one thing at a time: sheet of the place, instrument in the hand, sheet. */
function step(session: Session, bench: BenchHandle | null): void {
  if (session.placeOpen.value) {
    session.placeOpen.value = false;
    bench?.focus(session.place.value ?? undefined);
  } else if (session.held.value) session.held.value = null;
  else session.sheet.value = null;
}
