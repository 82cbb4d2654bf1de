/** Where the focus goes when a sheet is asked for. */
import { HINT_BUTTON } from '../../panels/hints/Hints';
import type { Session, SheetId } from '../../panels/session';

export function focusSheet(id: SheetId): void {
  // Who was led to the hints inside the notebook stays there.
  if (id === 'notebook' && document.activeElement?.closest('.hints')) return;
  // The causes are the sheet of stakes: the first arrow already moves between them.
  const first = id === 'stakes' ? document.querySelector<HTMLElement>('.stakes [data-cause]') : null;
  const beside = id === 'notebook' ? document.getElementById('notebook') : null;
  (first ?? beside ?? document.getElementById('sheet-title'))?.focus();
}

/** Frames that the sheet may take to be drawn. */
const PATIENCE = 20;

/** Opens the notebook at its hints; it takes none. */
export function toHints(session: Session): void {
  session.placeOpen.value = false;
  session.sheet.value = 'notebook';
  let frames = 0;
  const whenDrawn = () => {
    const button = document.getElementById(HINT_BUTTON);
    if (button) button.focus();
    else if (++frames < PATIENCE) requestAnimationFrame(whenDrawn);
    else document.getElementById('notebook')?.focus();
  };
  requestAnimationFrame(whenDrawn);
}
