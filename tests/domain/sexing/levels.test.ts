import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  Answer,
  BLANK_CHECKLIST,
  type Checklist,
  Checklist as ChecklistSchema,
  type Level,
} from '../../../src/domain/sexing/determination.ts';
import type { EvidenceModel } from '../../../src/domain/sexing/evidence/model.ts';
import type { Examined } from '../../../src/domain/sexing/facts.ts';
import { assessLevel, missingFor } from '../../../src/domain/sexing/levels.ts';
import { rankOf } from '../../../src/domain/sexing/rank.ts';
import { SHIPPED_MODEL } from '../../support/shippedModel.ts';
import { CLEAR_FEMALE, CLEAR_MALE, determination, EMPTY_STRIP, examined, genus, skins, WELL_READ } from './readings.ts';

/*
 * Where a rule has no source named beside it, it is a judgment shared by careful keepers: no controlled study of error
 * rates is known, and those who study the development of spermathecae call publications almost lacking (Hildebrandt 2022,
 * The ontogenetic development of tarantula spermathecae).
 */

function highest(sex: 'female' | 'male', checklist: Checklist, changes: Partial<Examined> = {}): Level | null {
  return assessLevel(sex, examined(checklist, changes)).highest;
}

test('what is large enough is a number of the model, and the rules follow it when a keeper moves it', () => {
  const model: EvidenceModel = { version: '1.1', numbers: { ...SHIPPED_MODEL.numbers, 'span.largeAbove': 60 } };
  const at55 = { ...CLEAR_FEMALE, legSpanMm: 55 };
  expect(highest('female', at55)).toBe('strong');
  expect(highest('female', at55, { model })).toBe('probable');
  expect(missingFor('female', 'strong', examined(at55, { model }))[0]).toContain('skin-small');
  expect(highest('female', { ...at55, legSpanMm: 60.1 }, { model })).toBe('strong');
});

