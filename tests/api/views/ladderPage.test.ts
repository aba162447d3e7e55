import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { LadderPage } from '../../../src/api/contract/growth.ts';
import { ladderPageOf, withCuts } from '../../../src/api/views/ladderPage.ts';
import { unwrap } from '../../../src/domain/result.ts';
import type { Specimen } from '../../../src/domain/specimen/specimen.ts';
import { exuviaDraft, moltDraft, newPhoto, readingDraft, SCALE, specimenDraft, TestArchive } from '../../support/testArchive.ts';

const TODAY = '2026-06-15';

describe('ladderPageOf', () => {
  let opened: TestArchive;
  let photos = 0;

  beforeEach(async () => {
    opened = await TestArchive.open();
    photos = 0;
  });
  afterEach(() => opened.remove());

  /** Reads a carapace of so many pixels off a new photo, at 0.1 mm a pixel. */
  function measures(subject: Parameters<typeof newPhoto>[0], lengthPx: number): void {
    const { archive } = opened;
    photos += 1;
    const photo = unwrap(archive.photos.add(newPhoto({ ...subject, sha256: photos.toString(16).padStart(64, '0') })));
    unwrap(archive.calibrations.put(photo.id, 0, SCALE));
    const landmarks = {
      'carapace-front': { state: 'placed', at: { xPx: 200, yPx: 100 } },
      'carapace-rear': { state: 'placed', at: { xPx: 200, yPx: 100 + lengthPx } },
    } as const;
    unwrap(archive.readings.create(photo.id, readingDraft({ landmarks })));
  }

  /** An animal whose skins measure so many pixels, a molt every third month. */
  function animal(code: string, eggSacGroup: string | null, lengthsPx: readonly number[], taxon = 'Brachypelma hamorii'): Specimen {
    const { archive } = opened;
    const specimen = unwrap(archive.specimens.create(specimenDraft({ code, taxon, eggSacGroup, acquiredInstar: null })));
    lengthsPx.forEach((lengthPx, index) => {
      const day = new Date(Date.UTC(2024, 3 * index, 10)).toISOString().slice(0, 10);
      const molt = unwrap(archive.molts.create(specimen.id, moltDraft({ happenedFrom: day, happenedTo: day, instarShed: null })));
      const exuvia = unwrap(archive.exuviae.create(molt.id, exuviaDraft()));
      measures({ subject: { kind: 'skin', exuviaId: exuvia.id }, takenOn: day }, lengthPx);
    });
    return specimen;
  }

  it('suggests the molt that is missing as possible, and is what the contract says', async () => {
    // Centruroides gracilis, females, without instar 4 (Francke OF, Jones SK 1982, J. Arachnol. 10:223-239), five times as large. Two points and no tilt known leave 11 % open.
    const specimen = animal('G', null, [80, 112.5, 148, 260.5, 332.5, 408]);
    const page = ladderPageOf(opened.archive, specimen.id, TODAY);
    const whole = await withCuts(opened.archive, page);
    expect(LadderPage.parse(whole)).toEqual(whole);
    expect(page.growth.missed.map(({ suggestedSkipped }) => suggestedSkipped)).toEqual([0, 0, 1, 0, 0]);
    expect(page.growth.missed[2]?.verdict).toBe('possible');
  });

  it('lets measured kin count, siblings most, and no stranger', () => {
    const specimen = animal('A', 'sac 1', [100]);
    const alone = ladderPageOf(opened.archive, specimen.id, TODAY);
    animal('B', 'sac 1', [100, 120, 144, 172.8, 207.4]);
    animal('C', 'sac 1', [90, 108, 129.6, 155.5, 186.6]);
    animal('D', 'sac 1', [50, 85, 144], 'Grammostola pulchra');
    animal('E', 'sac 1', []);
    const page = ladderPageOf(opened.archive, specimen.id, TODAY);
    const wide = alone.growth.carapaceNow;
    const narrow = page.growth.carapaceNow;
    if (!wide || !narrow) throw new Error('Expected the animal now to be foretold');
    const size = page.ladder.rungs[0]?.carapaceLengthMm?.value ?? Number.NaN;
    expect(narrow.middleMm / size).toBeLessThan(wide.middleMm / size);
    const expectedBy = (near: number) => Math.abs(near / size - 1.2);
    expect(expectedBy(narrow.middleMm)).toBeLessThan(expectedBy(wide.middleMm) / 2);
    expect(Math.log(narrow.high90Mm / narrow.low90Mm)).toBeLessThan(Math.log(wide.high90Mm / wide.low90Mm));
  });

  it('keeps a size from the living animal apart, one step above its last skin', () => {
    const specimen = animal('A', null, [100, 130, 169]);
    const before = ladderPageOf(opened.archive, specimen.id, TODAY);
    measures({ subject: { kind: 'animal', specimenId: specimen.id }, takenOn: '2024-08-01' }, 225);
    const page = ladderPageOf(opened.archive, specimen.id, TODAY);
    expect(page.growth.live).toMatchObject([{ step: 3, afterMoltId: page.ladder.rungs[2]?.moltId }]);
    expect(page.growth.live[0]?.carapaceLengthMm?.value).toBeCloseTo(22, 0);
    expect(page.ladder).toEqual(before.ladder);
    expect(page.growth.ratios).toEqual(before.growth.ratios);
  });
});
