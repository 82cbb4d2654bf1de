/** The keys of the bench as data: the handler and the help are made from the same list. */
import type { Key } from '../../i18n';

export type KeyAct =
  | 'help'
  | 'command'
  | 'places'
  | 'job'
  | 'notebook'
  | 'stakes'
  | 'machine'
  | 'finish'
  | 'wait'
  | 'hint'
  | 'undo'
  | 'escape';

interface KeyRow {
  /** as `KeyboardEvent.key` gives it; written in the help as they are here */
  readonly keys: readonly string[];
  readonly says: Key & `app.keys.${string}`;
  readonly group: 'move' | 'panels' | 'stake' | 'other';
  /** left out where the element with the focus handles the key itself */
  readonly act?: KeyAct;
}

export const KEYS: readonly KeyRow[] = [
  { keys: ['p'], says: 'app.keys.places', group: 'move', act: 'places' },
  { keys: ['→', '↓'], says: 'app.keys.nextPlace', group: 'move' },
  { keys: ['←', '↑'], says: 'app.keys.previousPlace', group: 'move' },
  { keys: ['Enter'], says: 'app.keys.openPlace', group: 'move' },
  { keys: ['1', '…', '9'], says: 'app.keys.digit', group: 'move' },
  { keys: ['Escape'], says: 'app.keys.escape', group: 'move', act: 'escape' },
  { keys: ['j'], says: 'app.keys.job', group: 'panels', act: 'job' },
  { keys: ['n'], says: 'app.keys.notebook', group: 'panels', act: 'notebook' },
  { keys: ['s'], says: 'app.keys.stakes', group: 'panels', act: 'stakes' },
  { keys: ['m'], says: 'app.keys.machine', group: 'panels', act: 'machine' },
  { keys: ['v'], says: 'app.keys.verdict', group: 'panels', act: 'finish' },
  { keys: ['↑', '↓'], says: 'app.keys.causeUp', group: 'stake' },
  { keys: ['→', '←'], says: 'app.keys.chipMove', group: 'stake' },
  { keys: ['w'], says: 'app.keys.wait', group: 'other', act: 'wait' },
  { keys: ['h'], says: 'app.keys.hint', group: 'other', act: 'hint' },
  { keys: ['u'], says: 'app.keys.undo', group: 'other', act: 'undo' },
  { keys: ['/'], says: 'app.keys.command', group: 'other', act: 'command' },
  { keys: ['?'], says: 'app.keys.help', group: 'other', act: 'help' },
];

/** The act of a key, or null. Two rows that claim one key are a mistake that shows at once. */
export const ACT_OF: ReadonlyMap<string, KeyAct> = new Map(
  KEYS.flatMap(({ keys, act }) => (act ? keys.map((key) => [key, act] as const) : [])),
);

/** Keys are for the machine only while nobody types and no sheet lies over the page. */
export function isTyping(event: KeyboardEvent): boolean {
  const target = event.target as Element | null;
  if (event.altKey || event.ctrlKey || event.metaKey || event.defaultPrevented) return true;
  return (
    target?.closest('dialog, [role=combobox], textarea, select, input:not([type=radio]):not([type=checkbox])') != null
  );
}