describe('a female', () => {
  const small = { ...CLEAR_FEMALE, legSpanMm: 30 };

  test.each<[string, Checklist, Level | null]>([
    ['is strong on one large grade A skin with receptacles and uterus externus', CLEAR_FEMALE, 'strong'],
    ['is probable on a small skin, however clear', small, 'probable'],
    ['is probable at exactly 5 cm of leg span, which is not over it', { ...CLEAR_FEMALE, legSpanMm: 50 }, 'probable'],
    ['is strong just over 5 cm', { ...CLEAR_FEMALE, legSpanMm: 50.1 }, 'strong'],
    ['is probable while the leg span is unknown', { ...CLEAR_FEMALE, legSpanMm: null }, 'probable'],
    ['is probable on a folded skin', { ...CLEAR_FEMALE, grade: 'B' }, 'probable'],
    ['is probable on a torn skin', { ...CLEAR_FEMALE, grade: 'C' }, 'probable'],
    ['is probable when nobody looked for the lip', { ...CLEAR_FEMALE, uterusExternusSeen: 'not-looked' }, 'probable'],
    ['is probable when the lip cannot be told', { ...CLEAR_FEMALE, uterusExternusSeen: 'cannot-tell' }, 'probable'],
    ['is a leaning when the lip was read as absent', { ...CLEAR_FEMALE, uterusExternusSeen: 'no' }, 'leaning'],
    ['is a leaning when accessory organs were seen', { ...CLEAR_FEMALE, accessoryOrgansSeen: 'yes' }, 'leaning'],
    ['is a leaning when fusillae were seen outside', { ...CLEAR_FEMALE, fusillaeOutsideSeen: 'yes' }, 'leaning'],
    ['is a leaning when the second reader disagrees', { ...CLEAR_FEMALE, secondReaderAgrees: 'no' }, 'leaning'],
    ['is not supported without the book lungs that prove the place', { ...CLEAR_FEMALE, fourBookLungsFound: 'not-looked' }, null],
    ['is not supported when the lungs are not those', { ...CLEAR_FEMALE, fourBookLungsFound: 'no' }, null],
    ['is not supported when only the outer side was viewed', { ...CLEAR_FEMALE, view: 'outside' }, null],
    ['is not supported by a skin that is not the animal’s', { ...CLEAR_FEMALE, skinMatchesAnimal: 'no' }, null],
    ['is not supported by a skin that may be another’s', { ...CLEAR_FEMALE, skinMatchesAnimal: 'cannot-tell' }, null],
    ['is not supported by an absence of fusillae alone', { ...WELL_READ, fusillaeOutsideSeen: 'no' }, null],
    ['is probable at a carapace that is not large, whatever the span', { ...CLEAR_FEMALE, carapaceLengthMm: 7.5 }, 'probable'],
    ['is strong by its carapace alone', { ...CLEAR_FEMALE, legSpanMm: null, carapaceLengthMm: 12 }, 'strong'],
    ['is not supported by an empty strip', { ...EMPTY_STRIP, fusillaeOutsideSeen: 'not-looked' }, null],
    ['is not supported by nothing', BLANK_CHECKLIST, null],
    ['is not supported when bulbs were seen on the animal', { ...CLEAR_FEMALE, palpalBulbsOnAnimal: 'yes' }, null],
    [
      'is established by an egg sac, whatever the skin shows',
      { ...BLANK_CHECKLIST, skinMatchesAnimal: 'yes', eggSacLaid: 'yes' },
      'established',
    ],
  ])('%s', (_, checklist, level) => {
    expect(highest('female', checklist)).toBe(level);
  });

  it('is not established by two readers of one skin: they share its picture', () => {
    const agreed: Checklist = { ...CLEAR_FEMALE, secondReaderAgrees: 'yes', secondReader: 'Ottokar Venn', secondReaderBlind: 'yes' };
    const other = determination({ exuviaId: 'skin-3', reader: 'Ottokar Venn' });
    expect(highest('female', agreed)).toBe('strong');
    expect(highest('female', CLEAR_FEMALE, { determinations: [other] })).toBe('strong');
  });

  it('is established by two skins', () => {
    const earlier = determination({ exuviaId: 'skin-1', level: 'probable' });
    expect(highest('female', CLEAR_FEMALE, { determinations: [earlier] })).toBe('established');
  });

  it.each<[string, Parameters<typeof determination>[0]]>([
    ['was withdrawn', { withdrawn: { at: '2026-06-01T12:00:00.000Z', reason: 'mixed up' } }],
    ['was small', { checklist: { ...CLEAR_FEMALE, legSpanMm: 40 } }],
    ['was torn', { checklist: { ...CLEAR_FEMALE, grade: 'C' } }],
    ['was read without the lip', { checklist: { ...CLEAR_FEMALE, uterusExternusSeen: 'not-looked' } }],
    ['was signed as a leaning only', { level: 'leaning' }],
    ['was read as unsexed', { sex: 'unsexed', level: null }],
  ])('is not established by two skins when the other one %s', (_, changes) => {
    const earlier = determination({ exuviaId: 'skin-1', ...changes });
    expect(highest('female', CLEAR_FEMALE, { determinations: [earlier] })).toBe('strong');
  });
});

