import { type ReactElement, useState } from 'react';
import { useLocation } from 'wouter';
import { useAnswer, useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { EmptyState } from '../../parts/EmptyState.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { SpecimenDialog } from '../specimen/SpecimenDialog.tsx';
import { CabinetList } from './CabinetList.tsx';
import style from './CabinetPage.module.css';
import { CabinetTools } from './CabinetTools.tsx';
import { type CabinetView, FIRST_VIEW, shownIn, taxaOf } from './cabinetView.ts';
import { SampleNote } from './SampleNote.tsx';
import { TradeCount } from './TradeCount.tsx';
import { Welcome } from './Welcome.tsx';

interface Props {
  /** Kept above this page, so that coming back from an animal finds the same view. */
  view: CabinetView;
  onView: (view: CabinetView) => void;
}

/** Whom do I keep? Every specimen, to be searched, narrowed and sorted. */
export function CabinetPage({ view, onView }: Props): ReactElement {
  const specimens = useAnswer('GET /api/specimens', {});
  const { data: about } = useAnswer('GET /api/about', {});
  const [adding, setAdding] = useState(false);
  const { data: preferences } = useAnswer('GET /api/preferences', {});
  const choose = useChange('PUT /api/preferences');
  const [, navigate] = useLocation();
  const all = specimens.data;

  // What was just chosen counts at once, and also where it could not be kept.
  const begunEmpty = choose.variables?.body.begunEmpty ?? preferences?.begunEmpty;
  const beginEmpty = (wanted: boolean) => preferences && choose.mutate({ body: { ...preferences, begunEmpty: wanted } });
  const nothingHere = all?.length === 0 && about?.photos === 0;
  if (nothingHere && begunEmpty === false) return <Welcome onBeginEmpty={() => beginEmpty(true)} />;

  const addButton = (
    <Button kind="primary" icon="add" onClick={() => setAdding(true)}>
      Add a specimen
    </Button>
  );
  const shown = all ? shownIn(view, all) : [];
  return (
    <>
      <PageHead
        title="Cabinet"
        below={all && all.length > 0 ? <TradeCount summaries={all} /> : undefined}
        actions={all && all.length > 0 ? addButton : undefined}
      />
      {specimens.error && <FailureNotice error={specimens.error} action={<Button onClick={() => specimens.refetch()}>Ask again</Button>} />}
      {choose.error && <FailureNotice error={choose.error} />}
      {specimens.isPending && <p className={style['waiting']}>Opening the cabinet …</p>}
      {all?.length === 0 && about && (
        <EmptyState
          title="An empty cabinet"
          action={
            <>
              {addButton}
              <ButtonLink to="/intake" icon="photo">
                Bring photos in
              </ButtonLink>
              {nothingHere && (
                <Button kind="quiet" onClick={() => beginEmpty(false)}>
                  Look round a sample first
                </Button>
              )}
            </>
          }
        >
          Every tarantula you keep gets an entry here: its code, its name, and from then on its molts, skins and sizes. Begin with one
          animal; photos can also come first, through Intake.
        </EmptyState>
      )}
      {all && all.length > 0 && (
        <>
          {all.some((summary) => summary.specimen.sample) && <SampleNote />}
          <CabinetTools view={view} onView={onView} shown={shown.length} total={all.length} />
          {shown.length > 0 ? (
            <CabinetList summaries={shown} view={view} onView={onView} />
          ) : (
            <EmptyState
              title="Nobody fits"
              action={<Button onClick={() => onView({ ...FIRST_VIEW, status: 'any' })}>Show all animals</Button>}
            >
              None of the {all.length} animals on record fits this search. The dead and the sold are only shown when asked for.
            </EmptyState>
          )}
        </>
      )}
      {adding && (
        <SpecimenDialog
          specimen={null}
          taxaInUse={taxaOf(all ?? [])}
          onClose={() => setAdding(false)}
          onSaved={(specimen) => navigate(`/specimens/${specimen.id}`)}
        />
      )}
    </>
  );
}
