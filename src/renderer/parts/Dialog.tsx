import { type ReactElement, type ReactNode, useEffect, useId, useRef } from 'react';
import style from './Dialog.module.css';
import { IconButton } from './IconButton.tsx';

interface Props {
  title: string;
  onClose: () => void;
  /** Buttons at the foot. */
  foot?: ReactNode;
  wide?: boolean;
  children: ReactNode;
}

/**
 * A native modal dialog, open while it is rendered: Escape closes it, focus stays inside, and goes back to where it was.
 */
export function Dialog({ title, onClose, foot, wide = false, children }: Props): ReactElement {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const element = dialog.current;
    const before = document.activeElement;
    if (element && !element.open) element.showModal();
    return () => {
      element?.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return (
    <dialog
      ref={dialog}
      aria-labelledby={titleId}
      className={[style['dialog'], wide ? style['wide'] : ''].filter(Boolean).join(' ')}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <header className={style['head']}>
        <h2 id={titleId}>{title}</h2>
        <IconButton icon="close" label="Close" onClick={onClose} />
      </header>
      <div className={style['body']}>{children}</div>
      {foot && <footer className={style['foot']}>{foot}</footer>}
    </dialog>
  );
}
