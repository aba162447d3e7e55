import { describe, expect, test } from 'vitest';
import type { Photo } from '../../../../src/domain/photo/photo.ts';
import { type Assignment, type AssignPorts, assign } from '../../../../src/renderer/pages/intake/assigning.ts';
import { aPhoto } from '../../../support/records.ts';

const NEW_MOLT: Assignment['owner'] = {
  kind: 'skin-of-new-molt',
  specimenId: 's1',
  molt: { happenedFrom: '2026-03-01', happenedTo: '2026-03-01', instarShed: 7, position: 'not-seen', outcomes: [], notes: '' },
};

function anAssignment(photos: readonly Photo[]): Assignment {
  return { photos, owner: NEW_MOLT, view: 'dorsal', takenOnIfUnknown: '2026-03-02' };
}

/** Runs it against an archive in which one step fails; answers what was told on the way. */
async function told(failing: Partial<AssignPorts>, photos: readonly Photo[]) {
  const molts: string[] = [];
  const placed: Photo[] = [];
  const ports: AssignPorts = {
    addMolt: async () => ({ id: 'm1' }),
    addSkin: async () => ({ id: 'e1' }),
    changePhoto: async (photo, draft) => ({ ...photo, ...draft }),
    ...failing,
  };
  const news = { onMolt: (id: string) => molts.push(id), onPlaced: (some: readonly Photo[]) => placed.push(...some) };
  const error: unknown = await assign(anAssignment(photos), ports, news).then(
    () => null,
    (thrown: unknown) => thrown,
  );
  return { molts, placed, error };
}

describe('giving photos to the skin of a new molt', () => {
  const photos = [aPhoto({ id: 'p1', takenOn: null }), aPhoto({ id: 'p2', takenOn: '2026-03-05' })];

  test('makes molt and skin and gives it every photo, with the day the keeper said where the camera wrote none', async () => {
    const { molts, placed, error } = await told({}, photos);
    expect(error).toBeNull();
    expect(molts).toEqual(['m1']);
    expect(placed.map(({ id, subject, takenOn }) => ({ id, subject, takenOn }))).toEqual([
      { id: 'p1', subject: { kind: 'skin', exuviaId: 'e1' }, takenOn: '2026-03-02' },
      { id: 'p2', subject: { kind: 'skin', exuviaId: 'e1' }, takenOn: '2026-03-05' },
    ]);
  });

  test('tells of the molt that was made though the skin failed, so that it is not made twice', async () => {
    const failure = new Error('no skin');
    const { molts, placed, error } = await told({ addSkin: () => Promise.reject(failure) }, photos);
    expect(error).toBe(failure);
    expect(molts).toEqual(['m1']);
    expect(placed).toEqual([]);
  });

  test('tells of the photos that were given away before one failed', async () => {
    const failure = new Error('changed meanwhile');
    const changePhoto: AssignPorts['changePhoto'] = async (photo, draft) => {
      if (photo.id === 'p2') throw failure;
      return { ...photo, ...draft };
    };
    const { placed, error } = await told({ changePhoto }, photos);
    expect(error).toBe(failure);
    expect(placed.map(({ id }) => id)).toEqual(['p1']);
  });
});
