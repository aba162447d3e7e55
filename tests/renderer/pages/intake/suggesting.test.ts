import { describe, expect, test } from 'vitest';
import { PHOTO_FOLLOWS_MOLT_DAYS, suggestMolt, suggestSpecimen, suggestView } from '../../../../src/renderer/pages/intake/suggesting.ts';
import { aMolt, aSpecimen } from '../../../support/records.ts';

const MOLTS = [
  aMolt({ id: 'autumn', happenedFrom: '2025-10-01', happenedTo: '2025-10-04' }),
  aMolt({ id: 'winter', happenedFrom: '2026-01-10', happenedTo: '2026-01-10' }),
];

describe('suggesting the molt of a photo by its day', () => {
  test('takes the last molt before the photo', () => {
    expect(suggestMolt('2026-01-12', MOLTS)).toBe('winter');
    expect(suggestMolt('2025-10-20', MOLTS)).toBe('autumn');
  });

  test('takes the molt on whose own day, or within whose span, the photo was taken', () => {
    expect(suggestMolt('2026-01-10', MOLTS)).toBe('winter');
    expect(suggestMolt('2025-10-02', MOLTS)).toBe('autumn');
  });

  test('leaves out a molt that is only presumed, whose span begins with the one before', () => {
    const presumed = aMolt({ id: 'presumed', happenedFrom: '2025-10-04', happenedTo: '2026-01-10', outcomes: ['presumed'] });
    expect(suggestMolt('2025-10-20', [...MOLTS, presumed])).toBe('autumn');
  });

  test('does not depend on the order in which molts come', () => {
    expect(suggestMolt('2026-01-12', MOLTS.toReversed())).toBe('winter');
  });

  test('suggests a new molt when the last one is too long ago, by a day', () => {
    const day = (days: number) => new Date(Date.parse('2026-01-10T00:00:00Z') + days * 86_400_000).toISOString().slice(0, 10);
    expect(suggestMolt(day(PHOTO_FOLLOWS_MOLT_DAYS), MOLTS)).toBe('winter');
    expect(suggestMolt(day(PHOTO_FOLLOWS_MOLT_DAYS + 1), MOLTS)).toBeNull();
  });

  test('suggests a new molt for a photo older than all molts, or without a day', () => {
    expect(suggestMolt('2025-09-30', MOLTS)).toBeNull();
    expect(suggestMolt(null, MOLTS)).toBeNull();
  });
});

describe('suggesting the animal and the view by the name of the file', () => {
  const animals = [
    aSpecimen({ id: 'twelve', code: 'G-12' }),
    aSpecimen({ id: 'one', code: 'G-1' }),
    aSpecimen({ id: 'long', code: 'G-12 b' }),
  ];

  test('finds the code whatever stands between its letters and figures', () => {
    expect(suggestSpecimen('g12_dorsal.JPG', animals)).toBe('twelve');
    expect(suggestSpecimen('2026-01-12 G 12.heic', animals)).toBe('twelve');
  });

  test('prefers the longest code and never takes part of a number', () => {
    expect(suggestSpecimen('G-12-b inside.jpg', animals)).toBe('long');
    expect(suggestSpecimen('G-121.jpg', animals)).toBeNull();
    expect(suggestSpecimen('IMG_0042.jpg', animals)).toBeNull();
  });

  test('reads the view, and thinks of one from above where the name says nothing', () => {
    expect(suggestView('G-12 abdomen INSIDE.jpg')).toBe('abdomen-inside');
    expect(suggestView('ventral.png')).toBe('ventral');
    expect(suggestView('IMG_0042.jpg')).toBe('dorsal');
  });
});
