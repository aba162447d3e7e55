import type { ReactElement } from 'react';
import { PageHead } from '../../parts/PageHead.tsx';

export function LadderPage({ specimenId }: { specimenId: string | null }): ReactElement {
  return <PageHead title="Ladder" below={specimenId === null ? 'Nothing chosen yet' : undefined} />;
}
