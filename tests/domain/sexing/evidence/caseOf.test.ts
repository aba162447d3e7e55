import { describe, expect, it } from 'vitest';
import { BLANK_CHECKLIST, type Checklist } from '../../../../src/domain/sexing/determination.ts';
import { caseOf } from '../../../../src/domain/sexing/evidence/caseOf.ts';
import { assessLevel } from '../../../../src/domain/sexing/levels.ts';
import { CLEAR_FEMALE, determination, EMPTY_STRIP, examined, genus, skins, WELL_READ } from '../readings.ts';

const BULBS: Checklist = { ...BLANK_CHECKLIST, skinMatchesAnimal: 'yes', palpalBulbsOnAnimal: 'yes' };

describe('what standing readings say of the animal itself', () => {
  const onRecord = {
    ...{ genus: genus('Lasiodora parahybana'), liveSigns: [], animalPhotoIds: new Set(['portrait']) },
    ...{ skinsInOrder: skins('skin-1', 'skin-2', 'skin-3'), inHand: null },
  };
  const read = determination({ id: 'd', sex: 'male', level: 'strong', checklist: BULBS });

  it('is photographed where a photo of the animal is among their evidence, not one of the skin', () => {
    const photographed = (evidencePhotoIds: string[]) =>
      caseOf({ ...onRecord, determinations: [{ ...read, evidencePhotoIds }] }).live.map((one) => one.photographed);
    expect([photographed([]), photographed(['strip']), photographed(['strip', 'portrait'])]).toEqual([[false], [false], [true]]);
  });

  it('is not said any more by one that was corrected', () => {
    expect(caseOf({ ...onRecord, determinations: [read, determination({ id: 'e', supersedes: 'd' })] }).live).toEqual([]);
  });

  it('counts in a reading of another skin as if it had been said there', () => {
    const determinations = [{ ...read, exuviaId: 'skin-1', evidencePhotoIds: ['portrait'] }];
    const at = (changes: object) => assessLevel('male', examined(EMPTY_STRIP, { determinations, ...changes })).highest;
    expect([at({ animalPhotoIds: new Set(['portrait']) }), at({})]).toEqual(['established', 'strong']);
    expect(assessLevel('female', examined(CLEAR_FEMALE, { determinations })).highest).toBeNull();
  });
});

describe('the size of the animal when something was said of it', () => {
  const measured = (exuviaId: string, readOn: string, checklist: Partial<Checklist>) =>
    determination({ id: exuviaId, exuviaId, readOn, sex: 'unsexed', level: null, checklist: { ...WELL_READ, ...checklist } });
  const sizes = (determinations: ReturnType<typeof measured>[]) =>
    caseOf({
      ...{ genus: genus('Lasiodora parahybana'), liveSigns: [], animalPhotoIds: new Set() },
      // Shed by the middle of January, February and March 2026.
      ...{ determinations, skinsInOrder: skins('skin-1', 'skin-2', 'skin-3'), inHand: null },
    }).live.map(({ carapaceMm }) => carapaceMm);

  it('is that of the largest skin it had shed by that day: a juvenile without bulbs does not become an adult without bulbs', () => {
    const juvenile = measured('skin-1', '2026-01-20', { palpalBulbsOnAnimal: 'no', carapaceLengthMm: 9 });
    const grown = measured('skin-3', '2026-06-01', { carapaceLengthMm: 25 });
    expect(sizes([juvenile, grown])).toEqual([9]);
    expect(sizes([{ ...juvenile, readOn: '2026-03-15' }, grown])).toEqual([25]);
  });

  it('is not read from a skin that may be another animal’s', () => {
    const said = measured('skin-1', '2026-04-01', { palpalBulbsOnAnimal: 'no' });
    expect(sizes([said, measured('skin-2', '2026-04-01', { carapaceLengthMm: 25, skinMatchesAnimal: 'cannot-tell' })])).toEqual([null]);
  });
});
