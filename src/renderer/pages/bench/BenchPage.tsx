import { useQuery } from '@tanstack/react-query';
import type { ReactElement } from 'react';
import { useAnswer } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { Bench } from './Bench.tsx';
import style from './BenchPage.module.css';
import { ChoosePhoto } from './choose/ChoosePhoto.tsx';
import { openingSheet } from './opening.ts';
import { useOpenPicture } from './useOpenPicture.ts';

/** How big was it? */
export function BenchPage({ photoId }: { photoId: string | null }): ReactElement {
  return photoId === null ? <ChoosePhoto /> : <OpeningBench key={photoId} photoId={photoId} />;
}

function OpeningBench({ photoId }: { photoId: string }): ReactElement {
  const preferences = useAnswer('GET /api/preferences', {});
  const picture = useOpenPicture(photoId);
  const sheet = useQuery(openingSheet(photoId));
  const failed = [sheet, preferences].find((answer) => answer.isLoadingError);
  if (failed !== undefined) {
    const again = () => Promise.all([sheet.refetch(), preferences.refetch()]);
    return (
      <div className={style['aside']}>
        <FailureNotice error={failed.error} action={<Button onClick={() => again()}>Try again</Button>} />
        <ButtonLink to="/bench">Choose another photo</ButtonLink>
      </div>
    );
  }
  if (sheet.data === undefined || preferences.data === undefined || picture === null)
    return <p className={style['aside']}>Laying the photo on the bench …</p>;
  return <Bench opened={sheet.data} picture={picture} observer={preferences.data.observer} />;
}
