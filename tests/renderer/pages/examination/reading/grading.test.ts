import { describe, expect, it } from 'vitest';
import { gradingOf } from '../../../../../src/renderer/pages/examination/reading/grading.ts';

describe('the grade that signing writes to the skin', () => {
  it('is offered where the record says another or none, and only then', () => {
    expect(gradingOf('B', null)).toEqual({ read: 'B', onRecord: null });
    expect(gradingOf('B', 'A')).toEqual({ read: 'B', onRecord: 'A' });
    expect(gradingOf('B', 'B')).toBeNull();
    expect(gradingOf(null, 'A')).toBeNull();
  });
});
