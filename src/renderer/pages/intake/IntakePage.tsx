import { type ReactElement, type ReactNode, useState } from 'react';
import { counted } from '../../../words/counts.ts';
import { wordsForError } from '../../../words/failures.ts';
import { useAnswer } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { useToast } from '../../parts/Toast.tsx';
import { useElementHeight } from '../../parts/useElementHeight.ts';
import { AssignPanel } from './AssignPanel.tsx';
import { DropZone } from './DropZone.tsx';
import { ImportReport } from './ImportReport.tsx';
import style from './IntakePage.module.css';
import { useIntakeRun } from './IntakeProvider.tsx';
import { type Placed, PlacedList } from './PlacedList.tsx';
import { ResumeOffer } from './ResumeOffer.tsx';
import { inOrderTaken } from './taken.ts';
import { useAssign } from './useAssign.ts';
import { WaitingPhotos } from './WaitingPhotos.tsx';

interface Props {
  /** The animal, and the molt, the keeper came from to bring in photos of; null when they came by themselves. */
  specimenId: string | null;
  moltId: string | null;
}

/** What came off the camera? Photos come in, and each is given to a skin or an animal. */
export function IntakePage({ specimenId, moltId }: Props): ReactElement {
  const run = useIntakeRun();
  const waiting = useAnswer('GET /api/photos', { query: { unassigned: 'true' } });
  const specimens = useAnswer('GET /api/specimens', {});
  const { data: about } = useAnswer('GET /api/about', {});
  const [touched, setTouched] = useState<ReadonlySet<string> | null>(null);
  const [placed, setPlaced] = useState<readonly Placed[]>([]);
  const [takenBack, setTakenBack] = useState<Placed | null>(null);
  // Above the form: where only some of the photos could be given away, the form for the others says why.
  const assigning = useAssign();
  const toast = useToast();

  const photos = inOrderTaken(waiting.data ?? []);
  // A single photo is chosen by itself: nobody has to say which one.
  const chosen = touched ?? new Set(photos.length === 1 ? photos.map((photo) => photo.id) : []);
  const chosenPhotos = photos.filter((photo) => chosen.has(photo.id));
  const lastGivenTo = takenBack?.photos.some(({ id }) => id === chosenPhotos[0]?.id) ? takenBack.specimenId : null;
  const cameFrom = specimens.data?.find((summary) => summary.specimen.id === specimenId)?.specimen;

  const takeBack = (one: Placed) => {
    assigning.takeBack(one.photos, one.made).then(
      () => {
        setPlaced((before) => before.filter((other) => other !== one));
        // As before they were given away, unless others are in hand by now.
        setTouched((before) => (before === null || before.size === 0 ? new Set(one.photos.map(({ id }) => id)) : before));
        setTakenBack(one);
      },
      (error: unknown) => toast({ message: `${wordsForError(error).happened} ${wordsForError(error).advice}` }),
    );
  };
  const onPlaced = (one: Placed) => {
    setPlaced((before) => [one, ...before]);
    setTouched(null);
    toast({ message: `${counted(one.photos.length, 'photo')} given to ${one.code}.`, action: { label: 'Undo', run: () => takeBack(one) } });
  };

  return (
    <>
      <PageHead
        title="Intake"
        below={
          cameFrom
            ? `Photos for ${cameFrom.code}. What is already waiting below can be given to it as well.`
            : 'What came off the camera, and whose skin it shows.'
        }
      />
      <div className={style['stack']}>
        <ResumeOffer />
        <DropZone onFiles={(files) => void run.bringIn(files)} disabled={run.busy} compact={photos.length > 0} />
        <ImportReport />
        {waiting.error && <FailureNotice error={waiting.error} action={<Button onClick={() => waiting.refetch()}>Ask again</Button>} />}
        {specimens.error && <FailureNotice error={specimens.error} />}
        {photos.length === 0 ? (
          <PlacedList placed={placed} onTakeBack={takeBack} />
        ) : (
          <div className={style['assigning']}>
            <WaitingPhotos photos={photos} chosen={chosen} onChoose={setTouched} />
            <BesideThem>
              <PlacedList placed={placed} onTakeBack={takeBack} />
              {chosenPhotos.length > 0 && specimens.data && about ? (
                <AssignPanel
                  key={`${chosenPhotos[0]?.id} ${lastGivenTo}`}
                  photos={chosenPhotos}
                  specimens={specimens.data}
                  lastGivenTo={lastGivenTo}
                  likelySpecimenId={specimenId ?? placed[0]?.specimenId ?? null}
                  likelyMoltId={moltId}
                  today={about.today}
                  assigning={assigning}
                  onPlaced={onPlaced}
                />
              ) : (
                <p className={style['hint']}>Choose one photo, or several of the same skin, and say whose they are.</p>
              )}
            </BesideThem>
          </div>
        )}
        {waiting.data?.length === 0 && placed.length === 0 && !run.busy && (
          <p className={style['hint']}>No photo is waiting. Each one you bring in will ask here whose skin it shows.</p>
        )}
      </div>
    </>
  );
}

/** Stays in sight beside a long row of photos. */
function BesideThem({ children }: { children: ReactNode }): ReactElement {
  const { ref, heightPx } = useElementHeight<HTMLDivElement>();
  return (
    <div
      ref={ref}
      className={style['beside']}
      // Higher than the window it stands still with its lower end in sight, where the button is.
      style={{ top: `min(var(--space-4), 100vh - ${heightPx}px - var(--space-4))` }}
    >
      {children}
    </div>
  );
}
