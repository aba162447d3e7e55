import { afterEach, beforeEach, expect, test } from 'vitest';
import { referenceSkinsOf } from '../../../src/api/views/referenceSkins.ts';
import type { Archive } from '../../../src/archive/archive.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { profileFor } from '../../../src/domain/sexing/genus/find.ts';
import { determinationDraft, FIRST_ASSESSMENT, skinWithPhoto, specimenDraft, TestArchive } from '../../support/testArchive.ts';

let test_: TestArchive;
let archive: Archive;

beforeEach(async () => {
  test_ = await TestArchive.open();
  archive = test_.archive;
});
afterEach(() => test_.remove());

test.each([
  ['Grammostola pulchra', 1],
  ['', 0],
])('an animal named “%s” has %i reference of the same name: without a genus none stands for another', (taxon, count) => {
  const { specimen, exuvia } = skinWithPhoto(archive);
  unwrap(archive.specimens.update(specimen.id, specimen.version, specimenDraft({ taxon })));
  unwrap(archive.determinations.sign(exuvia.id, determinationDraft({ sex: 'female', level: 'established' }), FIRST_ASSESSMENT));
  const other = unwrap(archive.specimens.create(specimenDraft({ code: 'T-2', taxon })));
  const profile = profileFor(taxon, { shipped: [], edits: [] });
  expect(referenceSkinsOf({ archive, genera: [] }, other, profile)).toHaveLength(count);
});
