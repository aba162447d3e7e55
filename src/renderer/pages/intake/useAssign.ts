import { useState } from 'react';
import type { Photo } from '../../../domain/photo/photo.ts';
import { useChange } from '../../client/queries.ts';
import { type Assignment, type AssignNews, type AssignPorts, assign } from './assigning.ts';

export interface Assigning {
  readonly isPending: boolean;
  /** What went wrong last time; gone with the next attempt. */
  readonly error: unknown;
  assign(assignment: Assignment, news: AssignNews): void;
  /** Puts photos back among those that wait. */
  release(photos: readonly Photo[]): Promise<void>;
}

export function useAssign(): Assigning {
  const addMolt = useChange('POST /api/specimens/{specimenId}/molts');
  const addSkin = useChange('POST /api/molts/{moltId}/exuvia');
  const changePhoto = useChange('PUT /api/photos/{photoId}');
  const [isPending, setPending] = useState(false);
  const [error, setError] = useState<unknown>(null);

  const ports: AssignPorts = {
    addMolt: (specimenId, body) => addMolt.mutateAsync({ path: { specimenId }, body }),
    addSkin: (moltId, body) => addSkin.mutateAsync({ path: { moltId }, body }),
    changePhoto: ({ id, version }, body) => changePhoto.mutateAsync({ path: { photoId: id }, version, body }),
  };

  return {
    isPending,
    error,
    assign: (assignment, news) => {
      setPending(true);
      setError(null);
      assign(assignment, ports, news)
        .catch(setError)
        .finally(() => setPending(false));
    },
    release: async (photos) => {
      for (const photo of photos) {
        const { view, takenOn, notes } = photo;
        await ports.changePhoto(photo, { subject: { kind: 'none' }, view, takenOn, notes });
      }
    },
  };
}
