import { expect, test } from 'vitest';
import type { SpecimenPage } from '../../../../src/api/contract/specimens.ts';
import { estimateFrom } from '../../../../src/domain/measuring/quantity.ts';
import { wholeLineOf } from '../../../../src/renderer/pages/specimen/wholeLine.ts';
import { aMolt, anExuvia, aPhoto, NO_SIZES } from '../../../support/records.ts';

test('everything on record is told the latest first, the readings of one day once', () => {
  const exuvia = anExuvia({ id: 'e1', recovered: true, storagePlace: 'Box 1' });
  const page: Pick<SpecimenPage, 'molts' | 'observations' | 'lifeLine' | 'liveSigns' | 'animalPhotos'> = {
    molts: [
      {
        molt: aMolt({ id: 'm1', happenedFrom: '2026-03-02', happenedTo: '2026-03-02', instarShed: 7, outcomes: ['clean'], notes: '' }),
        instar: { number: 7, certainty: 'known' },
        exuvia,
        photos: [],
        sizes: { ...NO_SIZES, carapaceLengthMm: estimateFrom(15.2, 0.1) },
        determinations: [],
      },
    ],
    observations: [
      {
        id: 'o1',
        specimenId: 's1',
        kind: 'free-of-skin',
        moment: { at: '2026-03-02T22:30:00.000Z', offset: '+00:00' },
        observer: '',
        note: 'Quiet',
        source: { kind: 'hand' },
        span: null,
        recordedAt: '2026-03-02T22:31:00.000Z',
      },
    ],
    animalPhotos: [
      aPhoto({
        id: 'p1',
        takenOn: '2026-03-01',
        facts: { ...aPhoto().facts, takenAt: { local: '2026-03-01T20:00:00', offset: '+00:00' } },
      }),
    ],
    liveSigns: [
      {
        ...{ id: 'l1', specimenId: 's1', seenOn: '2026-03-06', observer: 'R. Reader', photoIds: ['p1'], notes: '' },
        ...{ signedAt: '2026-03-06T09:30:00.000Z', withdrawn: null },
        finding: { kind: 'palpal-bulbs', seen: true, ultimateMoltId: 'm1' },
      },
      {
        ...{ id: 'l0', specimenId: 's1', seenOn: '2026-03-06', observer: 'R. Reader', photoIds: [], notes: '' },
        ...{ signedAt: '2026-03-06T08:30:00.000Z', withdrawn: { at: '2026-03-06T09:00:00.000Z', reason: 'Another animal' } },
        finding: { kind: 'sperm-web' },
      },
    ],
    lifeLine: [
      { on: '2026-03-01', at: '2026-03-01T20:00:00.000Z', kind: 'photo', id: 'p1', exuviaId: null },
      { on: '2026-03-02', at: '2026-03-02T22:30:00.000Z', kind: 'observation', id: 'o1', exuviaId: null },
      { on: '2026-03-02', at: null, kind: 'molt', id: 'm1', exuviaId: null },
      { on: '2026-03-02', at: null, kind: 'skin', id: 'e1', exuviaId: 'e1' },
      { on: '2026-03-04', at: '2026-03-04T09:00:00.000Z', kind: 'reading', id: 'r1', exuviaId: 'e1' },
      { on: '2026-03-04', at: '2026-03-04T09:30:00.000Z', kind: 'reading', id: 'r2', exuviaId: 'e1' },
      { on: '2026-03-05', at: '2026-03-05T09:30:00.000Z', kind: 'reading', id: 'r3', exuviaId: 'e1' },
      { on: '2026-03-06', at: null, kind: 'live-sign', id: 'l0', exuviaId: null },
      { on: '2026-03-06', at: null, kind: 'live-sign', id: 'l1', exuviaId: null },
    ],
  };
  const told = wholeLineOf(page).map(({ on, clock, words, note }) => [on, clock, words, note]);
  expect(told).toEqual([
    ['2026-03-06', null, 'Seen on the animal: palpal bulbs seen', 'Signed by R. Reader. With the ultimate molt, on 2 Mar 2026'],
    ['2026-03-06', null, 'Seen on the animal: a sperm web seen', 'Withdrawn: Another animal. Signed by R. Reader'],
    ['2026-03-05', null, 'Measured on the Bench: the skin of instar 7', null],
    ['2026-03-04', null, 'Measured on the Bench: the skin of instar 7', null],
    ['2026-03-02', null, 'Skin recovered', 'Carapace length 15.20 mm ± 0.20 mm. Kept in Box 1'],
    ['2026-03-02', null, 'Molt: Shed instar 7; the ultimate molt', 'Clean'],
    ['2026-03-02', '22:30', 'Free of its skin', 'Quiet'],
    ['2026-03-01', '20:00', 'Photo of the animal', null],
  ]);
  expect(wholeLineOf(page).flatMap(({ observation }) => observation ?? [])).toEqual([
    { id: 'o1', what: '"free of its skin" of 2 Mar 2026, 22:30' },
  ]);
});
