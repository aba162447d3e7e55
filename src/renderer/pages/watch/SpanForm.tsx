import { type ReactElement, useState } from 'react';
import type { SpanTaken } from '../../../domain/care/observation.ts';
import type { SpanNow } from '../../../domain/care/spanNow.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { TextField } from '../../parts/TextField.tsx';
import style from './SpanForm.module.css';
import { readSpan, type SpanRead, type SpanTyped } from './spanForm.ts';

interface Props {
  busy: boolean;
  /** The span it has by what is on record; null where nothing tells. */
  known: SpanNow | null;
  onTaken: (span: SpanTaken) => void;
  onClose: () => void;
}

/** The leg span of the living animal, with how far it may be off. */
export function SpanForm({ busy, known, onTaken, onClose }: Props): ReactElement {
  const [typed, setTyped] = useState<SpanTyped>({ spanMm: '', plusMinusMm: '' });
  const [tried, setTried] = useState<SpanRead | null>(null);
  const asked = tried?.kind === 'read' ? tried.doubt : null;
  const put = (changes: Partial<SpanTyped>) => {
    setTyped({ ...typed, ...changes });
    setTried(null);
  };
  const save = () => {
    const read = readSpan(typed, known);
    setTried(read);
    // A second press is an answer to what was asked.
    if (read.kind === 'read' && (read.doubt === null || asked !== null)) onTaken(read.span);
  };
  const refusal = (field: keyof SpanTyped) => (tried?.kind === 'refused' && tried.field === field ? tried.words : undefined);
  return (
    <Dialog
      title="Leg span measured"
      onClose={onClose}
      foot={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button kind="primary" busy={busy} onClick={save}>
            {asked === null ? 'Note it' : 'Note it all the same'}
          </Button>
        </>
      }
    >
      <form
        className={style['form']}
        onSubmit={(event) => {
          event.preventDefault();
          save();
        }}
      >
        <TextField
          label="Leg span, mm"
          hint="Tip of leg I to tip of leg IV of the other side; 1 in is 25.4 mm."
          error={refusal('spanMm')}
          value={typed.spanMm}
          onChange={(spanMm) => put({ spanMm })}
        />
        <TextField
          label="May be off by, ± mm"
          hint="A living animal is rarely stretched: a tenth of its span is soon reached."
          error={refusal('plusMinusMm')}
          value={typed.plusMinusMm}
          onChange={(plusMinusMm) => put({ plusMinusMm })}
        />
        <div role="status">
          {asked !== null && (
            <Notice tone="warning" title="Is this right?">
              {asked}
            </Notice>
          )}
        </div>
      </form>
    </Dialog>
  );
}
