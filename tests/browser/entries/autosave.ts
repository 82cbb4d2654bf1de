/** What the browser test loads: autosave on the page's own IndexedDB. */
import { type Autosave, openAutosave } from '../../../src/attempt/autosave';

declare global {
  var autosave: { open(): Promise<Autosave> };
}

globalThis.autosave = { open: () => openAutosave() };
