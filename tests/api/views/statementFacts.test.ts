import { afterEach, beforeEach, expect, test } from 'vitest';
import { statementFactsOf } from '../../../src/api/views/statementFacts.ts';
import type { Archive } from '../../../src/archive/archive.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { sexStatement, statementAsText } from '../../../src/words/sexStatement.ts';
import { determinationDraft, FIRST_ASSESSMENT, newPhoto, skinWithPhoto, TestArchive } from '../../support/testArchive.ts';

let test_: TestArchive;
let archive: Archive;

beforeEach(async () => {
  test_ = await TestArchive.open();
  archive = test_.archive;
});
afterEach(() => test_.remove());

const UNTIL = { today: '2026-11-25', promise: { ifWrong: 'none', sizeNow: '' } } as const;

test('an egg sac carries the statement by itself, with its photos; a leaning on a skin is a further reading, not its method', () => {
  const { specimen, exuvia, photo } = skinWithPhoto(archive);
  const leaning = determinationDraft({ sex: 'female', level: 'leaning', evidencePhotoIds: [photo.id] });
  unwrap(archive.determinations.sign(exuvia.id, leaning, FIRST_ASSESSMENT));
  const sac = unwrap(archive.photos.add(newPhoto({ sha256: 'b'.repeat(64), subject: { kind: 'animal', specimenId: specimen.id } })));
  const draft = { seenOn: '2026-02-01', observer: 'A. Keeper', photoIds: [sac.id], notes: '' };
  unwrap(archive.liveSigns.sign(specimen.id, { ...draft, finding: { kind: 'egg-sac', fertile: 'no' } }));
  const facts = statementFactsOf(archive, specimen.id, UNTIL);
  expect(facts).toMatchObject({ leading: null, skin: null, against: [], otherReadings: 1, carrying: [{ kind: 'egg-sac' }] });
  expect(facts.photos.map(({ photoId }) => photoId)).toEqual([sac.id]);
  const text = statementAsText(sexStatement(facts));
  expect(text).toContain('Sex: female. How sure: established, which is the highest level.');
  expect(text).toContain('Read from: the animal itself, not from a skin: egg sac');
});

test('bulbs that a reading tells of are seen on the animal, and make a male mature', () => {
  const { specimen, exuvia } = skinWithPhoto(archive);
  const checklist = { ...determinationDraft().checklist, palpalBulbsOnAnimal: 'yes' } as const;
  const read = determinationDraft({ sex: 'male', level: 'strong', checklist });
  unwrap(archive.determinations.sign(exuvia.id, read, FIRST_ASSESSMENT));
  const text = statementAsText(sexStatement(statementFactsOf(archive, specimen.id, UNTIL)));
  expect(text).toContain('Sex: mature male. How sure: strong, which is the middle one of three levels.');
  expect(text).toContain('Seen on the animal: palpal bulbs');
});
