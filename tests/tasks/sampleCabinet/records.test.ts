import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkAcquisition } from '../../../src/domain/molting/acquisition.ts';
import type { Molt } from '../../../src/domain/molting/molt.ts';
import { checkRecovery } from '../../../src/domain/molting/outcomes.ts';
import { checkMolt } from '../../../src/domain/molting/sequence.ts';
import { assessmentOf } from '../../../src/domain/sexing/assessing.ts';
import type { Determination } from '../../../src/domain/sexing/determination.ts';
import { SHIPPED_MODEL } from '../../../src/domain/sexing/evidence/model.ts';
import { checkDetermination } from '../../../src/domain/sexing/signing.ts';
import { SampleCabinet } from '../../../src/tasks/sampleCabinet/data.ts';
import { genus } from '../../domain/sexing/readings.ts';

const FILE = resolve(import.meta.dirname, '../../../resources/sample/cabinet.json');
const { specimens } = SampleCabinet.parse(JSON.parse(await readFile(FILE, 'utf8')));
const TODAY = '2026-11-25';

it('the sample holds molts and determinations to check', () => {
  const molts = specimens.flatMap((entry) => entry.molts);
  expect(molts.length).toBeGreaterThan(10);
  expect(molts.flatMap((molt) => molt.determinations).length).toBeGreaterThan(3);
});

/** The sample is written past the checks a keeper meets, so it has to keep them by itself. */
describe.each(specimens.map((entry) => [entry.specimen.code, entry] as const))('the sample animal %s', (_, entry) => {
  const skins = entry.molts.map((__, place) => `skin-${place}`);
  const animalPhotoIds = new Set(entry.animalPhotos.map((photo) => photo.file));
  const skinPhotoIds = new Set(entry.molts.flatMap((molt) => molt.photos.map((photo) => photo.file)));

  it('has molts in sequence', () => {
    const placed: Molt[] = [];
    for (const [place, { molt }] of entry.molts.entries()) {
      expect(checkMolt(molt, { molts: placed, replacing: null, today: TODAY })).toMatchObject({ ok: true });
      placed.push({ ...molt, id: `molt-${place}`, specimenId: 'sample', version: 1, createdAt: `${TODAY}T12:00:00.000Z` });
    }
  });

  it('was acquired in an instar that fits its molts, and has lost no skin that lies here', () => {
    const molts = entry.molts.map(({ molt }) => molt);
    expect(checkAcquisition(entry.specimen, molts)).toMatchObject({ ok: true });
    for (const { molt, exuvia } of entry.molts) {
      expect(checkRecovery('molt', molt.outcomes, exuvia?.recovered ?? false)).toMatchObject({ ok: true });
    }
  });

  it('has determinations that could have been signed one after another', () => {
    const signed: Determination[] = [];
    for (const [place, { molt, determinations }] of entry.molts.entries()) {
      for (const { evidence, withdrawnBecause, ...rest } of determinations) {
        const draft = { ...rest, evidencePhotoIds: evidence, supersedes: null };
        const exuviaId = skins[place] ?? '';
        const known = { genus: genus(entry.specimen.taxon), model: SHIPPED_MODEL, liveSigns: [], photoSizes: new Map() };
        const context = { ...known, exuviaId, skinsInOrder: skins, determinations: signed, today: TODAY, shedFrom: molt.happenedFrom };
        expect(checkDetermination(draft, { ...context, skinPhotoIds, animalPhotoIds })).toEqual({ ok: true, value: draft });
        const withdrawn = withdrawnBecause === null ? null : { at: `${TODAY}T12:00:00.000Z`, reason: withdrawnBecause };
        signed.push({
          ...draft,
          id: `${exuviaId}-${signed.length}`,
          exuviaId,
          specimenId: 'sample',
          signedAt: `${TODAY}T12:00:00.000Z`,
          assessment: assessmentOf(draft, { ...context, animalPhotoIds }),
          withdrawn,
        });
      }
    }
  });
});
