import type { InputHTMLAttributes, ReactElement, ReactNode } from 'react';
import { Field } from './Field.tsx';

interface Props {
  label: string;
  hint?: ReactNode;
  error?: string | undefined;
  /** Scrolls to the message when it appears below the edge of a panel. */
  showsErrorInView?: boolean;
  value: string;
  onType: (text: string) => void;
  /** The field was left, or Enter pressed. */
  onCommit: () => void;
  /** Escape: what was typed is given up, and nothing else hears of the key. */
  onDiscard: () => void;
  input?: Pick<InputHTMLAttributes<HTMLInputElement>, 'inputMode' | 'className' | 'maxLength'>;
}

/** A labeled line of text that counts only once it is finished. */
export function TypedField({
  label,
  hint,
  error,
  showsErrorInView = false,
  value,
  onType,
  onCommit,
  onDiscard,
  input,
}: Props): ReactElement {
  return (
    <Field {...{ label, hint, error, showsErrorInView }}>
      {(control) => (
        <input
          {...control}
          {...input}
          autoComplete="off"
          value={value}
          onChange={(event) => onType(event.target.value)}
          onBlur={onCommit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') onCommit();
            if (event.key === 'Escape') {
              event.stopPropagation();
              onDiscard();
            }
          }}
        />
      )}
    </Field>
  );
}
