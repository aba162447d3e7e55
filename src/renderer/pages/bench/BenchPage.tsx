import type { ReactElement } from 'react';
import { PageHead } from '../../parts/PageHead.tsx';

export function BenchPage({ photoId }: { photoId: string | null }): ReactElement {
  return <PageHead title="Bench" below={photoId === null ? 'Nothing chosen yet' : undefined} />;
}
