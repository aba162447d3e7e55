import type { ReactElement } from 'react';
import { PageHead } from '../../parts/PageHead.tsx';

export function CabinetPage(): ReactElement {
  return <PageHead title="Cabinet" />;
}
