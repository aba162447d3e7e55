import type { ReactElement } from 'react';
import { useAnswer } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { EmptyState } from '../../parts/EmptyState.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { Examination } from './Examination.tsx';
import { SkinChooser } from './SkinChooser.tsx';

/** Female or male? First which skin, then its guided reading. */
export function ExaminationPage({ exuviaId }: { exuviaId: string | null }): ReactElement {
  return exuviaId === null ? <SkinChooser /> : <ExaminationOf key={exuviaId} exuviaId={exuviaId} />;
}

function ExaminationOf({ exuviaId }: { exuviaId: string }): ReactElement {
  const sheet = useAnswer('GET /api/exuviae/{exuviaId}/examination', { path: { exuviaId } });
  const specimenId = sheet.data?.specimen.id ?? '';
  const page = useAnswer('GET /api/specimens/{specimenId}', { path: { specimenId } }, { enabled: specimenId !== '' });
  const about = useAnswer('GET /api/about', {});
  const preferences = useAnswer('GET /api/preferences', {});
  const all = [sheet, page, about, preferences];
  const failed = all.find((answer) => answer.isLoadingError);

  if (failed) {
    const again = () => {
      for (const answer of all) if (answer.isError) void answer.refetch();
    };
    return (
      <>
        <PageHead title="Examination" />
        <FailureNotice error={failed.error} action={<Button onClick={again}>Ask again</Button>} />
      </>
    );
  }
  if (!sheet.data || !page.data || !about.data || !preferences.data) {
    return <PageHead title="Examination" below="Laying the skin out …" />;
  }
  if (!sheet.data.exuvia.recovered) {
    return (
      <>
        <PageHead title="Examination" />
        <EmptyState title="This skin was not recovered" action={<ButtonLink to={`/specimens/${specimenId}`}>To the animal</ButtonLink>}>
          There is nothing to read. If the skin was found after all, say so in its record first.
        </EmptyState>
      </>
    );
  }
  return <Examination sheet={sheet.data} page={page.data} today={about.data.today} observer={preferences.data.observer} />;
}