describe('a male', () => {
  test.each<[string, Checklist, Level | null]>([
    ['is probable on one large empty grade A strip', EMPTY_STRIP, 'probable'],
    ['is a leaning when the empty skin is small', { ...EMPTY_STRIP, legSpanMm: 30 }, 'leaning'],
    ['is a leaning when the leg span is unknown', { ...EMPTY_STRIP, legSpanMm: null }, 'leaning'],
    ['is a leaning on an empty folded skin', { ...EMPTY_STRIP, grade: 'B' }, 'leaning'],
    ['is a leaning on an empty torn skin', { ...EMPTY_STRIP, grade: 'C' }, 'leaning'],
    ['is a leaning by fusillae alone', { ...WELL_READ, fusillaeOutsideSeen: 'yes' }, 'leaning'],
    ['is a leaning by accessory organs alone', { ...WELL_READ, accessoryOrgansSeen: 'yes' }, 'leaning'],
    ['stays probable with fusillae on one skin only', CLEAR_MALE, 'probable'],
    ['is a leaning when the second reader disagrees', { ...EMPTY_STRIP, secondReaderAgrees: 'no' }, 'leaning'],
    ['is not supported by a strip that cannot be told', { ...EMPTY_STRIP, receptaclesSeen: 'cannot-tell' }, null],
    ['is not supported by a strip that nobody looked at', { ...EMPTY_STRIP, receptaclesSeen: 'not-looked' }, null],
    ['is not supported by fusillae on the skin of another animal', { ...CLEAR_MALE, skinMatchesAnimal: 'no' }, null],
    ['is not supported by an emptiness seen from outside', { ...EMPTY_STRIP, view: 'outside' }, null],
    ['is not supported when receptacles were seen', CLEAR_FEMALE, null],
    ['is a leaning when a uterus externus was seen on the empty strip', { ...EMPTY_STRIP, uterusExternusSeen: 'yes' }, 'leaning'],
    ['is a leaning when a lower lip was seen there', { ...EMPTY_STRIP, lowerLipSeen: 'yes' }, 'leaning'],
    ['is not supported by an empty strip of an animal that laid an egg sac', { ...EMPTY_STRIP, eggSacLaid: 'yes' }, null],
  ])('%s', (_, checklist, level) => {
    expect(highest('male', checklist)).toBe(level);
  });

  it('is strong by fusillae and an empty strip on two successive large skins', () => {
    const before = determination({ exuviaId: 'skin-2', sex: 'male', level: 'probable', checklist: CLEAR_MALE });
    expect(highest('male', CLEAR_MALE, { determinations: [before] })).toBe('strong');
    expect(highest('male', CLEAR_MALE, { determinations: [{ ...before, exuviaId: 'skin-1' }] })).toBe('probable');
    expect(highest('male', EMPTY_STRIP, { determinations: [before] })).toBe('probable');
    // A molt between them that left no skin: nobody knows what it would have shown.
    expect(highest('male', CLEAR_MALE, { determinations: [before], skinsInOrder: skins('skin-2', null, 'skin-3') })).toBe('probable');
    expect(highest('male', CLEAR_MALE, { determinations: [{ ...before, checklist: { ...CLEAR_MALE, legSpanMm: 44 } }] })).toBe('probable');
  });

  it('is never established by emptiness, however many skins and readers agree', () => {
    const checklist: Checklist = { ...CLEAR_MALE, secondReaderAgrees: 'yes', secondReader: 'Ottokar Venn' };
    const determinations = ['skin-1', 'skin-2'].map((exuviaId) =>
      determination({ id: exuviaId, exuviaId, sex: 'male', level: 'probable', checklist: CLEAR_MALE }),
    );
    expect(highest('male', checklist, { determinations })).toBe('strong');
  });
});

