import { describe, expect, it } from 'vitest';
import { BLANK_CHECKLIST, type DeterminationDraft, type EvidencePin } from '../../../src/domain/sexing/determination.ts';
import { checkDetermination, type SigningContext } from '../../../src/domain/sexing/signing.ts';
import { SHIPPED_MODEL } from '../../support/shippedModel.ts';
import { CLEAR_FEMALE, determination, draft, EMPTY_STRIP, genus, skins } from './readings.ts';

const CONTEXT: SigningContext = {
  genus: genus('Lasiodora parahybana'),
  model: SHIPPED_MODEL,
  liveSigns: [],
  exuviaId: 'skin-2',
  skinsInOrder: skins('skin-1', 'skin-2'),
  determinations: [],
  today: '2026-11-25',
  shedFrom: '2025-02-06',
  skinPhotoIds: new Set(['strip-photo']),
  animalPhotoIds: new Set(['animal-photo']),
  photoSizes: new Map(['strip-photo', 'animal-photo'].map((id) => [id, { widthPx: 4000, heightPx: 3000 }])),
};

function failureOf(changes: Partial<DeterminationDraft>, context: Partial<SigningContext> = {}): unknown {
  const result = checkDetermination(draft(changes), { ...CONTEXT, ...context });
  return result.ok ? null : result.failure;
}

describe('signing', () => {
  it('accepts the level the answers support, and every lower one', () => {
    for (const level of ['strong', 'probable', 'leaning'] as const) expect(failureOf({ level })).toBeNull();
  });

  it('refuses a higher level and says what it needs', () => {
    expect(failureOf({ level: 'established' })).toEqual({
      code: 'level-not-supported',
      sex: 'female',
      wanted: 'established',
      highest: 'strong',
      missing: [
        ['second-skin-missing', 'evidence-too-weak'],
        ['egg-sac-not-laid', 'evidence-too-weak'],
      ],
    });
  });

  it('refuses "probable male" from absence on a small skin', () => {
    expect(failureOf({ sex: 'male', level: 'probable', checklist: { ...EMPTY_STRIP, legSpanMm: 31 } })).toEqual({
      code: 'level-not-supported',
      sex: 'male',
      wanted: 'probable',
      highest: 'leaning',
      missing: [['skin-small', 'evidence-too-weak']],
    });
  });

  it('refuses even a leaning when nothing was seen', () => {
    expect(failureOf({ level: 'leaning', checklist: BLANK_CHECKLIST })).toMatchObject({ code: 'level-not-supported', highest: null });
  });

  it('refuses a day before the skin was shed and takes that day itself', () => {
    expect(failureOf({ readOn: '2025-02-05' })).toEqual({ code: 'read-before-shed', readOn: '2025-02-05', shedFrom: '2025-02-06' });
    expect(failureOf({ readOn: '2025-02-06' })).toBeNull();
  });

  it('accepts "unsexed" with any answers, and without a level only', () => {
    expect(failureOf({ sex: 'unsexed', level: null, checklist: BLANK_CHECKLIST })).toBeNull();
    expect(failureOf({ sex: 'unsexed', level: 'leaning' })).toEqual({ code: 'level-without-sex' });
    expect(failureOf({ level: null })).toEqual({ code: 'sex-without-level' });
  });

  it('refuses a reading that lies in the future', () => {
    expect(failureOf({ readOn: '2026-11-26' })).toEqual({ code: 'date-in-future', field: 'readOn', date: '2026-11-26' });
  });
});

// Grade D, the strip missing, torn or eaten: no genital evidence may be entered (a working rule; judgment).
describe('a skin of grade D', () => {
  it('takes no answer about the strip', () => {
    expect(failureOf({ checklist: { ...CLEAR_FEMALE, grade: 'D' } })).toEqual({
      code: 'strip-not-readable',
      answered: ['receptaclesSeen', 'uterusExternusSeen', 'accessoryOrgansSeen', 'fusillaeOutsideSeen'],
    });
    const outside = { ...BLANK_CHECKLIST, grade: 'D', receptaclesSeen: 'cannot-tell', fusillaeOutsideSeen: 'no' } as const;
    expect(failureOf({ sex: 'unsexed', level: null, checklist: outside })).toEqual({
      code: 'strip-not-readable',
      answered: ['fusillaeOutsideSeen'],
    });
  });

  it('can still be signed for what was seen on the animal', () => {
    const checklist = { ...BLANK_CHECKLIST, grade: 'D', skinMatchesAnimal: 'yes', eggSacLaid: 'yes' } as const;
    expect(failureOf({ level: 'established', checklist })).toBeNull();
  });
});

