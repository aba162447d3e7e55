import { type ReactElement, useState } from 'react';
import { Button } from './Button.tsx';
import { Field } from './Field.tsx';

/** Copies text; where the clipboard is closed to the page, shows it selected for copying by hand. */
export function CopyText({ text }: { text: string }): ReactElement {
  const [outcome, setOutcome] = useState<{ kind: 'copied' | 'by-hand'; text: string } | null>(null);
  const copy = () => {
    navigator.clipboard.writeText(text).then(
      () => setOutcome({ kind: 'copied', text }),
      () => setOutcome({ kind: 'by-hand', text }),
    );
  };
  const current = outcome?.text === text ? outcome.kind : null;
  return (
    <div>
      <Button icon={current === 'copied' ? 'check' : 'copy'} onClick={copy}>
        {current === 'copied' ? 'Copied' : 'Copy as text'}
      </Button>
      {current === 'by-hand' && (
        <Field label="The clipboard is closed to this window: copy it from here">
          {(control) => <textarea {...control} readOnly rows={6} value={text} onFocus={(event) => event.target.select()} />}
        </Field>
      )}
    </div>
  );
}
