import { describe, expect, it } from 'vitest';
import { createAmbient } from '../../src/core/ambient.ts';
import { Instant } from '../../src/domain/dates.ts';

/** RFC 9562, 4: the version stands in the 13th hexadecimal digit, the variant in the two highest bits of the 17th. */
const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[48][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

describe('the ambient', () => {
  it('tells the time and fresh names by itself', () => {
    const ambient = createAmbient({ now: null, seed: null });
    expect(Instant.safeParse(ambient.now()).success).toBe(true);
    const ids = Array.from({ length: 100 }, () => ambient.newId());
    expect(new Set(ids).size).toBe(100);
    for (const id of ids) expect(id).toMatch(UUID);
  });
  it('starts its clock where it is told, and never shows a moment twice', () => {
    const ambient = createAmbient({ now: '2026-01-01T12:00Z', seed: null });
    expect([ambient.now(), ambient.now()]).toEqual(['2026-01-01T12:00:00.000Z', '2026-01-01T12:00:00.001Z']);
  });
  it('makes the same names from the same seed and others from another', () => {
    const idsFrom = (seed: string): string[] => {
      const { newId } = createAmbient({ now: null, seed });
      return [newId(), newId(), newId()];
    };
    expect(idsFrom('a')).toEqual(idsFrom('a'));
    expect(new Set([...idsFrom('a'), ...idsFrom('b')]).size).toBe(6);
    for (const id of idsFrom('a')) expect(id).toMatch(UUID);
  });
  it('goes on with other names from the same seed once there are records', () => {
    const namesAfter = (recordsMade: number): string[] => {
      const ambient = createAmbient({ now: null, seed: 'a' });
      ambient.startAfter(recordsMade);
      return [ambient.newId(), ambient.newId()];
    };
    expect(namesAfter(1)).toEqual(namesAfter(1));
    expect(new Set([...namesAfter(0), ...namesAfter(1), ...namesAfter(11)]).size).toBe(6);
  });
});
