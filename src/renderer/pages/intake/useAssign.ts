import { useState } from 'react';
import type { Photo } from '../../../domain/photo/photo.ts';
import { ask } from '../../client/ask.ts';
import { useChange } from '../../client/queries.ts';
import { type Assignment, type AssignNews, type AssignPorts, assign, type Made, takeBack } from './assigning.ts';

export interface Assigning {
  readonly isPending: boolean;
  /** What went wrong last time; gone with the next attempt. */
  readonly error: unknown;
  assign(assignment: Assignment, news: AssignNews): void;
  /** Puts photos back among those that wait, and removes what was made for them unless something else hangs on it by now. */
  takeBack(photos: readonly Photo[], made: Made | null): Promise<void>;
}

export function useAssign(): Assigning {
  const addMolt = useChange('POST /api/specimens/{specimenId}/molts');
  const addSkin = useChange('POST /api/molts/{moltId}/exuvia');
  const changePhoto = useChange('PUT /api/photos/{photoId}');
  const removeMolt = useChange('DELETE /api/molts/{moltId}');
  const removeSkin = useChange('DELETE /api/exuviae/{exuviaId}');
  const [isPending, setPending] = useState(false);
  const [error, setError] = useState<unknown>(null);

  const ports: AssignPorts = {
    addMolt: (specimenId, body) => addMolt.mutateAsync({ path: { specimenId }, body }),
    addSkin: (moltId, body) => addSkin.mutateAsync({ path: { moltId }, body }),
    changePhoto: ({ id, version }, body) => changePhoto.mutateAsync({ path: { photoId: id }, version, body }),
    previewRemoval: (made) => ask('GET /api/removals/preview', { query: made }),
    remove: ({ kind, id }) =>
      kind === 'molt' ? removeMolt.mutateAsync({ path: { moltId: id } }) : removeSkin.mutateAsync({ path: { exuviaId: id } }),
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
    takeBack: (photos, made) => takeBack(photos, made, ports),
  };
}
