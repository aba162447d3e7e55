import { expect, test } from 'vitest';
import { SpecimenDraft } from '../../../src/domain/specimen/specimen.ts';

const taxon = SpecimenDraft.shape.taxon;

// International Code of Zoological Nomenclature, fourth edition, article 28.
test('the genus of a taxon begins with a capital, its species stays as it was typed', () => {
  expect(taxon.parse(' brachypelma hamorii ')).toBe('Brachypelma hamorii');
  expect(taxon.parse('Aphonopelma seemanni')).toBe('Aphonopelma seemanni');
  expect(taxon.parse('')).toBe('');
});
