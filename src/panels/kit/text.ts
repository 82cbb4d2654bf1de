/** Words for every panel; the app decides language and units. */
import type { ReadonlySignal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Text } from '../../i18n';

export const TextContext = createContext<ReadonlySignal<Text> | null>(null);

/** The text of now; a component that calls this is drawn again when language or units change. */
export function useText(): Text {
  const text = useContext(TextContext);
  if (!text) throw new Error('a panel is drawn outside <TextContext.Provider>');
  return text.value;
}
