import { describe, expect, it } from 'vitest';
import { BLANK_CHECKLIST, type Checklist } from '../../../../src/domain/sexing/determination.ts';
import { caseOf } from '../../../../src/domain/sexing/evidence/caseOf.ts';
import { assessLevel } from '../../../../src/domain/sexing/levels.ts';
import { CLEAR_FEMALE, determination, EMPTY_STRIP, examined, genus } from '../readings.ts';

const BULBS: Checklist = { ...BLANK_CHECKLIST, skinMatchesAnimal: 'yes', palpalBulbsOnAnimal: 'yes' };

describe('what standing readings say of the animal itself', () => {
  const onRecord = { genus: genus('Lasiodora parahybana'), liveSigns: [], animalPhotoIds: new Set(['portrait']), inHand: null };
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
