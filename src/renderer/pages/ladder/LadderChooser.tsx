import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { AnswerOf } from '../../../api/contract/contract.ts';
import { counted } from '../../../words/counts.ts';
import { instarInWords } from '../../../words/instars.ts';
import { useAnswer } from '../../client/queries.ts';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { DayText } from '../../parts/DayText.tsx';
import { EmptyState } from '../../parts/EmptyState.tsx';
import { EstimateText } from '../../parts/EstimateText.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { Taxon } from '../../parts/Taxon.tsx';
import { Thumb } from '../../parts/Thumb.tsx';
import style from './LadderChooser.module.css';

type Summary = AnswerOf<'GET /api/specimens'>[number];

/** Whose ladder? Animals with molts on record first. */
export function LadderChooser(): ReactElement {
  const answer = useAnswer('GET /api/specimens', {});
  const animals = answer.data?.toSorted((a, b) => Number(b.recordedMolts > 0) - Number(a.recordedMolts > 0));
  return (
    <>
      <PageHead title="Ladder" below="The skins of one animal in a row, molt after molt, show how it grew. Whose?" />
      {answer.isError && <FailureNotice error={answer.error} />}
      {animals?.length === 0 && (
        <EmptyState
          title="No animals yet"
          action={
            <ButtonLink to="/cabinet" kind="primary">
              To the Cabinet
            </ButtonLink>
          }
        >
          A ladder lines up the skins of one animal, oldest first. It begins with an animal in the Cabinet.
        </EmptyState>
      )}
      {animals && animals.length > 0 && (
        <ul className={style['animals']}>
          {animals.map((animal) => (
            <AnimalItem key={animal.specimen.id} animal={animal} />
          ))}
        </ul>
      )}
    </>
  );
}

function AnimalItem({ animal: { specimen, recordedMolts, lastMolt, lastMeasuredSkin, coverPhotoId } }: { animal: Summary }): ReactElement {
  return (
    <li>
      <Link to={`/ladder/${specimen.id}`} className={style['animal'] ?? ''}>
        <Thumb photoId={coverPhotoId} alt="" className={style['thumb']} />
        <span className={style['who']}>
          <span className={style['name']}>{specimen.name ?? specimen.code}</span>
          <span className={style['taxon']}>
            <Taxon name={specimen.taxon} />
            {specimen.name && ` · ${specimen.code}`}
          </span>
        </span>
        <span className={style['molts']}>
          {recordedMolts === 0 ? 'no molt on record' : `${counted(recordedMolts, 'molt')} on record`}
          {lastMolt && (
            <span>
              last <DayText day={lastMolt.from} to={lastMolt.to} />
            </span>
          )}
        </span>
        <span className={style['size']}>
          {lastMeasuredSkin ? (
            <>
              <span>
                last measured carapace,{' '}
                {lastMeasuredSkin.instar ? instarInWords(lastMeasuredSkin.instar) : `molt ${lastMeasuredSkin.recordedMolt}`}
              </span>
              <EstimateText estimate={lastMeasuredSkin.carapaceLengthMm} />
            </>
          ) : (
            <span>no skin measured</span>
          )}
        </span>
      </Link>
    </li>
  );
}
