import type { ReactElement } from 'react';
import { useAnswer } from '../../client/queries.ts';
import { FailureNotice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';

export function SpecimenPage({ specimenId }: { specimenId: string }): ReactElement {
  const page = useAnswer('GET /api/specimens/{specimenId}', { path: { specimenId } });
  if (page.error) return <FailureNotice error={page.error} />;
  return <PageHead title={page.data?.summary.specimen.code ?? 'Specimen'} />;
}
