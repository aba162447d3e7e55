import { describe, expect, test } from 'vitest';
import { type ApartContext, checkApart } from '../../../src/domain/care/apart.ts';
import type { MoltDraft, MoltOutcome } from '../../../src/domain/molting/molt.ts';
import { molt, seen } from './seen.ts';

function outcome(happenedFrom: string, happenedTo: string, context: Partial<ApartContext>, outcomes: MoltOutcome[] = []) {
  const draft: MoltDraft = { happenedFrom, happenedTo, instarShed: null, position: 'not-seen', outcomes, notes: '' };
  const result = checkApart(draft, { molts: [], observations: [], replacing: null, ...context });
  return result.ok ? 'fits' : result.failure;
}

describe('a molt put on record', () => {
  const molts = [molt('m1', '2026-03-10')];

  test('lies five days or more from the others', () => {
    const close = { code: 'molts-too-close', neighbourDate: '2026-03-10', apartDays: 5 };
    expect(outcome('2026-03-14', '2026-03-14', { molts })).toEqual({ ...close, date: '2026-03-14' });
    expect(outcome('2026-03-06', '2026-03-06', { molts })).toEqual({ ...close, date: '2026-03-06' });
    expect(outcome('2026-03-15', '2026-03-15', { molts })).toBe('fits');
    expect(outcome('2026-03-05', '2026-03-05', { molts })).toBe('fits');
    expect(outcome('2026-03-12', '2026-03-20', { molts })).toBe('fits');
    expect(outcome('2026-03-12', '2026-03-12', { molts, replacing: 'm1' })).toBe('fits');
  });

  test('that is presumed stands wherever it has room', () => {
    expect(outcome('2026-03-12', '2026-03-12', { molts }, ['presumed'])).toBe('fits');
    expect(outcome('2026-03-12', '2026-03-12', { molts: [{ ...molt('m1', '2026-03-10'), outcomes: ['presumed'] }] })).toBe('fits');
  });

  test('is the one that was watched, or lies five days or more from it', () => {
    const watched = [seen('turned-over', '2026-03-09T20:00'), seen('free-of-skin', '2026-03-10T02:00')];
    expect(outcome('2026-03-10', '2026-03-10', { observations: watched })).toBe('fits');
    expect(outcome('2026-03-11', '2026-03-11', { observations: watched })).toBe('fits');
    expect(outcome('2026-03-13', '2026-03-13', { observations: watched })).toMatchObject({ neighbourDate: '2026-03-10' });
    expect(outcome('2026-03-15', '2026-03-15', { observations: watched })).toBe('fits');
  });

  test('ends a molt of which nobody noted the end, on the days that it can have lasted', () => {
    const begun = [seen('turned-over', '2026-03-09T20:00')];
    expect(outcome('2026-03-09', '2026-03-11', { observations: begun })).toBe('fits');
    expect(outcome('2026-03-13', '2026-03-13', { observations: begun })).toMatchObject({ neighbourDate: '2026-03-09' });
  });
});
