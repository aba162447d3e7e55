import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  instarNowOf,
  instarOfAnimalPhoto,
  instarOfSkin,
  instarsOfSkins,
  moltsSinceSkin,
  recordedMoltNumber,
} from '../../../src/domain/molting/instars.ts';
import { molts } from './molts.ts';

// Source of the rule: common practice, no source; it follows from what a molt is. The skin shows the instar that ended.

function known(number: number) {
  return { number, certainty: 'known' } as const;
}

function inferred(number: number) {
  return { number, certainty: 'inferred' } as const;
}

describe('the instar a skin shows', () => {
  test.each([
    ['is the one noted', molts(['2025-01-01', 5]), [known(5)]],
    ['is known between two that leave just the room', molts(['2025-01-01', 5], ['2025-06-01'], ['2026-01-01', 7]), [5, 6, 7].map(known)],
    ['is only inferred after the last one noted', molts(['2025-01-01', 5], ['2025-06-01']), [known(5), inferred(6)]],
    ['is only inferred before the first one noted', molts(['2025-01-01'], ['2025-06-01', 6]), [inferred(5), known(6)]],
    ['is unknown beside a gap', molts(['2025-01-01', 5], ['2025-06-01'], ['2026-01-01', 8]), [known(5), null, known(8)]],
    ['is unknown where nothing anchors the count', molts(['2025-01-01'], ['2025-06-01']), [null, null]],
  ] as const)('%s', (_, recorded, instars) => {
    expect(instarsOfSkins(recorded)).toEqual(instars);
  });

  it('is inferred from the instar in which the animal was acquired, on both sides of that day', () => {
    const acquisition = { acquiredOn: '2025-03-01', acquiredInstar: 7 };
    expect(instarsOfSkins(molts(['2025-01-01'], ['2025-06-01'], ['2025-09-01']), acquisition)).toEqual([6, 7, 8].map(inferred));
  });

  it('is known between the acquisition and a molt with a number that leave just the room', () => {
    const acquisition = { acquiredOn: '2025-03-01', acquiredInstar: 7 };
    expect(instarsOfSkins(molts(['2025-06-01'], ['2025-09-01', 8]), acquisition)).toEqual([known(7), known(8)]);
  });

  it('does not follow an acquisition that the numbers noted leave no room for, nor one without a place among the molts', () => {
    const recorded = molts(['2025-06-01', 5], ['2025-09-01']);
    expect(instarsOfSkins(recorded, { acquiredOn: '2025-03-01', acquiredInstar: 8 })).toEqual([known(5), inferred(6)]);
    expect(instarsOfSkins(molts(['2025-06-01']), { acquiredOn: null, acquiredInstar: 7 })).toEqual([null]);
    expect(instarsOfSkins(molts(['2025-01-01'], ['2025-02-01']), { acquiredOn: '2025-03-01', acquiredInstar: 2 })).toEqual([null, null]);
  });

  it('can be asked for one molt, whatever the order of the list', () => {
    const recorded = molts(['2025-06-01'], ['2025-01-01', 5]);
    expect(instarOfSkin('molt-1', recorded)).toEqual(inferred(6));
    expect(instarOfSkin('molt-9', recorded)).toBeNull();
  });
});

describe('the instar of the living animal', () => {
  test.each([
    ['is one more than the last instar shed', molts(['2025-01-01', 5], ['2025-06-01', 6]), known(7)],
    ['counts later molts whose instar nobody noted', molts(['2025-01-01', 5], ['2025-06-01'], ['2026-01-01']), inferred(8)],
    ['is unknown while no instar is known', molts(['2025-01-01'], ['2025-06-01']), null],
    ['is unknown without molts', [], null],
    ['does not care for the order of the list', molts(['2025-06-01', 6], ['2025-01-01', 5]), known(7)],
  ] as const)('%s', (_, recorded, instar) => {
    expect(instarNowOf(recorded)).toEqual(instar);
  });

  it('starts from the instar at which the animal was acquired', () => {
    const acquisition = { acquiredOn: '2025-03-01', acquiredInstar: 4 };
    expect(instarNowOf([], acquisition)).toEqual(inferred(4));
    expect(instarNowOf([], { acquiredOn: null, acquiredInstar: 9 })).toEqual(inferred(9));
    expect(instarNowOf(molts(['2025-06-01'], ['2025-09-01']), acquisition)).toEqual(inferred(6));
    expect(instarNowOf(molts(['2025-01-01'], ['2025-09-01']), acquisition)).toEqual(inferred(5));
  });

  it('leaves the acquisition aside when it fell into the days of a molt', () => {
    expect(instarNowOf(molts(['2025-02-25 to 2025-03-05']), { acquiredOn: '2025-03-01', acquiredInstar: 4 })).toBeNull();
  });

  it('prefers an instar noted at a molt to an older count from the acquisition', () => {
    expect(instarNowOf(molts(['2025-06-01', 7]), { acquiredOn: '2025-03-01', acquiredInstar: 4 })).toEqual(known(8));
  });
});

