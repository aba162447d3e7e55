import { useEffect, useState } from 'react';
import type { FileOutcome } from '../../../domain/intake/task.ts';
import { viewsOf } from '../../../domain/photo/view.ts';
import { ask } from '../../client/ask.ts';
import { useChange } from '../../client/queries.ts';
import { useIntakeRun } from '../intake/IntakeProvider.tsx';

export interface AttachedPhotos {
  attach(files: readonly File[]): void;
  readonly busy: boolean;
  /** Pictures for this animal are coming in. */
  readonly attaching: boolean;
  /** What stopped the whole of it. */
  readonly error: unknown;
  /** Files that did not come in, each with its reason. */
  readonly refused: readonly { readonly name: string; readonly outcome: Extract<FileOutcome, { kind: 'refused' }> }[];
}

/** Brings pictures in and gives them to one animal at once. Those that were here already and show something else stay as they are. */
export function useAttachedPhotos(specimenId: string): AttachedPhotos {
  const { task, busy, error: intakeError, bringIn } = useIntakeRun();
  const { mutateAsync: changePhoto } = useChange('PUT /api/photos/{photoId}');
  const [sending, setSending] = useState(false);
  const [importId, setImportId] = useState<string | null>(null);
  const [error, setError] = useState<unknown>(null);
  const [refused, setRefused] = useState<AttachedPhotos['refused']>([]);

  useEffect(() => {
    // Of several windows only this one knows which import is its own.
    if (importId === null || task?.id !== importId || task.state === 'running') return;
    setImportId(null);
    setRefused(task.files.flatMap(({ name, outcome }) => (outcome.kind === 'refused' ? [{ name, outcome }] : [])));
    const give = async () => {
      for (const { outcome } of task.files) {
        if (outcome.kind !== 'added' && outcome.kind !== 'already-here') continue;
        const { id, version, subject, view, takenOn, notes } = await ask('GET /api/photos/{photoId}', {
          path: { photoId: outcome.photoId },
        });
        if (subject.kind !== 'none') continue;
        const shown = viewsOf('animal').includes(view) ? view : 'other';
        const body = { subject: { kind: 'animal' as const, specimenId }, view: shown, takenOn, notes };
        await changePhoto({ path: { photoId: id }, version, body });
      }
    };
    give().catch(setError);
  }, [importId, task, specimenId, changePhoto]);

  return {
    attach: (files) => {
      setError(null);
      setRefused([]);
      setSending(true);
      bringIn(files)
        .then(setImportId, setError)
        .finally(() => setSending(false));
    },
    busy: busy || sending || importId !== null,
    attaching: sending || importId !== null,
    error: error ?? intakeError,
    refused,
  };
}
