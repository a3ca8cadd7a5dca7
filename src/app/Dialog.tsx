import { useEffect, useId, useRef, type ReactNode } from 'react';
import { useSay } from './useDesk.ts';

/** A sheet over everything, closed by its button or Escape. */
export function Dialog({
  heading,
  onClose,
  wide = false,
  children,
}: {
  readonly heading: string;
  readonly onClose: () => void;
  readonly wide?: boolean;
  readonly children: ReactNode;
}) {
  const say = useSay();
  const dialog = useRef<HTMLDialogElement>(null);
  const title = useId();
  useEffect(() => {
    const node = dialog.current;
    node?.showModal();
    // It is read from its heading; left alone, a long one would open at its last button.
    node?.querySelector('h2')?.focus();
    return () => node?.close();
  }, []);
  return (
    <dialog
      ref={dialog}
      className={wide ? 'dialog dialog-wide' : 'dialog'}
      aria-labelledby={title}
      onClose={onClose}
      onCancel={onClose}
    >
      <h2 id={title} tabIndex={-1}>
        {heading}
      </h2>
      {children}
      <p className="dialog-foot">
        <button type="button" className="pill" onClick={onClose}>
          {say('app.close')}
        </button>
      </p>
    </dialog>
  );
}
