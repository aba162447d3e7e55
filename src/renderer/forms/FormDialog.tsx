import { type ReactElement, type ReactNode, useId } from 'react';
import { Button } from '../parts/Button.tsx';
import { Dialog } from '../parts/Dialog.tsx';
import { FailureNotice } from '../parts/Notice.tsx';
import style from './FormDialog.module.css';

interface Props {
  title: string;
  saveLabel: string;
  busy: boolean;
  /** What the archive refused, if it did. */
  error: unknown;
  onSave: () => void;
  onClose: () => void;
  children: ReactNode;
}

/** A form in a dialog: fields in two columns where there is room, what was refused above the buttons, Enter saves. */
export function FormDialog({ title, saveLabel, busy, error, onSave, onClose, children }: Props): ReactElement {
  const formId = useId();
  return (
    <Dialog
      title={title}
      wide
      onClose={onClose}
      foot={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button kind="primary" type="submit" form={formId} busy={busy}>
            {saveLabel}
          </Button>
        </>
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
