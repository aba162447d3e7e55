import { describe, expect, it } from 'vitest';
import type { Photo } from '../../../../src/domain/photo/photo.ts';
import { stageDrafts, stagePhotos } from '../../../../src/renderer/pages/watch/stagePhotos.ts';
import { aPhoto } from '../../../support/records.ts';

const photo = (id: string, local: string | null): Photo => {
  const base = aPhoto({ id, originalName: `${id}.jpg` });
  return { ...base, facts: { ...base.facts, takenAt: local === null ? null : { local, offset: '+01:00' } } };
};
const TIMED = photo('timed', '2026-03-01T22:10:00');
const UNTIMED = photo('untimed', null);

describe('photos whose stage of a molt can be told', () => {
  it('hold those whose camera wrote no time, however many have one', () => {
    const many = Array.from({ length: 40 }, (_, at) => photo(`p${at}`, `2026-03-01T${String(at % 24).padStart(2, '0')}:00:00`));
    expect(stagePhotos([UNTIMED, ...many]).map(({ id }) => id)).toContain('untimed');
    expect(stagePhotos([TIMED, UNTIMED])).toHaveLength(2);
  });

  it('need a time by hand where the camera wrote none, and are not noted before', () => {
    const said = { untimed: { stage: 'turned-over', time: '' }, timed: { stage: 'free-of-skin', time: '' } } as const;
    const { drafts, untimed } = stageDrafts([TIMED, UNTIMED], said, 'Ada');
    expect(untimed).toEqual(['untimed']);
    expect(drafts.map(({ photo: id }) => id)).toEqual(['timed']);
    expect(drafts[0]?.body.source).toEqual({ kind: 'photo', photoId: 'timed', offsetAssumed: false });
  });

  it('are noted by the keeper’s word in the order of time, with the photo named', () => {
    const said = { untimed: { stage: 'turned-over', time: '2026-03-01T12:00' }, timed: { stage: 'free-of-skin', time: '' } } as const;
    const { drafts, untimed } = stageDrafts([TIMED, UNTIMED], said, 'Ada');
    expect(untimed).toEqual([]);
    expect(drafts.map(({ stage }) => stage)).toEqual(['turned-over', 'free-of-skin']);
    expect(drafts[0]?.body).toMatchObject({ source: { kind: 'hand' }, note: 'Seen in untimed.jpg' });
  });
});
