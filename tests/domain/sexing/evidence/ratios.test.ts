import { describe, expect, it } from 'vitest';
import type { Checklist } from '../../../../src/domain/sexing/determination.ts';
import type { Finding, Silence } from '../../../../src/domain/sexing/evidence/item.ts';
import { liveFindings } from '../../../../src/domain/sexing/evidence/liveFindings.ts';
import { sizeClassOf } from '../../../../src/domain/sexing/evidence/sizeClass.ts';
import { type GenusKnown, skinFindings } from '../../../../src/domain/sexing/evidence/skinFindings.ts';
import { bandOf } from '../../../../src/domain/sexing/evidence/weigh.ts';
import type { LiveFinding } from '../../../../src/domain/sexing/live/liveSign.ts';
import { SHIPPED_MODEL } from '../../../support/shippedModel.ts';
import { genus, WELL_READ } from '../readings.ts';

// Every number of the model as it shows before any gate, worked out by hand. All are judgments of ours: no controlled study of
// the error rates of reading skins is known. The one exception, an opinion from below at 0.7 / 0.3, is named where it is used.

const { numbers } = SHIPPED_MODEL;
const PLAIN = 'Lasiodora parahybana';
const [LOOK_ALIKES, THIN, WITHOUT] = ['Tliltocatl vagans', 'Ybyrapora diversipes', 'Sickius longibulbi'];
const SPAN_MM = { A: 15, B: 30, C: 60, D: 90 } as const;
const SEEN: Partial<Checklist> = { receptaclesSeen: 'yes' };
const EMPTY: Partial<Checklist> = { receptaclesSeen: 'no' };
const LIP: Partial<Checklist> = { uterusExternusSeen: 'yes' };
const NO_LIP: Partial<Checklist> = { uterusExternusSeen: 'no' };
const FUSILLAE: Partial<Checklist> = { fusillaeOutsideSeen: 'yes' };
const NOVICE: Partial<Checklist> = { readerExperience: 'first-time' };
const LOUPE: Partial<Checklist> = { magnification: 'loupe' };
const AGREED: Partial<Checklist> = { secondReaderAgrees: 'yes' };
const BLIND: Partial<Checklist> = { ...AGREED, secondReaderBlind: 'yes' };

function onSkin(sizeClass: keyof typeof SPAN_MM, answers: Partial<Checklist>, taxon = PLAIN): Finding[] {
  const checklist: Checklist = { ...WELL_READ, legSpanMm: SPAN_MM[sizeClass], ...answers };
  return skinFindings({ exuviaId: 'skin', checklist }, genus(taxon), numbers);
}

