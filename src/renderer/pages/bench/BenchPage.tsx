import { useQuery } from '@tanstack/react-query';
import { type ReactElement, useState } from 'react';
import { useAnswer } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { Bench } from './Bench.tsx';
import style from './BenchPage.module.css';
import { ChoosePhoto } from './choose/ChoosePhoto.tsx';
import { openingSheet } from './opening.ts';
import { useUnsentMarks } from './UnsentMarks.tsx';
import { useOpenPicture } from './useOpenPicture.ts';

/** How big was it? */
export function BenchPage({ photoId }: { photoId: string | null }): ReactElement {
  return photoId === null ? <ChoosePhoto /> : <OpeningBench key={photoId} photoId={photoId} />;
}

function OpeningBench({ photoId }: { photoId: string }): ReactElement {
  const preferences = useAnswer('GET /api/preferences', {});
  const picture = useOpenPicture(photoId);
  const sheet = useQuery(openingSheet(photoId));
  // Taken once: when the last of it is stored meanwhile, the Bench goes on with the same work.
  const { works } = useUnsentMarks();
  const [held] = useState(() => works.findLast((work) => work.sheet.photo.id === photoId) ?? null);
  const failed = [sheet, preferences].find((answer) => answer.isLoadingError);
  if (failed !== undefined && held === null) {
    const again = () => Promise.all([sheet.refetch(), preferences.refetch()]);
    return (
      <div className={style['aside']}>
        <FailureNotice error={failed.error} action={<Button onClick={() => again()}>Try again</Button>} />
        <ButtonLink to="/bench">Choose another photo</ButtonLink>
      </div>
    );
  }
  const opened = held?.sheet ?? sheet.data;
  const observer = preferences.data?.observer ?? held?.pass.observer;
  if (opened === undefined || observer === undefined || picture === null)
    return <p className={style['aside']}>Laying the photo on the bench …</p>;
  return <Bench opened={opened} held={held} picture={picture} observer={observer} />;
}
