import { afterEach, beforeEach, expect, test } from 'vitest';
import { unwrap } from '../../src/domain/result.ts';
import type { PrintCheckDraft } from '../../src/domain/scaleCard/printCheck.ts';
import { TestArchive } from '../support/testArchive.ts';

const draft: PrintCheckDraft = {
  printer: 'Study',
  barAMm: 49.6,
  barBMm: 49.8,
  readingStandardUncertaintyMm: 0.03,
  checkedOn: '2026-05-01',
};

let kept: TestArchive;
beforeEach(async () => {
  kept = await TestArchive.open();
});
afterEach(() => kept.remove());

test('print checks outlive the program, the latest day first', async () => {
  const older = unwrap(kept.archive.printChecks.add(draft));
  const newer = unwrap(kept.archive.printChecks.add({ ...draft, printer: 'Hall', checkedOn: '2026-05-02' }));
  const late = unwrap(kept.archive.printChecks.add({ ...draft, checkedOn: '2026-04-30' }));
  const reopened = await kept.reopen();
  expect(reopened.printChecks.list()).toEqual([newer, older, late]);
});

test('a removed print check is gone, and only that one, until it is put back in its place', () => {
  const one = unwrap(kept.archive.printChecks.add(draft));
  const other = unwrap(kept.archive.printChecks.add(draft));
  const { id } = unwrap(kept.archive.removals.remove('print-check', one.id));
  expect(kept.archive.printChecks.list()).toEqual([other]);
  expect(kept.archive.removals.remove('print-check', one.id)).toEqual({
    ok: false,
    failure: { code: 'not-found', what: 'print check', id: one.id },
  });
  expect(kept.archive.removals.pending()).toMatchObject([
    { id, thing: { kind: 'print-check', printer: 'Study', checkedOn: '2026-05-01' } },
  ]);
  unwrap(kept.archive.removals.restore(id));
  expect(kept.archive.printChecks.list()).toEqual([other, one]);
});

test('one that was not put back is gone for good when the archive is opened again', async () => {
  const { id } = unwrap(kept.archive.removals.remove('print-check', unwrap(kept.archive.printChecks.add(draft)).id));
  const reopened = await kept.reopen();
  expect(reopened.printChecks.list()).toEqual([]);
  expect(reopened.removals.restore(id)).toMatchObject({ ok: false, failure: { code: 'removal-gone' } });
});
