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

/** Told step by step, so that an assignment that fails halfway is gone on with and not begun anew. */
export interface AssignNews {
  /** The new molt is on record; what follows may still fail. */
  onMolt(moltId: string): void;
  /** The photos that were given away, as they are now; not all of them if something failed. Not called for none. */
  onPlaced(photos: readonly Photo[]): void;
}

export interface Assigning {
  readonly isPending: boolean;
  /** What went wrong last time; gone with the next attempt. */
  readonly error: unknown;
  /** Gives photos to a skin or an animal, making molt and skin where they are new. */
  assign(assignment: Assignment, news: AssignNews): void;
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

  const newMolt = async (owner: Extract<Owner, { kind: 'skin-of-new-molt' }>, { onMolt }: AssignNews): Promise<string> => {
    const { id } = await addMolt.mutateAsync({ path: { specimenId: owner.specimenId }, body: owner.molt });
    onMolt(id);
    return id;
  };
  const subjectOf = async (owner: Owner, news: AssignNews): Promise<PhotoSubject> => {
    if (owner.kind === 'animal') return { kind: 'animal', specimenId: owner.specimenId };
    if (owner.kind === 'skin' && owner.entry.exuvia) return { kind: 'skin', exuviaId: owner.entry.exuvia.id };
    const moltId = owner.kind === 'skin' ? owner.entry.molt.id : await newMolt(owner, news);
    const skin = await addSkin.mutateAsync({ path: { moltId }, body: NEW_SKIN });
    return { kind: 'skin', exuviaId: skin.id };
  };

  const run = async ({ photos, owner, view, takenOnIfUnknown }: Assignment, news: AssignNews): Promise<void> => {
    const subject = await subjectOf(owner, news);
    const changed: Photo[] = [];
    try {
      for (const photo of photos) {
        const body = { subject, view, takenOn: photo.takenOn ?? takenOnIfUnknown, notes: photo.notes };
        changed.push(await changePhoto.mutateAsync({ path: { photoId: photo.id }, version: photo.version, body }));
      }
    } finally {
      if (changed.length > 0) news.onPlaced(changed);
    }
  };

  return {
    isPending,
    error,
    assign: (assignment, news) => {
      setPending(true);
      setError(null);
      run(assignment, news)
        .catch(setError)
        .finally(() => setPending(false));
    },
    release: async (photos) => {
      for (const { id, version, view, takenOn, notes } of photos) {
        await changePhoto.mutateAsync({ path: { photoId: id }, version, body: { subject: { kind: 'none' }, view, takenOn, notes } });
      }
    },
  };
}
