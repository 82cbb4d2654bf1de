/** Where the focus goes when a sheet is asked for. */
import type { SheetId } from '../../panels/session';

export function focusSheet(id: SheetId): void {
  // The causes are the sheet of stakes: the first arrow already moves between them.
  const first = id === 'stakes' ? document.querySelector<HTMLElement>('.stakes [data-cause]') : null;
  const beside = id === 'notebook' ? document.getElementById('notebook') : null;
  (first ?? beside ?? document.getElementById('sheet-title'))?.focus();
}
