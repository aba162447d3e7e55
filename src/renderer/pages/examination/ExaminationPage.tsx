import type { ReactElement } from 'react';
import { PageHead } from '../../parts/PageHead.tsx';

export function ExaminationPage({ exuviaId }: { exuviaId: string | null }): ReactElement {
  return <PageHead title="Examination" below={exuviaId === null ? 'Nothing chosen yet' : undefined} />;
}
