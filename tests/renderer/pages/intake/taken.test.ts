import { describe, expect, test } from 'vitest';
import { farApart, inOrderTaken, ONE_SKIN_WITHIN_DAYS } from '../../../../src/renderer/pages/intake/taken.ts';
import { aPhoto } from '../../../support/records.ts';

const at = (originalName: string, takenOn: string | null, clock: string | null = null) => {
  const photo = aPhoto({ originalName, takenOn });
  return clock === null ? photo : { ...photo, facts: { ...photo.facts, takenAt: { local: `${takenOn}T${clock}`, offset: null } } };
};

describe('waiting photos', () => {
  test('stand in the order in which they were taken, those without a day last', () => {
    const names = inOrderTaken([
      at('undated', null),
      at('late', '2026-02-08', '15:00:00'),
      at('shot 10', '2026-01-01'),
      at('shot 9', '2026-01-01'),
      at('early', '2026-02-08', '09:30:00'),
    ]).map((photo) => photo.originalName);
    expect(names).toEqual(['shot 9', 'shot 10', 'early', 'late', 'undated']);
  });

  test('are asked about when their days lie too far apart for one skin', () => {
    expect(farApart([at('a', '2025-07-09'), at('b', '2026-02-08'), at('c', null)])).toEqual({
      first: '2025-07-09',
      last: '2026-02-08',
      days: 214,
    });
    expect(farApart([at('a', '2026-02-01'), at('b', `2026-02-0${1 + ONE_SKIN_WITHIN_DAYS}`)])).toBeNull();
    expect(farApart([at('a', '2026-02-01'), at('b', null)])).toBeNull();
    expect(farApart([])).toBeNull();
  });
});
