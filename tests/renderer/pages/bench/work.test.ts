import { QueryClient } from '@tanstack/react-query';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { BenchSheet } from '../../../../src/api/contract/bench.ts';
import type { Reading } from '../../../../src/domain/measuring/reading.ts';
import { changeDocument } from '../../../../src/renderer/bench/deeds/changeDocument.ts';
import type { Pass } from '../../../../src/renderer/pages/bench/pass.ts';
import { openWork } from '../../../../src/renderer/pages/bench/work.ts';
import { uprightCard } from '../../../support/uprightCard.ts';

const AT = '2026-01-01T00:00:00.000Z';
const PHOTO_ID = 'photo-1';
const at = (xPx: number, yPx: number) => ({ state: 'placed', at: { xPx, yPx } }) as const;

function reading(version: number, landmarks: Reading['landmarks']): Reading {
  return {
    ...{ id: 'reading-1', photoId: PHOTO_ID, version, createdAt: AT, changedAt: AT, protocol: 'dorsal-skin', observer: 'Jo Quill' },
    ...{ pass: 1, carapaceHeight: { kind: 'assumed' }, pointingPx: 1.5, landmarks },
  } as Reading;
}

/** What the archive holds of the photo, and which requests reached it. */
let archive: Pick<BenchSheet, 'calibration' | 'readings'>;
let answers: boolean;
let asked: string[];

beforeEach(() => {
  archive = { calibration: { photoId: PHOTO_ID, marks: null, version: 0, changedAt: AT }, readings: [reading(1, {})] };
  [answers, asked] = [true, []];
  vi.stubGlobal('addEventListener', vi.fn());
  vi.stubGlobal('removeEventListener', vi.fn());
  vi.stubGlobal('document', { addEventListener: vi.fn(), removeEventListener: vi.fn() });
  vi.stubGlobal('fetch', async (_address: string, { method = 'GET' }: RequestInit = {}) => {
    if (!answers) throw new TypeError('unreachable');
    asked.push(method);
    const json = (body: unknown, status = 200) =>
      new Response(JSON.stringify(body), { status, headers: { 'content-type': 'application/json' } });
    if (method === 'GET') return json(archive);
    // Every change of this window comes too late.
    return json({ failure: { code: 'changed-meanwhile', what: 'photo', id: PHOTO_ID, version: 2 } }, 412);
  });
});

afterEach(() => vi.unstubAllGlobals());

function opened(pass: Partial<Pass>) {
  const photo = { id: PHOTO_ID, widthPx: 4032, heightPx: 3024, facts: { focalLength35Mm: 26 }, view: 'dorsal', originalName: 'skin.jpg' };
  const sheet = { photo, ...archive, repeatsElsewhere: [] } as unknown as BenchSheet;
  const whole = { observer: 'Jo Quill', pass: 1, reading: null, inheritedHeight: null, inheritedPointHeights: {}, ...pass } as Pass;
  return openWork(sheet, whole, new QueryClient());
}

describe('marks that another window’s change has displaced', () => {
  test('are held after the Bench was left, until somebody says what counts', async () => {
    const work = opened({ reading: archive.readings[0] as Reading });
    const stop = work.start();
    answers = false;
    changeDocument(work.bench, 'place-point', { 'carapace-front': at(100, 200) });
    stop();
    expect(work.isHeld()).toBe(true);
    archive = { ...archive, readings: [reading(2, { 'carapace-front': at(9, 9) })] };
    answers = true;
    work.saver.retry();
    await work.saver.quiet();
    expect(work.saver.hasUnsent()).toBe(false);
    expect(work.saving.getState()).toMatchObject({ state: { kind: 'saved' }, displaced: { 'carapace-front': at(100, 200) } });
    expect(work.isHeld()).toBe(true);
    work.saving.setState({ displaced: null });
    expect(work.isHeld()).toBe(false);
  });

  test('begin no pass where nothing of it was done but to take over the height', async () => {
    const card = uprightCard(400, 300);
    archive = { calibration: { photoId: PHOTO_ID, marks: card, version: 1, changedAt: AT }, readings: [reading(1, {})] };
    const work = opened({ pass: 2, inheritedHeight: { kind: 'entered', heightMm: 7, standardUncertaintyMm: 0.2 } });
    const stop = work.start();
    archive = { ...archive, calibration: { photoId: PHOTO_ID, marks: { ...card, pointingPx: 1 }, version: 2, changedAt: AT } };
    changeDocument(work.bench, 'change-scale', { scale: { ...card, pointingPx: 2 } });
    await work.saver.quiet();
    stop();
    expect(work.bench.getState().edited.document.height).toEqual({ kind: 'entered', heightMm: 7, standardUncertaintyMm: 0.2 });
    expect(asked).not.toContain('POST');
  });
});
