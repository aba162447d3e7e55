import { useQueryClient } from '@tanstack/react-query';
import { type ReactElement, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { signsOfAnimal } from '../../../domain/sexing/live/animalFacts.ts';
import { isKept } from '../../../domain/specimen/counts.ts';
import { answerKey, useAnswer } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { EmptyState } from '../../parts/EmptyState.tsx';
import { ForecastNote } from '../../parts/forecast/ForecastNote.tsx';
import { NoMoltAwaited } from '../../parts/forecast/NoMoltAwaited.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { RemoveDialog } from '../../removing/RemoveDialog.tsx';
import { taxaOf } from '../cabinet/cabinetView.ts';
import { SexConflict } from '../examination/record/SexConflict.tsx';
import { skinNamer } from '../examination/skinNames.ts';
import { AnimalPhotos } from './AnimalPhotos.tsx';
import { DiedNotice } from './DiedNotice.tsx';
import { LifeLine } from './LifeLine.tsx';
import { LiveSigns } from './live/LiveSigns.tsx';
import { MoltDialog } from './MoltDialog.tsx';
import { SpecimenDialog } from './SpecimenDialog.tsx';
import { SpecimenHead } from './SpecimenHead.tsx';
import style from './SpecimenPage.module.css';
import { WholeLine } from './WholeLine.tsx';

type Open = 'edit' | 'remove' | 'molt' | null;

/** One animal: who it is, and its life molt by molt. */
export function SpecimenPage({ specimenId }: { specimenId: string }): ReactElement {
  const page = useAnswer('GET /api/specimens/{specimenId}', { path: { specimenId } });
  const { data: about } = useAnswer('GET /api/about', {});
  const { data: everybody } = useAnswer('GET /api/specimens', {});
  const [open, setOpen] = useState<Open>(null);
  const [, navigate] = useLocation();
  const client = useQueryClient();

  // A page that is there stays, with what is being written on it, though it could not be asked for again.
  if (page.isLoadingError) {
    return (
      <>
        <PageHead title="Specimen" />
        <FailureNotice error={page.error} action={<ButtonLink to="/cabinet">To the Cabinet</ButtonLink>} />
      </>
    );
  }
  if (!page.data || !about) return <p className={style['waiting']}>Opening the drawer …</p>;

  const { summary, molts, animalPhotos, forecast, liveSigns, observations } = page.data;
  const { specimen } = summary;
  const close = () => setOpen(null);
  const leave = () => {
    navigate('/cabinet');
    client.removeQueries({ queryKey: answerKey('GET /api/specimens/{specimenId}', { path: { specimenId } }) });
  };
  return (
    <>
      {page.error && <FailureNotice error={page.error} action={<Button onClick={() => page.refetch()}>Ask again</Button>} />}
      <p className={style['back']}>
        <Link to="/cabinet">Cabinet</Link>
      </p>
      <SpecimenHead
        summary={summary}
        actions={
          <>
            <Button kind="primary" icon="add" onClick={() => setOpen('molt')}>
              Add a molt
            </Button>
            <ButtonLink to={`/intake/${specimen.id}`} icon="photo">
              Bring photos in
            </ButtonLink>
            <ButtonLink to={`/ladder/${specimen.id}`} icon="ladder">
              Ladder
            </ButtonLink>
            {isKept(specimen.status) && <ButtonLink to={`/watch/${specimen.id}`}>Note what you see</ButtonLink>}
            <Button icon="edit" onClick={() => setOpen('edit')}>
              Change
            </Button>
          </>
        }
      />
      {summary.sex.conflict && (
        <SexConflict
          specimenId={specimen.id}
          determinations={molts.flatMap(({ determinations }) => determinations)}
          liveSigns={signsOfAnimal(liveSigns, observations)}
          nameOfSkin={skinNamer(page.data)}
        />
      )}
      <DiedNotice specimen={specimen} molts={molts.map((entry) => entry.molt)} />
      {forecast && <ForecastNote forecast={forecast} now={summary.instarNow} />}
      <NoMoltAwaited summary={summary} />
      <section aria-labelledby="life-line">
        <h2 id="life-line" className={style['heading']}>
          Life line
        </h2>
        {molts.length > 0 ? (
          <LifeLine summary={summary} molts={molts} today={about.today} />
        ) : (
          <EmptyState
            title="No molt on record"
            action={
              <Button icon="add" onClick={() => setOpen('molt')}>
                Add a molt
              </Button>
            }
          >
            Each molt ends one instar and leaves its skin. Add the first one here; or bring in a photo of a skin, and the molt is made on
            the way.
          </EmptyState>
        )}
      </section>
      <LiveSigns specimenId={specimen.id} molts={molts.map((entry) => entry.molt)} animalPhotos={animalPhotos} today={about.today} />
      <AnimalPhotos photos={animalPhotos} specimen={specimen} molts={molts.map((entry) => entry.molt)} />
      <WholeLine page={page.data} />
      <section className={style['end']}>
        <Button kind="quiet" icon="remove" onClick={() => setOpen('remove')}>
          Remove {specimen.code}
        </Button>
      </section>
      {open === 'edit' && <SpecimenDialog specimen={specimen} taxaInUse={taxaOf(everybody ?? [])} onClose={close} onSaved={close} />}
      {open === 'molt' && (
        <MoltDialog
          specimenId={specimen.id}
          molt={null}
          today={about.today}
          lastShed={molts.at(-1)?.molt.instarShed ?? null}
          onClose={close}
        />
      )}
      {open === 'remove' && <RemoveDialog kind="specimen" id={specimen.id} what={specimen.code} onClose={close} onRemoved={leave} />}
    </>
  );
}