describe('a strip, by size class and circumstance', () => {
  it.each([
    ['A', SEEN, 3],
    ['B', SEEN, 0.5 / 0.07],
    ['C', SEEN, 21.25],
    ['D', SEEN, 64],
    ['A', EMPTY, 0.85 / 0.95],
    ['B', EMPTY, 0.5 / 0.93],
    ['C', EMPTY, 0.15625],
    ['D', EMPTY, 0.04 / 0.985],
    // The lip doubles what was seen, up to 120, or what two readers made of it where that is more.
    ['A', { ...SEEN, ...LIP }, 6],
    ['B', { ...SEEN, ...LIP }, 1 / 0.07],
    ['C', { ...SEEN, ...LIP }, 42.5],
    ['D', { ...SEEN, ...LIP }, 120],
    ['D', { uterusExternusSeen: 'yes' }, 2],
    // Where it was looked for and is absent, what was seen may be a look-alike; an empty strip without it is what a male leaves.
    ['A', { ...SEEN, ...NO_LIP }, 1],
    ['B', { ...SEEN, ...NO_LIP }, 0.5 / 0.21],
    ['C', { ...SEEN, ...NO_LIP }, 0.85 / 0.12],
    ['D', { ...SEEN, ...NO_LIP }, 0.96 / 0.045],
    ['D', { ...EMPTY, ...NO_LIP }, 0.04 / 0.985],
    // A strip that is not quite complete
    ['C', { ...SEEN, grade: 'B' }, 18.0625],
    ['D', { ...SEEN, grade: 'B' }, 54.4],
    ['D', { ...EMPTY, grade: 'B' }, 0.184 / 0.985],
    ['D', { ...SEEN, grade: 'C' }, 38.4],
    ['D', { ...EMPTY, grade: 'C' }, 0.424 / 0.985],
    // Without a stereomicroscope, which counts on small skins alone
    ['A', { ...SEEN, ...LOUPE }, 1.5],
    ['B', { ...SEEN, ...LOUPE }, 0.25 / 0.07],
    ['B', { ...SEEN, magnification: 'naked-eye' }, 0.25 / 0.07],
    ['B', { ...SEEN, magnification: null }, 0.25 / 0.07],
    ['B', { ...EMPTY, ...LOUPE }, 0.75 / 0.93],
    ['C', { ...SEEN, ...LOUPE }, 21.25],
    // Who reads it
    ['D', { ...SEEN, ...NOVICE }, 27.2],
    ['D', { ...EMPTY, ...NOVICE }, 0.184 / 0.97],
    ['D', { ...SEEN, ...NOVICE, comparedWithReference: 'yes' }, 64],
    ['D', { ...SEEN, ...BLIND }, 0.96 / 0.009],
    ['D', { ...EMPTY, ...BLIND }, 0.04 / 0.991],
    ['D', { ...SEEN, ...AGREED }, 64],
    // The only positive sign of a male on a skin
    ['B', FUSILLAE, 1 / 2],
    ['C', FUSILLAE, 1 / 4],
    ['D', FUSILLAE, 1 / 8],
    ['D', { accessoryOrgansSeen: 'yes' }, 1 / 2],
  ] as const)('class %s, %o: %f', (sizeClass, answers, ratio) => {
    const findings = onSkin(sizeClass, answers);
    expect(findings).toHaveLength(1);
    expect(findings[0]?.ratio).toBeCloseTo(ratio, 9);
  });

  it.each([
    [LOOK_ALIKES, 'B', SEEN, 0.5 / 0.21],
    [LOOK_ALIKES, 'C', SEEN, 0.85 / 0.12],
    [LOOK_ALIKES, 'D', SEEN, 0.96 / 0.045],
    [LOOK_ALIKES, 'D', { ...SEEN, ...LIP }, 120],
    [THIN, 'C', SEEN, 14.875],
    [THIN, 'D', SEEN, 44.8],
    [THIN, 'D', EMPTY, 0.328 / 0.985],
    [WITHOUT, 'D', LIP, 2],
  ] as const)('%s, class %s, %o: %f', (taxon, sizeClass, answers, ratio) => {
    const findings = onSkin(sizeClass, answers, taxon);
    expect(findings).toHaveLength(1);
    expect(findings[0]?.ratio).toBeCloseTo(ratio, 9);
  });

  it.each<[string, keyof typeof SPAN_MM, Partial<Checklist>, string, Silence]>([
    ['receptacles where a male’s organs are as likely', 'A', SEEN, LOOK_ALIKES, 'as-likely-mistaken'],
    ['receptacles of a beginner with a loupe on the smallest skin', 'A', { ...SEEN, ...NOVICE, ...LOUPE }, PLAIN, 'as-likely-mistaken'],
    ['emptiness on the same', 'A', { ...EMPTY, ...NOVICE, ...LOUPE }, PLAIN, 'as-likely-mistaken'],
    ['receptacles in a genus without any', 'D', SEEN, WITHOUT, 'genus-without-spermathecae'],
    [
      'receptacles without the lip that was looked for, where males carry such bodies',
      'D',
      { ...SEEN, ...NO_LIP },
      LOOK_ALIKES,
      'organs-without-lip',
    ],
    ['emptiness in a genus without any', 'D', EMPTY, WITHOUT, 'genus-without-spermathecae'],
    ['fusillae on a skin of class A', 'A', FUSILLAE, PLAIN, 'skin-too-small'],
    ['fusillae on a strip of grade B', 'D', { ...FUSILLAE, grade: 'B' }, PLAIN, 'grade-below-a'],
    ['fusillae seen from the inner side', 'D', { ...FUSILLAE, view: 'inside' }, PLAIN, 'read-from-inside'],
    ['receptacles seen from the outer side', 'D', { ...SEEN, view: 'outside' }, PLAIN, 'read-from-outside'],
    ['emptiness seen from the outer side', 'D', { ...EMPTY, view: 'outside' }, PLAIN, 'read-from-outside'],
    ['a lip seen from the outer side', 'D', { ...LIP, view: 'outside' }, PLAIN, 'read-from-outside'],
    ['accessory organs seen from the outer side', 'D', { accessoryOrgansSeen: 'yes', view: 'outside' }, PLAIN, 'read-from-outside'],
  ])('hears nothing in %s', (_, sizeClass, answers, taxon, silence) => {
    expect(onSkin(sizeClass, answers, taxon)).toMatchObject([{ ratio: 1, silence }]);
  });

  it('hears the lip alone beside receptacles that a genus without any cannot have', () => {
    expect(onSkin('D', { ...SEEN, ...LIP }, WITHOUT)).toMatchObject([
      { kind: 'receptacles-seen', ratio: 1, silence: 'genus-without-spermathecae' },
      { kind: 'lip-alone', ratio: 2 },
    ]);
  });

  it('takes receptacles and accessory organs together for neither, until a lip tells', () => {
    const both: Partial<Checklist> = { ...SEEN, accessoryOrgansSeen: 'yes' };
    for (const uterusExternusSeen of ['no', 'cannot-tell', 'not-looked'] as const) {
      expect(onSkin('D', { ...both, uterusExternusSeen })).toMatchObject([
        { kind: 'receptacles-seen', ratio: 1, silence: 'organs-without-lip' },
        { kind: 'accessory-organs', ratio: 1, silence: 'organs-without-lip' },
      ]);
    }
    expect(onSkin('D', { ...both, ...LIP })).toMatchObject([{ kind: 'receptacles-seen', ratio: 120 }]);
    // What stands on the outer side is not touched by it.
    expect(onSkin('D', { ...both, ...FUSILLAE }).at(-1)).toMatchObject({ kind: 'fusillae-outside', ratio: 1 / 8 });
  });
});

