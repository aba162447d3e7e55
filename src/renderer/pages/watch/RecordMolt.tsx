import { type ReactElement, useState } from 'react';
import type { CalendarDay } from '../../../domain/dates.ts';
import { useAnswer } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { MoltDialog } from '../specimen/MoltDialog.tsx';

interface Props {
  specimenId: string;
  code: string;
  words: string;
  /** The days on which it can have been, one where it was seen free of its skin: it cannot have been later. */
  from: CalendarDay;
  to: CalendarDay;
}

/** Puts a watched molt on record, with its day or days and the next instar filled in. */
export function RecordMolt({ specimenId, code, words, from, to }: Props): ReactElement {
  const [open, setOpen] = useState(false);
  const page = useAnswer('GET /api/specimens/{specimenId}', { path: { specimenId } }, { enabled: open });
  return (
    <>
      <Button aria-label={`${words}: ${code}`} busy={open && page.isPending} onClick={() => setOpen(true)}>
        {words}
      </Button>
      {open && page.data && (
        <MoltDialog
          specimenId={specimenId}
          molt={null}
          today={to}
          notBefore={from}
          lastShed={page.data.molts.at(-1)?.molt.instarShed ?? null}
          onClose={() => setOpen(false)}
        />
      )}
    </>
  );
}
