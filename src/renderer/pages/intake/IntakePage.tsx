import type { ReactElement } from 'react';
import { PageHead } from '../../parts/PageHead.tsx';

export function IntakePage(_target: { specimenId: string | null; moltId: string | null }): ReactElement {
  return <PageHead title="Intake" />;
}
