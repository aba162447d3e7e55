import { type ReactElement, useState } from 'react';
import type { SpecimenSummary } from '../../../api/contract/specimens.ts';
import type { Photo } from '../../../domain/photo/photo.ts';
import { counted } from '../../../words/counts.ts';
import { useAnswer } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { taxaOf } from '../cabinet/cabinetView.ts';
import { SpecimenDialog } from '../specimen/SpecimenDialog.tsx';
import style from './AssignPanel.module.css';
import { OwnerForm } from './OwnerForm.tsx';
import type { Placed } from './PlacedList.tsx';
import { SpecimenPicker } from './SpecimenPicker.tsx';
import { suggestSpecimen } from './suggesting.ts';
import type { Assigning } from './useAssign.ts';

interface Props {
  /** At least one, in the order shown. */
  photos: readonly Photo[];
  specimens: readonly SpecimenSummary[];
  /** Whose they were before they were taken back; null for photos that were nobody's. */
  lastGivenTo: string | null;
  /** Where the keeper came from, or whom they gave the last photos to; used where the file names say nothing. */
  likelySpecimenId: string | null;
  likelyMoltId: string | null;
  today: string;
  assigning: Assigning;
  onPlaced: (placed: Placed) => void;
}

/** Asks of the chosen photos, together: whose skin, of which molt, from which side. */
export function AssignPanel({
  photos,
  specimens,
  lastGivenTo,
  likelySpecimenId,
  likelyMoltId,
  today,
  assigning,
  onPlaced,
}: Props): ReactElement {
  const animals = specimens.map((summary) => summary.specimen);
  const suggested = suggestSpecimen(photos[0]?.originalName ?? '', animals) ?? likelySpecimenId;
  const [adding, setAdding] = useState(false);
  const [chosen, setChosen] = useState(lastGivenTo);
  const specimenId = chosen ?? suggested;
  const page = useAnswer('GET /api/specimens/{specimenId}', { path: { specimenId: specimenId ?? '' } }, { enabled: specimenId !== null });
  // The form suggests once, from what it finds: so it waits for molts that were only just added, and then stays as it is.
  const [fresh, setFresh] = useState<string | null>(null);
  if (page.data && !page.isFetching && fresh !== specimenId) setFresh(specimenId);

  return (
    <section className={style['panel']} aria-label="Whose skin is it?">
      <p className={style['what']}>{photos.length === 1 ? photos[0]?.originalName : `${counted(photos.length, 'photo')} together`}</p>
      <SpecimenPicker specimens={specimens} chosen={specimenId} onChoose={setChosen} />
      <div>
        <Button kind={specimens.length === 0 ? 'primary' : 'quiet'} icon="add" onClick={() => setAdding(true)}>
          {specimens.length === 0 ? 'Add your first animal' : 'An animal not on record yet'}
        </Button>
      </div>
      {adding && (
        <SpecimenDialog
          specimen={null}
          taxaInUse={taxaOf(specimens)}
          onClose={() => setAdding(false)}
          onSaved={(added) => setChosen(added.id)}
        />
      )}
      {page.error && specimenId !== null && <FailureNotice error={page.error} />}
      {page.data && fresh === specimenId && (
        <OwnerForm
          key={page.data.summary.specimen.id}
          photos={photos}
          page={page.data}
          likelyMoltId={likelyMoltId}
          today={today}
          assigning={assigning}
          onPlaced={onPlaced}
        />
      )}
    </section>
  );
}
