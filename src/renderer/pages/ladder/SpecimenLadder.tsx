import { type ReactElement, useState } from 'react';
import { Link } from 'wouter';
import type { AnswerOf } from '../../../api/contract/contract.ts';
import type { CalendarDay } from '../../../domain/dates.ts';
import { isKept } from '../../../domain/specimen/counts.ts';
import type { Specimen } from '../../../domain/specimen/specimen.ts';
import { pastInWords } from '../../../words/ladder.ts';
import { useAnswer } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { EmptyState } from '../../parts/EmptyState.tsx';
import { ForecastNote } from '../../parts/forecast/ForecastNote.tsx';
import { NoMoltAwaited } from '../../parts/forecast/NoMoltAwaited.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { SampleMark } from '../../parts/SampleMark.tsx';
import { Taxon } from '../../parts/Taxon.tsx';
import { AnimalNow } from './AnimalNow.tsx';
import { livingNowOf } from './chart/livingNow.ts';
import { measuresIn } from './chart/measures.ts';
import { Compare } from './compare/Compare.tsx';
import { Growth } from './Growth.tsx';
import { SkinGallery } from './gallery/SkinGallery.tsx';
import style from './LadderPage.module.css';
import { Legs } from './Legs.tsx';
import { LitProvider } from './lit.tsx';
import { NoRung } from './NoRung.tsx';
import { Questions } from './questions/Questions.tsx';
import { RatioAccount } from './RatioAccount.tsx';
import { RungTable } from './RungTable.tsx';

type Page = AnswerOf<'GET /api/specimens/{specimenId}/ladder'>;
type Animal = AnswerOf<'GET /api/specimens/{specimenId}'>;

export function SpecimenLadder({ specimenId }: { specimenId: string }): ReactElement {
  const answer = useAnswer('GET /api/specimens/{specimenId}/ladder', { path: { specimenId } });
  const animal = useAnswer('GET /api/specimens/{specimenId}', { path: { specimenId } });
  const about = useAnswer('GET /api/about', {});
  // What the animal's record adds stands above the skins: shown at once, nothing moves under the pointer.
  if (answer.isPending || animal.isPending || about.isPending)
    return <PageHead title="Ladder" below={<span role="status">Setting the skins in order …</span>} />;
  if (answer.isLoadingError) {
    return (
      <>
        <PageHead title="Ladder" />
        <FailureNotice error={answer.error} action={<ButtonLink to="/ladder">Choose another animal</ButtonLink>} />
      </>
    );
  }
  return <LoadedLadder page={answer.data} animal={animal.data ?? null} today={about.data?.today ?? null} />;
}

/** `animal` and `today` are null where they could not be had: the skins are shown all the same. */
function LoadedLadder({
  page: { specimen, instarNow, ladder, growth, gallery },
  animal,
  today,
}: {
  page: Page;
  animal: Animal | null;
  today: CalendarDay | null;
}): ReactElement {
  const { rungs } = ladder;
  const matureMaleBy = animal?.summary.matureMaleBy ?? null;
  const called = specimen.name ?? specimen.code;
  // After a molt that was watched and is not on record, the interval that runs is another one.
  const isOpen = isKept(specimen.status) && animal !== null && !animal.summary.moltWatched;
  const living = isOpen && today !== null ? livingNowOf(today, instarNow, animal.forecast) : null;
  return (
    <>
      <PageHead
        above={<Link to="/ladder">Ladder</Link>}
        title={called}
        windowTitle={`Ladder of ${called}`}
        below={
          <>
            <Taxon name={specimen.taxon} />
            {specimen.name && ` · ${specimen.code}`} {specimen.sample && <SampleMark />}
          </>
        }
        actions={
          <ButtonLink to={`/specimens/${specimen.id}`} kind="quiet">
            Life line of {called}
          </ButtonLink>
        }
      />
      {rungs.length === 0 ? (
        <>
          {animal?.forecast && <ForecastNote forecast={animal.forecast} now={instarNow} />}
          {animal && <NoMoltAwaited summary={animal.summary} />}
          <NoRung specimenId={specimen.id} live={growth.live} />
        </>
      ) : (
        <>
          <p className={style['past']}>{pastInWords(called, specimen.status === 'living' ? instarNow : undefined)}</p>
          {animal?.forecast && <ForecastNote forecast={animal.forecast} now={instarNow} />}
          {animal && <NoMoltAwaited summary={animal.summary} />}
          <Questions
            specimenId={specimen.id}
            rungs={rungs}
            molts={animal?.molts.map(({ molt }) => molt) ?? []}
            growth={matureMaleBy ? { ...growth, maturity: null } : growth}
          />
          <LitProvider>
            <div className={`${style['first']} ${gallery.length > 0 ? style['side'] : ''}`}>
              <section className={style['section']} aria-labelledby="growth">
                <h2 id="growth">Growth</h2>
                {measuresIn(ladder, growth.live).length === 0 && <NothingMeasured photoId={gallery[0]?.photo.id ?? null} />}
                <Growth ladder={ladder} growth={growth} subject={specimen} today={isKept(specimen.status) ? today : null} living={living} />
              </section>
              {gallery.length > 0 && (
                <section className={style['section']} aria-labelledby="skins">
                  <h2 id="skins">The skins at one scale</h2>
                  <SkinGallery specimenId={specimen.id} called={called} rungs={rungs} items={gallery} />
                </section>
              )}
            </div>
            <section className={style['section']} aria-labelledby="rungs">
              <h2 id="rungs">Rung by rung</h2>
              <RungTable rungs={rungs} live={growth.live} inDoubt={growth.inDoubt} specimenId={specimen.id} />
            </section>
            <RatioAccount rungs={rungs} growth={growth} />
            <div className={specimen.status === 'living' ? style['side'] : undefined}>
              <section className={style['section']} aria-labelledby="legs">
                <h2 id="legs">Legs</h2>
                <Legs rungs={rungs} growth={growth} />
              </section>
              {specimen.status === 'living' && (
                <section className={style['section']} aria-labelledby="now">
                  <h2 id="now">The living animal now</h2>
                  <AnimalNow rungs={rungs} growth={growth} called={called} />
                </section>
              )}
            </div>
            <section className={style['section']} aria-labelledby="beside">
              <h2 id="beside">Beside others</h2>
              <LaterCompare specimen={specimen} />
            </section>
          </LitProvider>
        </>
      )}
    </>
  );
}

/** The other ladders are fetched when they are wanted. */
function LaterCompare({ specimen }: { specimen: Specimen }): ReactElement {
  const [open, setOpen] = useState(false);
  if (open) return <Compare specimen={specimen} />;
  return (
    <p className={style['small']}>
      Siblings of its egg sac, or any other animals, on one chart.{' '}
      <Button icon="ladder" onClick={() => setOpen(true)}>
        Compare
      </Button>
    </p>
  );
}

function NothingMeasured({ photoId }: { photoId: string | null }): ReactElement {
  return (
    <EmptyState
      title="No skin measured yet"
      action={
        photoId === null ? (
          <ButtonLink to="/intake" kind="primary">
            Bring in photos of the skins
          </ButtonLink>
        ) : (
          <ButtonLink to={`/bench/${photoId}`} kind="primary" icon="measure">
            Measure the first skin
          </ButtonLink>
        )
      }
    >
      Sizes come from photos measured on the Bench. From two skins in a row up there is a ratio, from three a fitted growth.
    </EmptyState>
  );
}
