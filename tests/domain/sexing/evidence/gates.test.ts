import { describe, expect, it } from 'vitest';
import type { Checklist } from '../../../../src/domain/sexing/determination.ts';
import type { LiveEvidence } from '../../../../src/domain/sexing/evidence/liveFindings.ts';
import { modelAfter } from '../../../../src/domain/sexing/evidence/model.ts';
import { prospectsOf } from '../../../../src/domain/sexing/evidence/prospects.ts';
import type { StripReading } from '../../../../src/domain/sexing/evidence/skinFindings.ts';
import { type Weighing, weigh } from '../../../../src/domain/sexing/evidence/weigh.ts';
import type { LiveFinding } from '../../../../src/domain/sexing/live/liveSign.ts';
import { weightInWords } from '../../../../src/words/evidence.ts';
import { SHIPPED_MODEL } from '../../../support/shippedModel.ts';
import { CLEAR_FEMALE, CLEAR_MALE, genus, WELL_READ } from '../readings.ts';

// The limits 0.95, 0.98, 0.985, 0.90 and the strength of 10 are judgments of ours.

const PLAIN = 'Lasiodora parahybana';
const SPAN_MM = { A: 15, B: 30, C: 60, D: 90 } as const;
type Class = keyof typeof SPAN_MM;

const seen = (sizeClass: Class): Checklist => ({ ...WELL_READ, receptaclesSeen: 'yes', legSpanMm: SPAN_MM[sizeClass] });
const empty = (sizeClass: Class): Checklist => ({ ...WELL_READ, receptaclesSeen: 'no', legSpanMm: SPAN_MM[sizeClass] });
const live = (finding: LiveFinding, photographed = false): LiveEvidence => ({ finding, photographed, carapaceMm: null });
const says = (from: 'seller' | 'build' | 'ventral', towards: 'female' | 'male') => live({ kind: 'impression', from, towards });
const fusillae = (legSpanMm: number, photographed: boolean) => live({ kind: 'ventral-fusillae', seen: true, legSpanMm }, photographed);

function of(checklists: readonly Checklist[], told: readonly LiveEvidence[] = [], model = SHIPPED_MODEL, taxon = PLAIN): Weighing {
  const readings = checklists.map((checklist, index) => ({ exuviaId: `skin-${index}`, checklist }));
  return weigh({ genus: genus(taxon), readings, live: told }, model);
}

describe('a gate is opened by what was shown, never by a trifle', () => {
  const twoSmall = [seen('B'), seen('B')];
  const twoEmpty = [empty('D'), empty('D')];

  it.each([
    ['nothing more', []],
    ['a seller’s word', [says('seller', 'female')]],
    ['a build', [says('build', 'female')]],
    ['an opinion from below', [says('ventral', 'female')]],
    ['no fusillae from below', [live({ kind: 'ventral-fusillae', seen: false, legSpanMm: 90 }, true)]],
  ])('two skins of class B and %s: a female at 0.90', (_, told) => {
    expect(of(twoSmall, told)).toMatchObject({ towards: 'female', probability: 0.9, band: 'probable', gate: 'small-skins' });
  });

  it.each([
    ['nothing more', []],
    ['a seller’s word', [says('seller', 'male')]],
    ['a build', [says('build', 'male')]],
    ['an opinion from below', [says('ventral', 'male')]],
    ['fusillae from below that no photo shows', [fusillae(90, false)]],
    ['fusillae from below on a small animal', [fusillae(30, true)]],
  ])('two empty strips of class D and %s: a male at 0.95', (_, told) => {
    expect(of(twoEmpty, told)).toMatchObject({ towards: 'male', probability: 0.95, band: 'probable', gate: 'male-by-absence' });
  });

  it('a body without a lip on one of them opens it no more', () => {
    expect(of([empty('D'), { ...empty('D'), accessoryOrgansSeen: 'yes' }])).toMatchObject({ probability: 0.95, gate: 'male-by-absence' });
  });

  it.each([
    ['fusillae from below, photographed', [fusillae(60, true)]],
    ['hooks', [live({ kind: 'tibial-hooks', seen: true })]],
    ['a sperm web', [live({ kind: 'sperm-web' })]],
  ])('%s: the male goes on to 0.98, where only bulbs help', (_, told) => {
    expect(of(twoEmpty, told)).toMatchObject({ towards: 'male', probability: 0.98, gate: 'male-without-bulbs' });
    expect(of([empty('B'), empty('B')], told).gate).not.toBe('small-skins');
  });

  it('fusillae on the outer side of one of them do the same, and bulbs open all', () => {
    const outside: Checklist = { ...CLEAR_MALE, legSpanMm: 90 };
    expect(of([empty('D'), outside])).toMatchObject({ probability: 0.98, gate: 'male-without-bulbs' });
    const bulbs = live({ kind: 'palpal-bulbs', seen: true, ultimateMoltId: null });
    expect(of(twoEmpty, [bulbs])).toMatchObject({ band: 'established', gate: null });
  });

  it('an egg sac opens both gates of a female', () => {
    expect(of(twoSmall, [live({ kind: 'egg-sac', fertile: 'no' })])).toMatchObject({ towards: 'female', band: 'established', gate: null });
  });
});

