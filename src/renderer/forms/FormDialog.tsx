import { type ReactElement, type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { Button } from '../parts/Button.tsx';
import { Dialog } from '../parts/Dialog.tsx';
import { FailureNotice } from '../parts/Notice.tsx';
import style from './FormDialog.module.css';
import { focusFirstFault } from './focusFirstFault.ts';

interface Props {
  title: string;
  saveLabel: string;
  busy: boolean;
  /** Something was written since the form was opened: closing it asks first. */
  changed: boolean;
  /** What the archive refused, if it did. */
  error: unknown;
  /** The refusal stands at its own field already. */
  errorAtField?: boolean;
  onSave: () => void;
  onClose: () => void;
  children: ReactNode;
}

/**
 * A form in a dialog: fields in two columns where there is room, what was refused above the buttons. Enter saves, the first field that
 * does not fit takes the focus, and nothing written is lost unasked.
 */
export function FormDialog({
  title,
  saveLabel,
  busy,
  changed,
  error,
  errorAtField = false,
  onSave,
  onClose,
  children,
}: Props): ReactElement {
  const formId = useId();
  const [asking, setAsking] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (error && errorAtField) focusFirstFault(form.current);
  }, [error, errorAtField]);
  const lastField = useRef<HTMLElement | null>(null);
  const stay = () => {
    setAsking(false);
    lastField.current?.focus();
  };
  const leave = () => {
    // Asked once more, Escape goes back to the form: only the button that says so discards.
    if (asking) stay();
    else if (changed) setAsking(true);
    else onClose();
  };
  return (
    <Dialog
      title={title}
      wide
      onClose={leave}
      foot={
        asking ? (
          <>
            <span className={style['question']} role="alert">
              What you wrote here is not saved.
            </span>
            <Button key="stay" kind="primary" autoFocus onClick={stay}>
              Go on writing
            </Button>
            <Button key="discard" kind="danger" onClick={onClose}>
              Discard it
            </Button>
          </>
        ) : (
          <>
            <Button onClick={leave}>Cancel</Button>
            <Button kind="primary" type="submit" form={formId} busy={busy}>
              {saveLabel}
            </Button>
          </>
        )
      }
    >
      <form
        ref={form}
        id={formId}
        noValidate
        className={style['form']}
        onFocus={(event) => {
          lastField.current = event.target;
        }}
        onSubmit={(event) => {
          event.preventDefault();
          if (busy) return;
          flushSync(onSave);
          focusFirstFault(event.currentTarget);
        }}
      >
        {children}
      </form>
      {error !== null && error !== undefined && !errorAtField && (
        <div className={style['refused']}>
          <FailureNotice error={error} />
        </div>
      )}
    </Dialog>
  );
}
