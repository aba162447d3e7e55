import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { BenchCandidate } from '../../../../api/contract/bench.ts';
import type { Instar } from '../../../../domain/molting/instar.ts';
import { dayInWords } from '../../../../words/dates.ts';
import { instarInWords } from '../../../../words/instars.ts';
import { VIEW_LABELS } from '../../../../words/labels.ts';
import { useAnswer } from '../../../client/queries.ts';
import { Button } from '../../../parts/Button.tsx';
import { ButtonLink } from '../../../parts/ButtonLink.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { Taxon } from '../../../parts/Taxon.tsx';
import { Thumb } from '../../../parts/Thumb.tsx';
import { PrintOurCard } from '../scale/PrintOurCard.tsx';
import style from './ChoosePhoto.module.css';
import { inOrderOfWork } from './order.ts';
import { waitingInWords } from './waitingInWords.ts';

/** The Bench without a photo: skins first, and of these the unmeasured first. */
export function ChoosePhoto(): ReactElement {
  const candidates = useAnswer('GET /api/bench', {});
  const all = candidates.data;
  return (
    <div className={style['page']}>
      <PageHead title="Bench" below={all && all.length > 0 ? waitingInWords(all) : undefined} />
      {candidates.error && (
        <FailureNotice error={candidates.error} action={<Button onClick={() => candidates.refetch()}>Ask again</Button>} />
      )}
      {all?.length === 0 && (
        <EmptyState
          title="Nothing to measure yet"
          action={
            <ButtonLink to="/intake" kind="primary">
              Bring in photos
            </ButtonLink>
          }
        >
          The Bench measures a skin on its photo, beside an object of known size. Photos come in through Intake.
        </EmptyState>
      )}
      {all && all.length > 0 && (
        <ul className={style['photos']}>
          {inOrderOfWork(all).map((candidate) => (
            <li key={candidate.photo.id}>
              <Card candidate={candidate} />
            </li>
          ))}
        </ul>
      )}
      {all && (
        <section className={style['before']} aria-label="Before the next photo">
          <p>A card of our own beside the skin measures best, and is found without a click.</p>
          <PrintOurCard />
        </section>
      )}
    </div>
  );
}

function Card({ candidate: { photo, specimen, instar, measured } }: { candidate: BenchCandidate }): ReactElement {
  return (
    <Link to={`/bench/${photo.id}`} className={style['card']}>
      <Thumb photoId={photo.id} alt="" className={style['thumb']} />
      <span className={style['name']}>{specimen === null ? photo.originalName : (specimen.name ?? specimen.code)}</span>
      {specimen !== null && <Taxon name={specimen.taxon} />}
      <span className={style['soft']}>
        {subjectInWords(photo.subject.kind, instar)}
        {photo.view === 'other' ? '' : `, ${VIEW_LABELS[photo.view]}`}
      </span>
      <span className={style['soft']}>
        {photo.takenOn === null ? 'day unknown' : dayInWords(photo.takenOn)} · {measured ? 'measured' : 'not measured yet'}
      </span>
    </Link>
  );
}

function subjectInWords(kind: BenchCandidate['photo']['subject']['kind'], instar: Instar | null): string {
  if (kind === 'none') return 'not given to an animal yet';
  if (kind === 'animal') return 'living animal';
  return instar === null ? 'skin' : `skin of ${instarInWords(instar)}`;
}
