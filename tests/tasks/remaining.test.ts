import { describe, expect, it } from 'vitest';
import { remainingSecondsOf } from '../../src/tasks/remaining.ts';

describe('the time still to go', () => {
  it('follows the pace so far', () => {
    expect(remainingSecondsOf(10, 30, 20_000)).toBe(40);
    expect(remainingSecondsOf(30, 30, 20_000)).toBe(0);
  });
  it('is not guessed at from too little', () => {
    expect(remainingSecondsOf(0, 30, 60_000)).toBeNull();
    expect(remainingSecondsOf(2, 30, 60_000)).toBeNull();
    expect(remainingSecondsOf(20, 30, 1_999)).toBeNull();
  });
});