describe('what the animal itself shows', () => {
  const HOOKED: GenusKnown = { ...genus(PLAIN), adultCarapaceMm: 20 };
  const shown = (finding: LiveFinding, known: { photographed?: boolean; carapaceMm?: number; genus?: GenusKnown } = {}) => {
    const { photographed = false, carapaceMm = null, genus: ofGenus = HOOKED } = known;
    return liveFindings([{ finding, photographed, carapaceMm }], { genus: ofGenus, numbers });
  };
  const bulbs = (seen: boolean): LiveFinding => ({ kind: 'palpal-bulbs', seen, ultimateMoltId: null });
  const fusillae = (seen: boolean, legSpanMm: number | null): LiveFinding => ({ kind: 'ventral-fusillae', seen, legSpanMm });
  const impression = (from: 'ventral' | 'color' | 'build' | 'seller', towards: 'female' | 'male'): LiveFinding => ({
    ...{ kind: 'impression', from, towards },
  });
  const colored: GenusKnown = { ...HOOKED, earlyColorBasis: { kind: 'source', text: 'a published revision', weak: false } };

  it.each<[LiveFinding, Parameters<typeof shown>[1], number]>([
    [bulbs(true), { photographed: true }, 1 / 2000],
    [bulbs(true), {}, 1 / 300],
    [bulbs(false), { carapaceMm: 16 }, 1.5],
    [bulbs(false), { carapaceMm: 18 }, 3.25],
    [bulbs(false), { carapaceMm: 20 }, 5],
    [bulbs(false), { carapaceMm: 26 }, 5],
    [{ kind: 'tibial-hooks', seen: true }, {}, 1 / 300],
    [{ kind: 'egg-sac', fertile: 'no' }, {}, 3000],
    [{ kind: 'sperm-web' }, {}, 1 / 20],
    [{ kind: 'sperm-web' }, { photographed: true }, 1 / 60],
    [fusillae(true, 75.1), { photographed: true }, 1 / 6],
    [fusillae(true, 75), { photographed: true }, 1 / 3],
    [fusillae(true, 40), { photographed: true }, 1 / 3],
    [fusillae(true, 39.9), { photographed: true }, 1 / 1.5],
    [fusillae(true, null), { photographed: true }, 1 / 1.5],
    [fusillae(true, 90), {}, 1 / 1.5],
    [fusillae(false, 75.1), { photographed: true }, 3],
    [fusillae(false, 75), { photographed: true }, 1.3],
    [fusillae(false, 90), {}, 1.3],
    // One figure quoted on a German keepers' page: the look from below is right in about 70 of 100; 0.7 / 0.3 is 2.33.
    [impression('ventral', 'female'), {}, 2.3],
    [impression('ventral', 'male'), {}, 1 / 2.3],
    [impression('color', 'female'), { genus: colored }, 3],
    [impression('color', 'male'), { genus: colored }, 1 / 3],
    [impression('build', 'female'), {}, 1.3],
    [impression('build', 'male'), {}, 1 / 1.3],
    [impression('seller', 'female'), {}, 1.2],
    [impression('seller', 'male'), {}, 1 / 1.2],
  ])('%o, %o: %f', (finding, known, ratio) => {
    const findings = shown(finding, known);
    expect(findings).toHaveLength(1);
    expect(findings[0]?.ratio).toBeCloseTo(ratio, 9);
  });

  it.each<[LiveFinding, Parameters<typeof shown>[1], Silence]>([
    [bulbs(false), { carapaceMm: 15.9 }, 'animal-not-adult-size'],
    [bulbs(false), { carapaceMm: 26, genus: genus(PLAIN) }, 'animal-not-adult-size'],
    [{ kind: 'tibial-hooks', seen: false }, {}, 'no-hooks-says-nothing'],
    [{ kind: 'tibial-hooks', seen: true }, { genus: genus('Poecilotheria regalis') }, 'genus-hooks-not-known'],
    [impression('color', 'male'), {}, 'color-without-source'],
  ])('%o, %o: nothing', (finding, known, silence) => {
    expect(shown(finding, known)).toMatchObject([{ ratio: 1, silence }]);
  });

  it('keeps two opinions of one kind that oppose each other, in whatever order they were told', () => {
    const told = (...towards: ('female' | 'male')[]) =>
      liveFindings(
        towards.map((sex) => ({ finding: impression('seller', sex), photographed: false, carapaceMm: null })),
        { genus: HOOKED, numbers },
      ).map(({ ratio }) => ratio);
    expect(told('female', 'male')).toEqual([1.2, 1 / 1.2]);
    expect(told('male', 'female')).toEqual([1 / 1.2, 1.2]);
    expect(told('female', 'male').reduce((a, b) => a * b)).toBeCloseTo(1, 12);
    expect(told('male', 'male')).toEqual([1 / 1.2]);
  });

  it('takes a look from below and the opinion formed by it for one look, unless they oppose each other', () => {
    const below = (seen: boolean, towards: 'female' | 'male') =>
      liveFindings(
        [fusillae(seen, 90), impression('ventral', towards)].map((finding) => ({ finding, photographed: true, carapaceMm: null })),
        { genus: HOOKED, numbers },
      ).map(({ kind, ratio, silence }) => [kind, ratio, silence]);
    expect(below(true, 'male')).toEqual([
      ['ventral-fusillae', 1 / 6, null],
      ['impression-ventral', 1, 'same-look-from-below'],
    ]);
    expect(below(false, 'female')).toEqual([
      ['no-ventral-fusillae', 3, null],
      ['impression-ventral', 1, 'same-look-from-below'],
    ]);
    expect(below(true, 'female')).toEqual([
      ['ventral-fusillae', 1 / 6, null],
      ['impression-ventral', 2.3, null],
    ]);
  });
});

