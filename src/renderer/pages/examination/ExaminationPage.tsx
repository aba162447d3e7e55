import type { ReactElement } from 'react';
import { useAnswer } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { EmptyState } from '../../parts/EmptyState.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { SkinChooser } from './choose/SkinChooser.tsx';
import { Examination } from './Examination.tsx';
import { GeneraPage } from './genera/GeneraPage.tsx';
import { NumbersPage } from './numbers/NumbersPage.tsx';
import { OutcomesPage } from './outcomes/OutcomesPage.tsx';
import { PlatesPage } from './plates/PlatesPage.tsx';
import type { StepsLeft } from './reading/useReading.ts';

/** Female or male? First which skin, then its guided reading; beside them what all readings rest on. */
export function ExaminationPage({ place, left }: { place: string | null; left: StepsLeft }): ReactElement {
  switch (place) {
    case null:
      return <SkinChooser />;
    case 'numbers':
      return <NumbersPage />;
    case 'outcomes':
      return <OutcomesPage />;
    case 'genera':
      return <GeneraPage />;
    case 'plates':
      return <PlatesPage />;
    default:
      return <ExaminationOf key={place} exuviaId={place} left={left} />;
  }
}

function ExaminationOf({ exuviaId, left }: { exuviaId: string; left: StepsLeft }): ReactElement {
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
  const { today } = about.data;
  return <Examination sheet={sheet.data} page={page.data} today={today} observer={preferences.data.observer} left={left} />;
}
