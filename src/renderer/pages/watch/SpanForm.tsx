import { type ReactElement, useState } from 'react';
import { SpanTaken } from '../../../domain/care/observation.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { TextField } from '../../parts/TextField.tsx';
import style from './SpanForm.module.css';

interface Props {
  busy: boolean;
  onTaken: (span: SpanTaken) => void;
  onClose: () => void;
}

/** The leg span of the living animal, with how far it may be off. */
export function SpanForm({ busy, onTaken, onClose }: Props): ReactElement {
  const [spanMm, setSpanMm] = useState('');
  const [plusMinusMm, setPlusMinusMm] = useState('');
  const [refused, setRefused] = useState(false);
  const save = () => {
    const parsed = SpanTaken.safeParse({ spanMm: numberIn(spanMm), plusMinusMm: numberIn(plusMinusMm) });
    setRefused(!parsed.success);
    if (parsed.success) onTaken(parsed.data);
  };
  return (
    <Dialog
      title="Leg span measured"
      onClose={onClose}
      foot={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button kind="primary" busy={busy} onClick={save}>
            Note it
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
          value={spanMm}
          onChange={setSpanMm}
        />
        <TextField
          label="May be off by, ± mm"
          hint="A living animal is rarely stretched: a tenth of its span is soon reached."
          error={refused ? 'Give two numbers: a span above 0 and up to 500 mm, and 0 or more for how far it may be off.' : undefined}
          value={plusMinusMm}
          onChange={setPlusMinusMm}
        />
      </form>
    </Dialog>
  );
}

function numberIn(text: string): number {
  return text.trim() === '' ? Number.NaN : Number(text.replace(',', '.'));
}