describe('limits', () => {
  it.each([
    ...([
      [2.9, 'A'],
      [3, 'B'],
      [5.9, 'B'],
      [6, 'C'],
      [11, 'C'],
      [11.1, 'D'],
    ] as const),
  ])('a carapace of %s mm is class %s', (carapaceMm, expected) => {
    expect(sizeClassOf({ legSpanMm: null, carapaceMm, adultCarapaceMm: null }, numbers)).toBe(expected);
  });

  it.each([
    ...([
      [14.9, 'A'],
      [15, 'B'],
      [29.9, 'B'],
      [30, 'C'],
      [50, 'C'],
      [50.1, 'D'],
    ] as const),
  ])('a carapace of %s %% of an adult’s is class %s', (carapaceMm, expected) => {
    expect(
      sizeClassOf(
        { legSpanMm: null, carapaceMm, adultCarapaceMm: 100 },
        { ...numbers, 'carapace.fromB': 0.1, 'carapace.fromC': 0.2, 'carapace.aboveD': 0.3 },
      ),
    ).toBe(expected);
  });

  it.each([
    ...([
      [0.599, 'unsexed'],
      [0.6, 'leaning'],
      [0.799, 'leaning'],
      [0.8, 'probable'],
      [0.95, 'probable'],
    ] as const),
    ...([
      [0.951, 'strong'],
      [0.9899, 'strong'],
      [0.99, 'established'],
    ] as const),
  ])('%f is %s', (probability, band) => expect(bandOf(probability, numbers)).toBe(band));
});
