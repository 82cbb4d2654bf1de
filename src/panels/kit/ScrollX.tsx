/** A table wider than its sheet: it scrolls by itself, by finger and by arrow keys. */
import type { ComponentChildren } from 'preact';

export function ScrollX({ label, children }: { readonly label: string; readonly children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable for the arrow keys
    <section class="scroll-x" tabIndex={0} aria-label={label}>
      {children}
    </section>
  );
}