// Source: bulbs appear with the last molt of a male and on the animal (British Tarantula Society, FAQ "Mature").
describe('palpal bulbs', () => {
  const onAnimal: Checklist = { ...BLANK_CHECKLIST, skinMatchesAnimal: 'yes', palpalBulbsOnAnimal: 'yes' };

  it('establish a male with a photo of the animal', () => {
    expect(highest('male', onAnimal, { animalPhotoCount: 1 })).toBe('established');
  });

  it('make a strong male without one', () => {
    expect(highest('male', onAnimal)).toBe('strong');
    expect(assessLevel('male', examined(onAnimal)).missing[0]).toEqual(['bulbs-photo-missing']);
  });

  it('are never expected on a skin: their absence makes nobody female, and takes nothing from a male', () => {
    const absent: Checklist = { ...BLANK_CHECKLIST, skinMatchesAnimal: 'yes', palpalBulbsOnAnimal: 'no' };
    expect(highest('female', absent)).toBeNull();
    expect(highest('male', { ...EMPTY_STRIP, palpalBulbsOnAnimal: 'no' })).toBe('probable');
  });

  // Rare truth: a bilateral gynandromorph (Laborda & Perez-Miles 2017, J. Arachnology 45:235-237).
  it('together with a clear female sign leave no more than leanings, never an average', () => {
    const both: Checklist = { ...CLEAR_FEMALE, palpalBulbsOnAnimal: 'yes' };
    expect(highest('male', both, { animalPhotoCount: 1 })).toBe('leaning');
    const withSac: Checklist = { ...onAnimal, eggSacLaid: 'yes' };
    expect(highest('male', withSac, { animalPhotoCount: 1 })).toBe('leaning');
    expect(highest('female', withSac)).toBe('leaning');
  });
});

describe('genera that mislead', () => {
  // Sources: Bertani & da Silva 2002, J. Arachnology 30:519-526 (Sickius); Gallon 2003 and 2005 (Encyocratella).
  it.each(['Sickius longibulbi', 'Encyocratella olivacea', 'sickius sp.'])(
    '%s: without spermathecae, an empty strip weighs nothing',
    (taxon) => {
      expect(highest('male', EMPTY_STRIP, { genus: genus(taxon) })).toBeNull();
      expect(highest('male', CLEAR_MALE, { genus: genus(taxon) })).toBe('leaning');
      expect(highest('female', CLEAR_FEMALE, { genus: genus(taxon) })).toBe('leaning');
    },
  );

  // Sources: a Swedish keepers' society page (minax) and Devin 2024, Determining Sex of Theraphosidae with Exuviae.
  it.each(['Tliltocatl vagans', 'Brachypelma hamorii'])('%s: males carry look-alikes, so the lip decides', (taxon) => {
    const unchecked: Checklist = { ...CLEAR_FEMALE, uterusExternusSeen: 'not-looked' };
    expect(highest('female', unchecked, { genus: genus(taxon) })).toBe('leaning');
    expect(assessLevel('female', examined(unchecked, { genus: genus(taxon) })).missing[0]).toContain('genus-with-accessory-organs');
    expect(highest('female', CLEAR_FEMALE, { genus: genus(taxon) })).toBe('strong');
  });

  // Sources: an encyclopedia page on Ybyrapora (weak); Hildebrandt 2022 on young Haplocosmia.
  it.each(['Ybyrapora diversipes', 'Haplocosmia himalayana'])('%s: thin receptacles make an empty strip a leaning at most', (taxon) => {
    expect(highest('male', EMPTY_STRIP, { genus: genus(taxon) })).toBe('leaning');
  });

  it.each(['', 'Avicularia sp.', 'unknown'])('takes the taxon "%s" as plain', (taxon) => {
    expect(highest('male', EMPTY_STRIP, { genus: genus(taxon) })).toBe('probable');
  });
});