describe('the molts since a skin', () => {
  test.each([
    ['are those on record where nothing has a number', molts(['2025-01-01'], ['2025-06-01']), 0, [2, 2]],
    ['hold those that the numbers tell of', molts(['2025-01-01', 5], ['2026-01-01', 8]), 0, [4, 4]],
    ['count from the skin on', molts(['2025-01-01', 5], ['2026-01-01', 8]), 1, [1, 1]],
    ['are open beside a gap', molts(['2025-01-01', 5], ['2025-06-01'], ['2026-01-01', 8]), 1, [2, 3]],
    ['are open no longer before the gap', molts(['2025-01-01', 5], ['2025-06-01'], ['2026-01-01', 8]), 0, [4, 4]],
    ['are never fewer than are on record, whatever the numbers say', molts(['2025-01-01', 8], ['2025-06-01', 5]), 0, [2, 2]],
  ] as const)('%s', (_, recorded, index, [fewest, most]) => {
    expect(moltsSinceSkin(recorded, index)).toEqual({ fewest, most });
  });

  it('hold those between the last skin and the day the animal was acquired', () => {
    expect(moltsSinceSkin(molts(['2025-01-01', 5]), 0, { acquiredOn: '2026-01-01', acquiredInstar: 8 })).toEqual({ fewest: 3, most: 3 });
  });

  it('lie between the molts on record and all that the numbers allow, whichever molts have one', () => {
    const shed = fc.array(fc.record({ jump: fc.integer({ min: 1, max: 3 }), noted: fc.boolean() }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(shed, (molted) => {
        let instar = 1;
        const truth = molted.map(({ jump, noted }, index) => {
          instar += jump;
          return { instar, molt: [`20${10 + index}-01-01`, noted ? instar : null] as const };
        });
        const recorded = molts(...truth.map(({ molt }) => molt));
        const lastNoted = molted.at(-1)?.noted ?? false;
        return truth.every(({ instar: of }, index) => {
          const { fewest, most } = moltsSinceSkin(recorded, index);
          const bounded = lastNoted && molted.slice(0, index + 1).some(({ noted }) => noted);
          return (
            fewest >= recorded.length - index && most >= fewest && (!bounded || (fewest <= instar + 1 - of && instar + 1 - of <= most))
          );
        });
      }),
    );
  });
});

describe('a photo of the living animal', () => {
  const recorded = molts(['2025-01-10', 5], ['2025-06-01 to 2025-06-04', 6], ['2026-01-10', 8]);

  test.each([
    ['before the first molt shows the instar it sheds', '2024-12-01', { from: 5, to: 5, certainty: 'known' }],
    ['after a molt shows the next instar', '2025-02-01', { from: 6, to: 6, certainty: 'known' }],
    ['from within the days of a molt can show either side', '2025-06-02', { from: 6, to: 8, certainty: 'known' }],
    ['where a molt went unrecorded can show either side of it', '2025-09-01', { from: 7, to: 8, certainty: 'known' }],
    ['after the last molt shows the instar of now', '2026-03-01', { from: 9, to: 9, certainty: 'known' }],
    ['on the day of a molt can show either side', '2026-01-10', { from: 7, to: 9, certainty: 'known' }],
  ])('%s', (_, takenOn, span) => {
    expect(instarOfAnimalPhoto(takenOn, recorded)).toEqual(span);
  });

  it('shows an instar counted from the acquisition alone as no more than inferred', () => {
    const acquisition = { acquiredOn: '2025-03-01', acquiredInstar: 4 };
    expect(instarOfAnimalPhoto('2025-07-01', molts(['2025-06-01']), acquisition)).toEqual({ from: 5, to: 5, certainty: 'inferred' });
  });

  it('shows an unknown instar when none is known', () => {
    expect(instarOfAnimalPhoto('2025-02-01', molts(['2025-01-01']))).toBeNull();
  });

  it('always belongs to the instar after the one on the skin of the molt before it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 9 }), (first, count) => {
        const months = Array.from({ length: count }, (_, index) => `2025-0${index + 1}`);
        const row = molts(...months.map((month, index) => [`${month}-01`, first + index] as const));
        for (const [index, month] of months.entries()) {
          expect(instarOfAnimalPhoto(`${month}-15`, row)).toEqual({ from: first + index + 1, to: first + index + 1, certainty: 'known' });
        }
        expect(instarNowOf(row)).toEqual(known(first + count));
      }),
    );
  });
});

describe('the number of a molt among those recorded', () => {
  const recorded = molts(['2025-06-01'], ['2024-06-01'], ['2026-06-01']);

  it('follows the dates', () => {
    expect(['molt-2', 'molt-1', 'molt-3'].map((id) => recordedMoltNumber(id, recorded))).toEqual([1, 2, 3]);
  });

  it('is null for a molt of another animal', () => {
    expect(recordedMoltNumber('molt-9', recorded)).toBeNull();
  });
});
