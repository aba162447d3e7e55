import { describe, expect, it } from 'vitest';
import type { GalleryItem } from '../../../../src/api/contract/growth.ts';
import { buildLadder } from '../../../../src/domain/growth/ladder.ts';
import type { ScaleMarks } from '../../../../src/domain/measuring/calibration.ts';
import type { Photo } from '../../../../src/domain/photo/photo.ts';
import { galleryEntries } from '../../../../src/renderer/pages/ladder/gallery/entries.ts';
import { moltOn } from '../../../domain/growth/skins.ts';

const rule: ScaleMarks = {
  kind: 'two-points',
  ends: [
    { xPx: 100, yPx: 100 },
    { xPx: 1100, yPx: 100 },
  ],
  distanceMm: 100,
  distanceStandardUncertaintyMm: 0.1,
  pointingPx: 1,
  heightMm: 0,
};

function itemOn(day: string, marks: ScaleMarks | null): GalleryItem {
  const photo: Photo = {
    id: `photo-${day}`,
    subject: { kind: 'skin', exuviaId: `skin-${day}` },
    view: 'dorsal',
    takenOn: day,
    notes: '',
    sha256: '0'.repeat(64),
    originalName: 'dorsal.jpg',
    mediaType: 'image/jpeg',
    byteLength: 1,
    widthPx: 2000,
    heightPx: 1500,
    facts: { takenAt: null, camera: null, focalLengthMm: null, focalLength35Mm: 26, orientation: 1 },
    importedAt: '2026-01-01T00:00:00.000Z',
    sample: false,
    version: 1,
  };
  const calibration = { photoId: photo.id, marks, version: 1, changedAt: '2026-01-01T00:00:00.000Z' };
  return { moltId: `molt-${day}`, photo, calibration, reading: null, cutKey: 'cut-1', cutReady: true };
}

function entriesOf(molts: Parameters<typeof buildLadder>[0], items: readonly GalleryItem[]) {
  return galleryEntries(buildLadder(molts).rungs, items);
}

describe('galleryEntries', () => {
  it('lays out a calibrated photo in millimeters', () => {
    const [entry] = entriesOf([moltOn('2024-01-01', 5, 4)], [itemOn('2024-01-01', rule)]);
    if (entry?.kind !== 'plate') throw new Error('expected a plate');
    // 100 mm over 1000 px.
    expect(entry.plate.widthMm).toBeCloseTo(200, 9);
    expect(entry.plate.heightMm).toBeCloseTo(150, 9);
  });

  it('says why a photo is not at scale', () => {
    const [first] = rule.kind === 'two-points' ? rule.ends : [];
    if (!first) throw new Error('expected an end');
    const entries = entriesOf(
      [moltOn('2024-01-01', 5, null), moltOn('2024-03-01', 6, null)],
      [itemOn('2024-01-01', null), itemOn('2024-03-01', { ...rule, ends: [first, first] })],
    );
    expect(entries.map((entry) => entry.kind === 'off-scale' && entry.reason)).toEqual(['no-scale-marked', 'marks-do-not-fit']);
  });

  it('keeps the place of a rung without a photo and of instars without a molt', () => {
    const entries = entriesOf(
      [moltOn('2024-01-01', 5, 4), moltOn('2024-06-01', 7, null), moltOn('2024-09-01', 8, 8)],
      [itemOn('2024-01-01', rule), itemOn('2024-09-01', rule)],
    );
    expect(entries.map(({ kind }) => kind)).toEqual(['plate', 'gap', 'no-photo', 'plate']);
    expect(entries[1]).toMatchObject({ words: 'Instar 6 has no molt on record.' });
  });

  it('begins with the first skin, whatever went by between the acquisition and it', () => {
    const { rungs } = buildLadder([moltOn('2024-01-01', 5, 4)], { acquiredOn: '2023-01-01', acquiredInstar: 3 });
    expect(rungs[0]?.skippedInstars).toBe(2);
    expect(galleryEntries(rungs, [itemOn('2024-01-01', rule)]).map(({ kind }) => kind)).toEqual(['plate']);
  });
});