describe('the second skin of a female', () => {
  it.each([['A'], ['B']] as const)('of class %s does not lift one of class D above 0.985', (small) => {
    expect(of([seen('D'), seen(small)])).toMatchObject({ probability: 0.985, gate: 'female-on-one-skin' });
  });

  it.each([['C'], ['D']] as const)('of class %s does', (large) => {
    expect(of([seen('D'), seen(large)])).toMatchObject({ band: 'established', gate: null });
  });

  it('speaks by receptacles: a lip alone on a large skin lifts nothing', () => {
    const lip: Checklist = { ...WELL_READ, uterusExternusSeen: 'yes' };
    expect(of([seen('D'), lip])).toMatchObject({ probability: 0.985, gate: 'female-on-one-skin' });
    expect(of([seen('B'), seen('B'), lip])).toMatchObject({ probability: 0.9, gate: 'small-skins' });
  });
});

// Males of Tliltocatl carry look-alikes: a Swedish keepers' society page (Minax, "Sexing") and Devin 2024, "Determining Sex of
// Theraphosidae with Exuviae"; the uterus externus tells. That it holds a female below "probable" is a judgment of ours.
describe('receptacles without a lip', () => {
  const TLILTOCATL = 'Tliltocatl vagans';
  const unchecked = { ...seen('D'), uterusExternusSeen: 'not-looked' } as const;
  const absent = { ...seen('D'), uterusExternusSeen: 'no' } as const;
  const clear = { ...CLEAR_FEMALE, legSpanMm: 90 };
  const inGenus = (taxon: string, checklists: readonly Checklist[], told: readonly LiveEvidence[] = []) =>
    of(checklists, told, SHIPPED_MODEL, taxon);

  it.each([
    [TLILTOCATL, unchecked],
    [PLAIN, absent],
  ])('%s: lean to a female, on one skin as on three', (taxon, checklist) => {
    for (const checklists of [[checklist], [checklist, checklist], [checklist, checklist, checklist]]) {
      const weighing = inGenus(taxon, checklists, [says('seller', 'female')]);
      expect(weighing).toMatchObject({ towards: 'female', band: 'leaning', probability: 0.79, gate: 'look-alikes-alone' });
    }
  });

  it('say nothing at all where males carry such bodies and the lip was looked for', () => {
    expect(inGenus(TLILTOCATL, [absent, absent])).toMatchObject({ towards: null, band: 'unsexed' });
  });

  it('rise by the lip, by an egg sac, and beside a skin with a lip, which they do not make two', () => {
    expect(inGenus(TLILTOCATL, [{ ...unchecked, uterusExternusSeen: 'yes' }])).toMatchObject({ band: 'strong' });
    expect(inGenus(TLILTOCATL, [unchecked], [live({ kind: 'egg-sac', fertile: 'yes' })])).toMatchObject({ band: 'established' });
    expect(inGenus(TLILTOCATL, [unchecked, clear])).toMatchObject({ probability: 0.985, gate: 'female-on-one-skin' });
    expect(inGenus(TLILTOCATL, [clear, clear])).toMatchObject({ band: 'established', gate: null });
  });

  it('say that a look for the lip is what would change it', () => {
    const evidence = { genus: genus(TLILTOCATL), readings: [{ exuviaId: 'skin', checklist: unchecked }], live: [] };
    expect(prospectsOf(evidence, 'skin', SHIPPED_MODEL)).toContainEqual(
      expect.objectContaining({ step: 'look-for-lip', towards: 'female', band: 'strong' }),
    );
  });
});

