import type { ReactElement } from 'react';
import type { RemovableKind, Removal } from '../../domain/removal.ts';
import { counted } from '../../words/counts.ts';
import { useAnswer, useChange } from '../client/queries.ts';
import { Button } from '../parts/Button.tsx';
import { Dialog } from '../parts/Dialog.tsx';
import { FailureNotice } from '../parts/Notice.tsx';
import style from './RemoveDialog.module.css';
import { useRemovals } from './RemovedProvider.tsx';
import { whatGoesToo } from './removalWords.ts';

interface Props {
  kind: RemovableKind;
  id: string;
  /** What goes, as the keeper knows it: "G-012", "the molt of 5 Mar 2026". */
  what: string;
  /** What else it means, where that is not plain. */
  note?: string;
  onClose: () => void;
  onRemoved?: () => void;
  /** It was put back at once; what `onRemoved` did may be taken back. */
  onRestored?: () => void;
}

/** Asks before something is removed, says exactly what goes with it, and offers to undo it afterwards. */
export function RemoveDialog({ kind, id, what, note, onClose, onRemoved, onRestored }: Props): ReactElement {
  const preview = useAnswer('GET /api/removals/preview', { query: { kind, id } }, { keep: false });
  const remove = useRemoval(kind, id);
  const { announce } = useRemovals();
  const goes = preview.data ? whatGoesToo(kind, preview.data) : '';
  const confirm = () =>
    remove.run((removal) => {
      announce({ removalId: removal.id, message: `Removed ${what}.`, ...(onRestored && { onRestored }) });
      onClose();
      onRemoved?.();
    });
  return (
    <Dialog
      title={`Remove ${what}?`}
      onClose={onClose}
      foot={
        <>
          <Button onClick={onClose}>Keep it</Button>
          <Button kind="danger" icon="remove" busy={remove.isPending || preview.isPending} disabled={preview.isError} onClick={confirm}>
            Remove
          </Button>
        </>
      }
    >
      {preview.error && <FailureNotice error={preview.error} />}
      {remove.error && <FailureNotice error={remove.error} />}
      {preview.data && (
        <div className={style['words']}>
          <p>{goes === '' ? 'Nothing else goes with it.' : `With it go ${goes}.`}</p>
          {preview.data.photosUnassigned > 0 && (
            <p>
              {counted(preview.data.photosUnassigned, 'photo')} {preview.data.photosUnassigned === 1 ? 'stays' : 'stay'} in the archive with
              all readings and can be given to another skin in Intake.
            </p>
          )}
          {note !== undefined && <p>{note}</p>}
          <p>You can undo this until Exuviary ends, whether it is closed or breaks off: at once, or from Settings later.</p>
        </div>
      )}
    </Dialog>
  );
}

interface RemovalRun {
  isPending: boolean;
  error: Error | null;
  run: (onSuccess: (removal: Removal) => void) => void;
}

function useRemoval(kind: RemovableKind, id: string): RemovalRun {
  const specimen = useChange('DELETE /api/specimens/{specimenId}');
  const molt = useChange('DELETE /api/molts/{moltId}');
  const exuvia = useChange('DELETE /api/exuviae/{exuviaId}');
  const photo = useChange('DELETE /api/photos/{photoId}');
  const reading = useChange('DELETE /api/readings/{readingId}');
  const observation = useChange('DELETE /api/observations/{observationId}');
  const printCheck = useChange('DELETE /api/print-checks/{printCheckId}');
  const { isPending, error } = { specimen, molt, exuvia, photo, reading, observation, 'print-check': printCheck }[kind];
  const runs: Record<RemovableKind, RemovalRun['run']> = {
    specimen: (onSuccess) => specimen.mutate({ path: { specimenId: id } }, { onSuccess }),
    molt: (onSuccess) => molt.mutate({ path: { moltId: id } }, { onSuccess }),
    exuvia: (onSuccess) => exuvia.mutate({ path: { exuviaId: id } }, { onSuccess }),
    photo: (onSuccess) => photo.mutate({ path: { photoId: id } }, { onSuccess }),
    reading: (onSuccess) => reading.mutate({ path: { readingId: id } }, { onSuccess }),
    observation: (onSuccess) => observation.mutate({ path: { observationId: id } }, { onSuccess }),
    'print-check': (onSuccess) => printCheck.mutate({ path: { printCheckId: id } }, { onSuccess }),
  };
  return { isPending, error, run: runs[kind] };
}