describe('whatever the answers', () => {
  const answer = fc.constantFrom(...Answer.options);
  const checklists: fc.Arbitrary<Checklist> = fc.record({
    skinMatchesAnimal: answer,
    grade: fc.constantFrom('A', 'B', 'C', 'D', null),
    fourBookLungsFound: answer,
    view: fc.constantFrom('inside', 'outside', 'both', null),
    condition: fc.constantFrom('wet', 'dry', 'both', null),
    light: fc.constantFrom('transmitted', 'side', 'both', null),
    magnification: fc.constantFrom('naked-eye', 'loupe', 'stereomicroscope', null),
    receptaclesSeen: answer,
    uterusExternusSeen: answer,
    accessoryOrgansSeen: answer,
    fusillaeOutsideSeen: answer,
    secondReaderAgrees: answer,
    secondReader: fc.constantFrom(null, 'Ottokar Venn'),
    palpalBulbsOnAnimal: answer,
    eggSacLaid: answer,
    legSpanMm: fc.constantFrom(null, 18, 50, 51, 160),
    carapaceLengthMm: fc.constantFrom(null, 2, 8, 20),
    receptacleForm: fc.constantFrom(null, 'paired-separate'),
    flapLifts: answer,
    lowerLipSeen: answer,
    genusProfileRead: answer,
    comparedWithReference: answer,
    readerExperience: fc.constantFrom(null, 'first-time', 'experienced'),
    secondReaderBlind: answer,
    bulbsOnSkin: answer,
  });
  const sexes = fc.constantFrom('female' as const, 'male' as const);
  const earlier = [
    determination({ id: 'a', exuviaId: 'skin-1' }),
    determination({ id: 'b', exuviaId: 'skin-2', sex: 'male', level: 'probable', checklist: CLEAR_MALE }),
  ];
  const runs = { numRuns: 2_000 };
  const above = (level: Level | null, limit: Level): boolean => level !== null && rankOf(level) > rankOf(limit);

  it('the generated checklists are valid records', () => {
    fc.assert(fc.property(checklists, (checklist) => ChecklistSchema.safeParse(checklist).success));
  });

  it('nothing that a skin shows without certainty that the skin is this animal’s', () => {
    fc.assert(
      fc.property(checklists, sexes, (checklist, sex) => {
        const level = highest(sex, checklist, { determinations: earlier, animalPhotoCount: 1 });
        const proved = checklist.palpalBulbsOnAnimal === 'yes' || checklist.eggSacLaid === 'yes';
        if (checklist.skinMatchesAnimal !== 'yes') expect(level).toBe(proved ? level : null);
        expect(checklist.skinMatchesAnimal !== 'yes' && above(level, 'leaning')).toBe(false);
      }),
      runs,
    );
  });

  it('"cannot tell" weighs the same as "not looked"', () => {
    fc.assert(
      fc.property(checklists, sexes, (checklist, sex) => {
        const blinded = Object.fromEntries(
          Object.entries(checklist).map(([name, value]) => [name, value === 'cannot-tell' ? 'not-looked' : value]),
        ) as Checklist;
        expect(highest(sex, blinded, { determinations: earlier })).toBe(highest(sex, checklist, { determinations: earlier }));
      }),
      runs,
    );
  });

  it('no male above a leaning from absence on a skin that is small or of grade B, C or D', () => {
    fc.assert(
      fc.property(checklists, (checklist) => {
        const { grade, legSpanMm, carapaceLengthMm } = checklist;
        const unknown = legSpanMm === null && carapaceLengthMm === null;
        const weak = grade !== 'A' || unknown || (legSpanMm ?? 51) <= 50 || (carapaceLengthMm ?? 8) <= 7.5;
        const level = highest('male', { ...checklist, palpalBulbsOnAnimal: 'no' }, { determinations: earlier, animalPhotoCount: 1 });
        expect(weak && above(level, 'leaning')).toBe(false);
      }),
      runs,
    );
  });

  it('never both sexes above a leaning at once', () => {
    fc.assert(
      fc.property(checklists, (checklist) => {
        const context = { determinations: earlier, animalPhotoCount: 1 };
        expect(above(highest('female', checklist, context), 'leaning') && above(highest('male', checklist, context), 'leaning')).toBe(
          false,
        );
      }),
      runs,
    );
  });

  it('says what is missing for the next level, and nothing about a level that is reached', () => {
    fc.assert(
      fc.property(checklists, sexes, (checklist, sex) => {
        const subject = examined(checklist, { determinations: earlier });
        const { highest: reached, next, missing } = assessLevel(sex, subject);
        if (reached !== null) expect(missingFor(sex, reached, subject)[0]).toEqual([]);
        if (next === null) expect(missing).toEqual([]);
        else expect(missing.length > 0 && missing.every((way) => way.length > 0)).toBe(true);
      }),
      runs,
    );
  });
});
