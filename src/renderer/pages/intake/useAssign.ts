import { useState } from 'react';
import type { MoltEntry } from '../../../api/contract/specimens.ts';
import type { CalendarDay } from '../../../domain/dates.ts';
import type { MoltDraft } from '../../../domain/molting/molt.ts';
import type { Photo, PhotoSubject, PhotoView } from '../../../domain/photo/photo.ts';
import { useChange } from '../../client/queries.ts';

export type Owner =
  | { readonly kind: 'animal'; readonly specimenId: string }
  | { readonly kind: 'skin'; readonly entry: MoltEntry }
  | { readonly kind: 'skin-of-new-molt'; readonly specimenId: string; readonly molt: MoltDraft };

export interface Assignment {
  readonly photos: readonly Photo[];
  readonly owner: Owner;
  readonly view: PhotoView;
  /** For those photos whose camera wrote no date. */
  readonly takenOnIfUnknown: CalendarDay | null;
}

export interface Assigning {
  readonly isPending: boolean;
  readonly error: unknown;
  /** Gives photos to a skin or an animal, making molt and skin where they are new; answers the photos as they are now. */
  assign(assignment: Assignment, onDone: (photos: readonly Photo[]) => void): void;
  /** Puts photos back among those that wait. */
  release(photos: readonly Photo[]): Promise<void>;
}

const NEW_SKIN = { recovered: true, grade: null, completeness: null, storagePlace: null, notes: '' } as const;

export function useAssign(): Assigning {
  const addMolt = useChange('POST /api/specimens/{specimenId}/molts');
  const addSkin = useChange('POST /api/molts/{moltId}/exuvia');
  const changePhoto = useChange('PUT /api/photos/{photoId}');
  const [isPending, setPending] = useState(false);
  const [error, setError] = useState<unknown>(null);

  const subjectOf = async (owner: Owner): Promise<PhotoSubject> => {
    if (owner.kind === 'animal') return { kind: 'animal', specimenId: owner.specimenId };
    if (owner.kind === 'skin' && owner.entry.exuvia) return { kind: 'skin', exuviaId: owner.entry.exuvia.id };
    const moltId =
      owner.kind === 'skin'
        ? owner.entry.molt.id
        : (await addMolt.mutateAsync({ path: { specimenId: owner.specimenId }, body: owner.molt })).id;
    const skin = await addSkin.mutateAsync({ path: { moltId }, body: NEW_SKIN });
    return { kind: 'skin', exuviaId: skin.id };
  };

  const run = async ({ photos, owner, view, takenOnIfUnknown }: Assignment): Promise<Photo[]> => {
    const subject = await subjectOf(owner);
    const changed: Photo[] = [];
    for (const photo of photos) {
      const body = { subject, view, takenOn: photo.takenOn ?? takenOnIfUnknown, notes: photo.notes };
      changed.push(await changePhoto.mutateAsync({ path: { photoId: photo.id }, version: photo.version, body }));
    }
    return changed;
  };

  return {
    isPending,
    error,
    assign: (assignment, onDone) => {
      setPending(true);
      setError(null);
      run(assignment)
        .then(onDone, setError)
        .finally(() => setPending(false));
    },
    release: async (photos) => {
      for (const { id, version, view, takenOn, notes } of photos) {
        await changePhoto.mutateAsync({ path: { photoId: id }, version, body: { subject: { kind: 'none' }, view, takenOn, notes } });
      }
    },
  };
}
