/** Two or three leaves of one sheet; arrow keys move between their tabs as screen readers expect. */
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

interface Props<T extends string> {
  readonly label: string;
  readonly tabs: readonly (readonly [T, string])[];
  readonly open: T;
  readonly onOpen: (tab: T) => void;
  readonly children: ComponentChildren;
}

export function Tabs<T extends string>({ label, tabs, open, onOpen, children }: Props<T>) {
  const id = useId();
  const move = (event: KeyboardEvent, by: number) => {
    event.preventDefault();
    event.stopPropagation();
    const at = tabs.findIndex(([tab]) => tab === open);
    const [next] = tabs[(at + by + tabs.length) % tabs.length]!;
    onOpen(next);
    document.getElementById(`${id}-${next}`)?.focus();
  };
  return (
    <>
      <div
        class="tabs"
        role="tablist"
        aria-label={label}
        onKeyDown={(event) => {
          if (event.key === 'ArrowRight') move(event, 1);
          if (event.key === 'ArrowLeft') move(event, -1);
        }}
      >
        {tabs.map(([tab, name]) => (
          <button
            type="button"
            key={tab}
            role="tab"
            id={`${id}-${tab}`}
            aria-selected={tab === open}
            aria-controls={`${id}-panel`}
            tabIndex={tab === open ? 0 : -1}
            onClick={() => onOpen(tab)}
          >
            {name}
          </button>
        ))}
      </div>
      <div class="stack" role="tabpanel" id={`${id}-panel`} aria-labelledby={`${id}-${open}`}>
        {children}
      </div>
    </>
  );
}
