import { useQuery } from '@tanstack/react-query';
import type { ReactElement } from 'react';
import { ask } from '../../client/ask.ts';
import { useAnswer } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { Bench } from './Bench.tsx';
import style from './BenchPage.module.css';
import { ChoosePhoto } from './choose/ChoosePhoto.tsx';

/** How big was it? */
export function BenchPage({ photoId }: { photoId: string | null }): ReactElement {
  return photoId === null ? <ChoosePhoto /> : <OpeningBench key={photoId} photoId={photoId} />;
}

function OpeningBench({ photoId }: { photoId: string }): ReactElement {
  const preferences = useAnswer('GET /api/preferences', {});
  // Kept for no longer than the page: a sheet from memory may be older than what the Bench itself saved last time.
  const sheet = useQuery({
    queryKey: ['bench-opening', photoId],
    queryFn: ({ signal }) => ask('GET /api/photos/{photoId}/bench', { path: { photoId }, signal }),
    gcTime: 0,
    staleTime: Number.POSITIVE_INFINITY,
    refetchOnReconnect: false,
    refetchOnWindowFocus: false,
  });
  const error = sheet.error ?? preferences.error;
  if (error !== null) {
    const again = () => Promise.all([sheet.refetch(), preferences.refetch()]);
    return (
      <div className={style['aside']}>
        <FailureNotice error={error} action={<Button onClick={() => again()}>Try again</Button>} />
        <ButtonLink to="/bench">Choose another photo</ButtonLink>
      </div>
    );
  }
  if (sheet.data === undefined || preferences.data === undefined) return <p className={style['aside']}>Laying the photo on the bench …</p>;
  return <Bench opened={sheet.data} observer={preferences.data.observer} />;
}
