import type { ReactElement } from 'react';
import { PageHead } from '../../parts/PageHead.tsx';

export function IntakePage(): ReactElement {
  return <PageHead title="Intake" />;
}
