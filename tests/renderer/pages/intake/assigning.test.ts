import { describe, expect, test } from 'vitest';
import type { Photo } from '../../../../src/domain/photo/photo.ts';
import { type Assignment, type AssignPorts, assign, type Made, takeBack } from '../../../../src/renderer/pages/intake/assigning.ts';
import { aMolt, anExuvia, aPhoto, NO_SIZES } from '../../../support/records.ts';

const NEW_MOLT: Assignment['owner'] = {
  kind: 'skin-of-new-molt',
  specimenId: 's1',
  molt: { happenedFrom: '2026-03-01', happenedTo: '2026-03-01', instarShed: 7, position: 'not-seen', outcomes: [], notes: '' },
};

function anAssignment(photos: readonly Photo[]): Assignment {
  const views = new Map(photos.map(({ id }) => [id, 'dorsal'] as const));
  return { photos, owner: NEW_MOLT, views, moltMadeBefore: null, takenOnIfUnknown: '2026-03-02' };
}

const COUNTS = {
  specimens: 0,
  molts: 1,
  exuviae: 1,
  photos: 0,
  photosUnassigned: 2,
  readings: 0,
  determinations: 0,
  observations: 0,
  liveSigns: 0,
};
const NOTHING_REMOVED: Pick<AssignPorts, 'previewRemoval' | 'remove'> = {
  previewRemoval: async () => COUNTS,
  remove: () => Promise.reject(new Error('Expected nothing to be removed')),
};

/** Runs it against an archive in which one step fails; answers what was told on the way. */
async function told(failing: Partial<AssignPorts>, photos: readonly Photo[], part: Partial<Assignment> = {}) {
  const molts: string[] = [];
  const placed: Photo[] = [];
  const ports: AssignPorts = {
    addMolt: async () => ({ id: 'm1' }),
    addSkin: async () => ({ id: 'e1' }),
    changePhoto: async (photo, draft) => ({ ...photo, ...draft }),
    ...NOTHING_REMOVED,
    ...failing,
  };
  let made: Made | null = null;
  const news = {
    onMolt: (id: string) => molts.push(id),
    onPlaced: (some: readonly Photo[], madeForThem: Made | null) => {
      placed.push(...some);
      made = madeForThem;
    },
  };
  const error: unknown = await assign({ ...anAssignment(photos), ...part }, ports, news).then(
    () => null,
    (thrown: unknown) => thrown,
  );
  return { molts, placed, made, error };
}

describe('giving photos to the skin of a new molt', () => {
  const photos = [aPhoto({ id: 'p1', takenOn: null }), aPhoto({ id: 'p2', takenOn: '2026-03-05' })];

  test('makes molt and skin and gives it every photo, with the day the keeper said where the camera wrote none', async () => {
    const { molts, placed, made, error } = await told({}, photos);
    expect(error).toBeNull();
    expect(made).toEqual({ kind: 'molt', id: 'm1' });
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

  const entry = { molt: aMolt({ id: 'm1' }), exuvia: null, photos: [], instar: null, sizes: NO_SIZES, determinations: [] };
  test.each([
    ['the skin', null],
    ['some of the photos', anExuvia({ id: 'e1' })],
  ])('knows the molt for its own when it goes on after %s failed, so that taking the photos back removes it', async (_, exuvia) => {
    const owner = { kind: 'skin', entry: { ...entry, exuvia } } as const;
    expect((await told({}, photos, { owner, moltMadeBefore: 'm1' })).made).toEqual({ kind: 'molt', id: 'm1' });
  });

  test('lays no claim to a molt that was there', async () => {
    const skinOf = (exuvia: ReturnType<typeof anExuvia> | null) => ({ owner: { kind: 'skin', entry: { ...entry, exuvia } } as const });
    expect((await told({}, photos, skinOf(null))).made).toEqual({ kind: 'exuvia', id: 'e1' });
    expect((await told({}, photos, skinOf(anExuvia()))).made).toBeNull();
  });
});

describe('taking photos back', () => {
  const photos = [aPhoto({ id: 'p1' }), aPhoto({ id: 'p2' })];

  /** Which photos were released and what was removed, where the removal would take these counts. */
  async function done(made: Made | null, counts = COUNTS) {
    const released: string[] = [];
    const removed: Made[] = [];
    await takeBack(photos, made, {
      addMolt: () => Promise.reject(new Error('Expected no molt to be added')),
      addSkin: () => Promise.reject(new Error('Expected no skin to be added')),
      changePhoto: async (photo, draft) => {
        if (draft.subject.kind === 'none') released.push(photo.id);
        return { ...photo, ...draft };
      },
      previewRemoval: async () => counts,
      remove: async (one) => removed.push(one),
    });
    return { released, removed };
  }

  test.each(['molt', 'exuvia'] as const)('removes the %s that was made for them, which releases them', async (kind) => {
    expect(await done({ kind, id: 'x1' })).toEqual({ released: [], removed: [{ kind, id: 'x1' }] });
  });

  test('only releases them where nothing was made', async () => {
    expect(await done(null)).toEqual({ released: ['p1', 'p2'], removed: [] });
  });

  test('keeps what was made where other photos or a determination hang on it by now', async () => {
    for (const more of [{ photosUnassigned: 3 }, { determinations: 1, observations: 0 }]) {
      expect(await done({ kind: 'molt', id: 'm1' }, { ...COUNTS, ...more })).toEqual({ released: ['p1', 'p2'], removed: [] });
    }
  });
});
