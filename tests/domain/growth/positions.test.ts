import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/domain/failure.ts';
import { placeMolts } from '../../../src/domain/growth/positions.ts';

function place(...instars: (number | null)[]) {
  return placeMolts(instars.map((instarShed, index) => ({ instarShed, happenedFrom: `2024-0${index + 1}-01` })));
}

describe('placeMolts', () => {
  it('knows nothing of an animal without molts', () => {
    expect(place()).toEqual([]);
  });

  it('counts the molts on record where no instar is known', () => {
    expect(place(null, null).map(({ step, instar }) => [step, instar])).toEqual([
      [0, null],
      [1, null],
    ]);
  });

  it('counts by instars where they are known, and keeps the gap', () => {
    expect(place(5, 6, 9)).toEqual([
      { step: 0, stepKnown: true, instar: 5, skippedInstars: 0 },
      { step: 1, stepKnown: true, instar: 6, skippedInstars: 0 },
      { step: 4, stepKnown: true, instar: 9, skippedInstars: 2 },
    ]);
  });

  it('fills in a number only where there is just room for it', () => {
    expect(place(5, null, null, 8).map(({ instar }) => instar)).toEqual([5, 6, 7, 8]);
    expect(place(5, null, null, 8).every(({ stepKnown }) => stepKnown)).toBe(true);
  });

  it('leaves open on which side of an unnumbered molt the gap is', () => {
    expect(place(5, null, 8)).toEqual([
      { step: 0, stepKnown: true, instar: 5, skippedInstars: 0 },
      { step: 1, stepKnown: false, instar: null, skippedInstars: 0 },
      { step: 3, stepKnown: true, instar: 8, skippedInstars: 1 },
    ]);
  });

  it('does not number what comes before the first or after the last known instar', () => {
    expect(place(null, 6, null).map(({ step, instar, stepKnown }) => [step, instar, stepKnown])).toEqual([
      [0, null, true],
      [1, 6, true],
      [2, null, true],
    ]);
  });

  it.each([[[6, 6]], [[7, 5]], [[5, null, 6]]])('refuses %j, which leaves no room, and says between which molts', (instars) => {
    expect(() => place(...instars)).toThrow(Refusal);
    try {
      place(...instars);
    } catch (refusal) {
      expect(refusal instanceof Refusal && refusal.failure).toEqual({
        code: 'instars-out-of-order',
        instar: instars.at(-1),
        neighbourInstar: instars[0],
        neighbourDate: '2024-01-01',
        recordedBetween: instars.length - 2,
      });
    }
  });
});
