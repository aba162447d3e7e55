import { describe, expect, it } from 'vitest';
import { kinshipOf, mayLearnFrom } from '../../../src/domain/growth/kin.ts';
import { placeMoltsIfSound } from '../../../src/domain/growth/positions.ts';

const one = { taxon: 'Brachypelma hamorii', eggSacGroup: 'Sac 1' };

describe('kinshipOf', () => {
  it.each([
    ['the same sac and taxon, in another case', { taxon: ' brachypelma Hamorii', eggSacGroup: 'sac 1 ' }, 'siblings'],
    ['the same taxon and another sac', { ...one, eggSacGroup: 'sac 2' }, 'species'],
    ['the same taxon and no sac', { ...one, eggSacGroup: null }, 'species'],
    ['a sac of the same label and another species', { taxon: 'Brachypelma boehmei', eggSacGroup: 'Sac 1' }, 'genus'],
    ['the same genus, its species not named', { taxon: 'Brachypelma sp.', eggSacGroup: null }, 'genus'],
    ['a sac of the same label and another genus', { taxon: 'Grammostola pulchra', eggSacGroup: 'Sac 1' }, null],
    ['no name', { taxon: '', eggSacGroup: null }, null],
  ])('by %s', (_, other, expected) => {
    expect(kinshipOf(one, other)).toBe(expected);
    expect(kinshipOf(other, one)).toBe(expected);
  });

  it('makes no kin of two animals without a name', () => {
    const nameless = { taxon: '', eggSacGroup: null };
    expect(kinshipOf(nameless, nameless)).toBeNull();
  });

  it('keeps invented animals and the keeper\u2019s own apart', () => {
    expect(mayLearnFrom({ sample: true }, { sample: false })).toBe(false);
    expect(mayLearnFrom({ sample: true }, { sample: true })).toBe(true);
  });
});

describe('placeMoltsIfSound', () => {
  it('has no places where the numbers contradict the dates, and those of placeMolts else', () => {
    const molt = (day: string, instarShed: number | null) => ({ happenedFrom: day, happenedTo: day, instarShed });
    expect(placeMoltsIfSound([molt('2025-01-01', 5), molt('2025-06-01', 5)])).toBeNull();
    expect(placeMoltsIfSound([molt('2025-01-01', 5), molt('2025-06-01', 6)])?.map(({ step }) => step)).toEqual([0, 1]);
  });
});