describe('evidence photos', () => {
  it('may show any skin of the animal or the animal itself', () => {
    expect(failureOf({ evidencePhotoIds: ['strip-photo', 'animal-photo'] })).toBeNull();
  });

  it('may not show another animal', () => {
    expect(failureOf({ evidencePhotoIds: ['strip-photo', 'stranger'] })).toEqual({
      code: 'evidence-of-another-animal',
      photoId: 'stranger',
    });
  });

  it('establish bulbs only when they show the animal, not its skin', () => {
    const bulbs = { ...BLANK_CHECKLIST, skinMatchesAnimal: 'yes', palpalBulbsOnAnimal: 'yes' } as const;
    const signed: Partial<DeterminationDraft> = { sex: 'male', level: 'established', checklist: bulbs };
    expect(failureOf({ ...signed, evidencePhotoIds: ['animal-photo'] })).toBeNull();
    expect(failureOf({ ...signed, evidencePhotoIds: ['strip-photo'] })).toMatchObject({ missing: [['bulbs-photo-missing']] });
  });
});

describe('a correction', () => {
  const earlier = determination({ id: 'first', exuviaId: 'skin-2' });

  it('replaces a standing determination of the same skin', () => {
    expect(failureOf({ supersedes: 'first' }, { determinations: [earlier] })).toBeNull();
  });

  it.each([
    ['other-skin', [{ ...earlier, exuviaId: 'skin-1' }]],
    ['withdrawn', [{ ...earlier, withdrawn: { at: '2026-06-01T12:00:00.000Z', reason: 'wrong skin' } }]],
    ['already-corrected', [earlier, determination({ id: 'second', exuviaId: 'skin-2', supersedes: 'first' })]],
  ] as const)('is refused: %s', (reason, determinations) => {
    expect(failureOf({ supersedes: 'first' }, { determinations })).toEqual({ code: 'correction-misplaced', id: 'first', reason });
  });

  it('is refused when there is nothing to correct', () => {
    expect(failureOf({ supersedes: 'first' })).toEqual({ code: 'not-found', what: 'determination', id: 'first' });
  });
});

describe('pins on evidence', () => {
  const at = (xPx: number, yPx: number) => ({ xPx, yPx });
  const pinned = (mark: EvidencePin['mark'], photoId = 'strip-photo'): Partial<DeterminationDraft> => ({
    evidencePhotoIds: ['strip-photo'],
    pins: [{ question: 'receptaclesSeen', photoId, mark }],
  });

  it('lie on one of the evidence photos, edges included', () => {
    expect(failureOf(pinned(null))).toBeNull();
    expect(failureOf(pinned({ kind: 'point', at: at(4000, 0) }))).toBeNull();
    expect(failureOf(pinned({ kind: 'outline', points: [at(1, 1), at(90, 5), at(40.5, 80)] }))).toBeNull();
    expect(failureOf(pinned(null, 'animal-photo'))).toEqual({ code: 'pin-misplaced', photoId: 'animal-photo', reason: 'not-evidence' });
    for (const wrong of [at(4000.1, 0), at(-0.1, 5), at(5, Number.NaN)]) {
      expect(failureOf(pinned({ kind: 'point', at: wrong }))).toMatchObject({ reason: 'outside-photo' });
    }
  });
});

describe('what a model or a hand decides', () => {
  it('"anomalous" is signed without a level, with any answers', () => {
    expect(failureOf({ sex: 'anomalous', level: null })).toBeNull();
    expect(failureOf({ sex: 'anomalous', level: 'strong' })).toEqual({ code: 'level-without-sex' });
  });

  it('a first-time reader without a reference does not reach as far', () => {
    const novice = { ...CLEAR_FEMALE, legSpanMm: 60, readerExperience: 'first-time' } as const;
    expect(failureOf({ level: 'strong', checklist: novice })).toMatchObject({ highest: 'probable', missing: [['evidence-too-weak']] });
    expect(failureOf({ level: 'strong', checklist: { ...novice, comparedWithReference: 'yes' } })).toBeNull();
  });

  it('grade D forbids answers to the later questions as well', () => {
    const checklist = { ...BLANK_CHECKLIST, grade: 'D', flapLifts: 'yes', lowerLipSeen: 'no' } as const;
    expect(failureOf({ sex: 'unsexed', level: null, checklist })).toEqual({
      code: 'strip-not-readable',
      answered: ['flapLifts', 'lowerLipSeen'],
    });
  });
});
