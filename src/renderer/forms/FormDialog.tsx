import { type ReactElement, type ReactNode, useId, useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { Dialog } from '../parts/Dialog.tsx';
import { FailureNotice } from '../parts/Notice.tsx';
import style from './FormDialog.module.css';

interface Props {
  title: string;
  saveLabel: string;
  busy: boolean;
  /** Something was written since the form was opened: closing it asks first. */
  changed: boolean;
  /** What the archive refused, if it did. */
  error: unknown;
  onSave: () => void;
  onClose: () => void;
  children: ReactNode;
}

/** A form in a dialog: fields in two columns where there is room, what was refused above the buttons, Enter saves, nothing written is lost unasked. */
export function FormDialog({ title, saveLabel, busy, changed, error, onSave, onClose, children }: Props): ReactElement {
  const formId = useId();
  const [asking, setAsking] = useState(false);
  // Asked once more, Escape goes back to the form: only the button that says so discards.
  const leave = () => {
    if (changed) setAsking(!asking);
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
            <Button key="stay" kind="primary" onClick={() => setAsking(false)}>
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
        id={formId}
        noValidate
        className={style['form']}
        onSubmit={(event) => {
          event.preventDefault();
          if (!busy) onSave();
        }}
      >
        {children}
      </form>
      {error !== null && error !== undefined && (
        <div className={style['refused']}>
          <FailureNotice error={error} />
        </div>
      )}
    </Dialog>
  );
}
