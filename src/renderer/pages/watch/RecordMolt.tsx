import { type ReactElement, useState } from 'react';
import type { CalendarDay } from '../../../domain/dates.ts';
import { useAnswer } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { MoltDialog } from '../specimen/MoltDialog.tsx';

interface Props {
  specimenId: string;
  code: string;
  words: string;
  /** The day it was seen free of its skin: the molt cannot have been later. */
  moltedOn: CalendarDay;
}

/** Puts a watched molt on record, with the day it was seen and the next instar filled in. */
export function RecordMolt({ specimenId, code, words, moltedOn }: Props): ReactElement {
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
          today={moltedOn}
          lastShed={page.data.molts.at(-1)?.molt.instarShed ?? null}
          onClose={() => setOpen(false)}
        />
      )}
    </>
  );
}
