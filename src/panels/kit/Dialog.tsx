/** A sheet over the page. The browser's own dialog keeps the focus inside and gives it back. */
import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef } from 'preact/hooks';

interface Props {
  readonly title: string;
  readonly close: string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

export function Dialog({ title, close, onClose, children }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const label = useId();
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  return (
    <dialog
      ref={dialog}
      class="dialog"
      aria-labelledby={label}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <header class="dialog-head">
        <h2 id={label} class="first">
          {title}
        </h2>
        <button type="button" class="quiet" onClick={onClose}>
          {close}
        </button>
      </header>
      <div class="dialog-body stack">{children}</div>
    </dialog>
  );
}
