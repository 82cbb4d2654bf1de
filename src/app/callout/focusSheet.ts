/** Where the focus goes when a sheet is asked for. */
import { HINT_BUTTON } from '../../panels/hints/Hints';
import type { Session, SheetId } from '../../panels/session';

export function focusSheet(id: SheetId): void {
  // The causes are the sheet of stakes: the first arrow already moves between them.
  const first = id === 'stakes' ? document.querySelector<HTMLElement>('.stakes [data-cause]') : null;
  const beside = id === 'notebook' ? document.getElementById('notebook') : null;
  (first ?? beside ?? document.getElementById('sheet-title'))?.focus();
}

/** Opens the notebook at its hints; it takes none. */
export function toHints(session: Session): void {
  session.placeOpen.value = false;
  session.sheet.value = 'notebook';
  // The sheet is drawn first, and takes the focus itself.
  requestAnimationFrame(() =>
    requestAnimationFrame(() => (document.getElementById(HINT_BUTTON) ?? document.getElementById('notebook'))?.focus()),
  );
}