describe('what nobody can check', () => {
  it.each<[string, readonly LiveEvidence[], 'female' | 'male']>([
    ['fusillae from below on a large animal, with a photo', [fusillae(90, true)], 'male'],
    [
      'the same, with the opinions of others',
      [fusillae(90, true), says('ventral', 'male'), says('seller', 'male'), says('build', 'male')],
      'male',
    ],
    [
      'no bulbs at full adult size, with opinions',
      [
        { ...live({ kind: 'palpal-bulbs', seen: false, ultimateMoltId: null }), carapaceMm: 60 },
        says('ventral', 'female'),
        says('seller', 'female'),
      ],
      'female',
    ],
    ['opinions of every kind', [says('ventral', 'female'), says('seller', 'female'), says('build', 'female')], 'female'],
  ])('%s: a leaning at most', (_, told, towards) => {
    expect(of([], told)).toMatchObject({ towards, band: 'leaning' });
  });

  it('is no sex at all while nothing weighs, whatever the odds were before', () => {
    const adjustments = { 'prior.female': 0.95 };
    const model = modelAfter([{ adjustments, by: 'K', note: 'n', revision: 1, at: '2026-01-01T00:00:00.000Z' }]);
    expect(of([], [], model)).toMatchObject({ towards: null, band: 'unsexed' });
    expect(of([{ ...seen('D'), skinMatchesAnimal: 'cannot-tell' }], [], model)).toMatchObject({ towards: null, band: 'unsexed' });
    expect(of([], [says('seller', 'female')], model)).toMatchObject({ towards: 'female', band: 'leaning', gate: 'opinions-alone' });
  });
});

describe('a second reader who does not agree', () => {
  const disputed = { ...CLEAR_FEMALE, legSpanMm: 90, secondReaderAgrees: 'no' } as const;

  it('leaves a leaning, until another skin speaks', () => {
    expect(of([disputed])).toMatchObject({ towards: 'female', band: 'leaning', gate: 'readers-disagree' });
    expect(of([{ ...CLEAR_MALE, legSpanMm: 90, secondReaderAgrees: 'no' }])).toMatchObject({ band: 'leaning', gate: 'readers-disagree' });
    expect(of([disputed, { ...CLEAR_FEMALE, legSpanMm: 90 }])).toMatchObject({ probability: 0.985, gate: 'female-on-one-skin' });
  });
});

describe('a contradiction', () => {
  const TORN = { towards: null, band: 'unsexed', conflict: true } as const;
  const female: Checklist = { ...CLEAR_FEMALE, legSpanMm: 90 };
  // A quarter by its fusillae and 1 / 6.4 by its emptiness: light each, together 1 / 25.6.
  const male: Checklist = { ...CLEAR_MALE, legSpanMm: 60 };

  it('of skins counts by what each comes to as a whole', () => {
    expect(of([female, male])).toMatchObject(TORN);
    expect(of([male, female])).toMatchObject(TORN);
    expect(of([female, empty('C')])).toMatchObject({ towards: 'female', conflict: false });
  });

  it('of two readings of one skin counts the same way, and both stay on view', () => {
    const ofOne = (checklists: readonly Checklist[]) => {
      const readings = checklists.map((checklist): StripReading => ({ exuviaId: 'skin', checklist }));
      return weigh({ genus: genus(PLAIN), readings, live: [] }, SHIPPED_MODEL);
    };
    const torn = ofOne([
      { ...male, magnification: 'loupe' },
      { ...female, legSpanMm: 60 },
    ]);
    expect(torn).toMatchObject(TORN);
    expect(torn.items.map(({ kind, towards, gaveWay }) => [kind, towards, gaveWay])).toEqual([
      ['receptacles-seen', 'female', false],
      ['strip-empty', 'male', true],
      ['fusillae-outside', 'male', true],
    ]);
    expect(torn.items.map(weightInWords)).toEqual([
      'heavy, for a female',
      'gave way to a better reading of the same skin; it spoke for a male',
      'gave way to a better reading of the same skin; it spoke for a male',
    ]);
  });

  it.each([
    [10, false],
    [10.1, true],
  ])('begins above a strength of ten: a web of %f against a skin', (strength, conflict) => {
    const adjustments = { 'spermWeb.seen': strength };
    const model = modelAfter([{ adjustments, by: 'K', note: 'n', revision: 1, at: '2026-01-01T00:00:00.000Z' }]);
    expect(of([female], [live({ kind: 'sperm-web' })], model).conflict).toBe(conflict);
  });

  it('is not softened: a skin counts less beside one that agrees, and in full beside one that does not', () => {
    const { items, probability } = of([female, empty('C')]);
    expect(items.map(({ weakened }) => weakened)).toEqual([false, false]);
    expect(probability / (1 - probability)).toBeCloseTo(120 * 0.15625, 9);
    const three = of([female, empty('C'), empty('C')]);
    expect(three.items.map(({ weakened }) => weakened)).toEqual([false, false, true]);
    expect(three.probability / (1 - three.probability)).toBeCloseTo(120 * 0.15625 ** 1.6, 9);
  });
});
