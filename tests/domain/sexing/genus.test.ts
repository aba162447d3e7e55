import { describe, expect, it } from 'vitest';
import { genusOf, profileFor, profilesIn } from '../../../src/domain/sexing/genus/find.ts';
import type { ProfileEdit } from '../../../src/domain/sexing/genus/profile.ts';
import { GENUS_BOOK, genus } from './readings.ts';

describe('the shipped profiles', () => {
  it('are of one genus each, in order, each cell with what it rests on', () => {
    const genera = GENUS_BOOK.shipped.map((profile) => profile.genus);
    expect(genera).toEqual([...new Set(genera)].toSorted());
    expect(genera.length).toBeGreaterThan(48);
    const bases = GENUS_BOOK.shipped.flatMap(({ receptacles, hooks, pitfalls }) =>
      [receptacles, hooks, ...pitfalls].map(({ basis }) => basis.kind),
    );
    expect(new Set(bases)).toEqual(new Set(['source', 'memory', 'judgement']));
  });

  // Bertani & da Silva 2002 (Sickius); Gallon 2003 and 2005 as reported second-hand (Encyocratella): no others are known.
  it('name two genera without spermathecae, and no more', () => {
    const without = GENUS_BOOK.shipped.filter(({ flags }) => flags.withoutSpermathecae).map((profile) => profile.genus);
    expect(without).toEqual(['Encyocratella', 'Sickius']);
  });

  // Bertani 2012 (Typhochlaena), Gabriel & Longhorn 2015 (Sericopelma), British Tarantula Society (the others).
  it.each(['Poecilotheria', 'Heteroscodra', 'Stromatopelma', 'Pelinobius', 'Sericopelma', 'Typhochlaena'])(
    'say that males of %s have no hooks',
    (name) => {
      expect(genus(name).hooks.state).toBe('absent');
    },
  );
});

describe('the profile for a name', () => {
  it.each([
    ['haplopelma lividum', 'Cyriopagopus'],
    ['Citharischius crawshayi', 'Pelinobius'],
    ['  grammostola pulchra', 'Grammostola'],
  ])('%s is kept under %s', (taxon, present) => expect(genus(taxon)).toMatchObject({ genus: present, known: true, version: 0 }));

  it.each(['', 'Nonsensia sp.'])('"%s" reads as plain and not checked', (taxon) => {
    expect(genus(taxon)).toMatchObject({ known: false, genus: genusOf(taxon), hooks: { state: 'not-checked' } });
    expect(Object.values(genus(taxon).flags)).not.toContain(true);
  });

  it('is the keeper’s own where there is none shipped', () => {
    const { genus: _genus, known: _known, version: _version, ...own } = genus('Grammostola');
    const edit: ProfileEdit = { genus: 'Nonsensia', version: 1, profile: own, note: 'n', by: 'K', at: '2026-01-01T00:00:00.000Z' };
    const book = { ...GENUS_BOOK, edits: [edit] };
    expect(profileFor('Nonsensia alba', book)).toMatchObject({ known: true, version: 1, receptacles: own.receptacles });
    expect(profilesIn(book).map((profile) => profile.genus)).toContain('Nonsensia');
  });
});
