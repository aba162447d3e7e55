import type { ReactElement } from 'react';
import type { CalendarDay } from '../../../domain/dates.ts';
import { SpecimenDraft } from '../../../domain/specimen/specimen.ts';
import { dayInWords } from '../../../words/dates.ts';
import { useAnswer, useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { useToast } from '../../parts/Toast.tsx';

interface Props {
  specimenId: string;
  code: string;
  words: string;
  /** The day of the molt it died in. */
  diedOn: CalendarDay;
}

/** Sets the status of an animal that died in its molt: one tap, and an undo. */
export function RecordDeath({ specimenId, code, words, diedOn }: Props): ReactElement {
  const page = useAnswer('GET /api/specimens/{specimenId}', { path: { specimenId } });
  const change = useChange('PUT /api/specimens/{specimenId}');
  const toast = useToast();
  const record = () => {
    const specimen = page.data?.summary.specimen;
    if (!specimen) return;
    const before = SpecimenDraft.parse(specimen);
    change.mutate(
      { path: { specimenId }, version: specimen.version, body: { ...before, status: 'dead' } },
      {
        onSuccess: ({ version }) => {
          const undo = () =>
            change.mutate({ path: { specimenId }, version, body: before }, { onSuccess: () => toast({ message: 'Taken back.' }) });
          toast({ message: `${code} is recorded as dead, in its molt of ${dayInWords(diedOn)}.`, action: { label: 'Undo', run: undo } });
        },
      },
    );
  };
  return (
    <>
      <Button aria-label={`${words}: ${code}`} busy={page.isPending || change.isPending} onClick={record}>
        {words}
      </Button>
      {page.error && <FailureNotice error={page.error} />}
      {change.error && <FailureNotice error={change.error} />}
    </>
  );
}
