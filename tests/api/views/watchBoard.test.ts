import { afterEach, beforeEach, describe, expect, it, test } from 'vitest';
import { ladderPageOf } from '../../../src/api/views/ladderPage.ts';
import { specimenPageOf } from '../../../src/api/views/specimenPage.ts';
import { watchBoardOf } from '../../../src/api/views/watchBoard.ts';
import { CAUTIOUS_FEEDING_TABLE } from '../../../src/domain/care/feedingTable.ts';
import { unwrap } from '../../../src/domain/result.ts';
import {
  exuviaDraft,
  moltDraft,
  newPhoto,
  observationDraft,
  readingDraft,
  SCALE,
  specimenDraft,
  TestArchive,
} from '../../support/testArchive.ts';

const PRESENT = { now: '2026-06-15T12:00:00.000Z', today: '2026-06-15', table: CAUTIOUS_FEEDING_TABLE };

test('what was noted last stands first, though it was seen long before', async () => {
  const opened = await TestArchive.open();
  const { archive } = opened;
  const { id } = unwrap(archive.specimens.create(specimenDraft()));
  const noted = (kind: 'ate' | 'drank' | 'refused', day: string) =>
    unwrap(archive.observations.append(id, observationDraft({ kind, moment: { at: `${day}T08:00:00.000Z`, offset: '+00:00' } })));
  for (const day of ['2026-06-01', '2026-06-02', '2026-06-03', '2026-06-04', '2026-06-05']) noted('ate', day);
  noted('refused', '2025-11-20');
  expect(watchBoardOf(archive, PRESENT).animals[0]?.latest.map(({ kind, moment }) => [kind, moment.at.slice(0, 10)])).toEqual([
    ['refused', '2025-11-20'],
    ['ate', '2026-06-05'],
    ['ate', '2026-06-04'],
    ['ate', '2026-06-03'],
    ['ate', '2026-06-02'],
  ]);
  await opened.remove();
});

describe('the span a hold rests on', () => {
  let opened: TestArchive;

  beforeEach(async () => {
    opened = await TestArchive.open();
  });
  afterEach(() => opened.remove());

  /** A carapace of 10 mm on the first skin alone, then molts without a skin; each with the instar noted at it. */
  function animal(molts: readonly (readonly [day: string, instarShed: number | null])[]): string {
    const { archive } = opened;
    const specimen = unwrap(archive.specimens.create(specimenDraft({ acquiredInstar: null })));
    molts.forEach(([day, instarShed], index) => {
      const molt = unwrap(archive.molts.create(specimen.id, moltDraft({ happenedFrom: day, happenedTo: day, instarShed })));
      if (index > 0) return;
      const exuvia = unwrap(archive.exuviae.create(molt.id, exuviaDraft()));
      const photo = unwrap(archive.photos.add(newPhoto({ subject: { kind: 'skin', exuviaId: exuvia.id }, takenOn: day })));
      unwrap(archive.calibrations.put(photo.id, 0, SCALE));
      const landmarks = {
        'carapace-front': { state: 'placed', at: { xPx: 200, yPx: 100 } },
        'carapace-rear': { state: 'placed', at: { xPx: 200, yPx: 200 } },
      } as const;
      unwrap(archive.readings.create(photo.id, readingDraft({ landmarks })));
    });
    return specimen.id;
  }

  const spanOf = () => watchBoardOf(opened.archive, PRESENT).animals[0]?.span;

  it('grows by every instar that the numbers tell of, on record or not: too small a span would end the wait too soon', () => {
    animal([
      ['2025-01-10', 5],
      ['2026-06-10', 8],
    ]);
    expect(spanOf()).toMatchObject({ from: { kind: 'skin', moltsSince: { fewest: 4, most: 4 } } });
  });

  it('grows by the molts on record where no number tells more', () => {
    animal([
      ['2025-01-10', null],
      ['2026-06-10', null],
    ]);
    expect(spanOf()).toMatchObject({ from: { kind: 'skin', moltsSince: { fewest: 2, most: 2 } } });
  });

  it('grows as the Ladder and the forecast of the next skin have it', () => {
    const id = animal([['2026-06-10', 5]]);
    const nextSkin = specimenPageOf(opened.archive, id, PRESENT.today).forecast?.size?.nextSkin;
    const { carapaceNow } = ladderPageOf(opened.archive, id, PRESENT.today).growth;
    expect(carapaceNow).toMatchObject(nextSkin ?? {});
    // Leg I and IV together are 5.2 to 7.5 carapace lengths, and the body between them up to one more (see the domain's source).
    expect(spanOf()?.lowMm).toBeCloseTo(5.2 * (nextSkin?.low90Mm ?? Number.NaN), 9);
    expect(spanOf()?.highMm).toBeCloseTo(8.5 * (nextSkin?.high90Mm ?? Number.NaN), 9);
  });
});
