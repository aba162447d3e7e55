import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/domain/failure.ts';
import { placeMolts } from '../../../src/domain/growth/positions.ts';

function rowOf(instars: readonly (number | null)[]) {
  return instars.map((instarShed, index) => ({ instarShed, happenedFrom: `2024-0${index + 1}-01`, happenedTo: `2024-0${index + 1}-01` }));
}

function known(number: number) {
  return { number, certainty: 'known' } as const;
}

function place(...instars: (number | null)[]) {
  return placeMolts(rowOf(instars));
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
      { step: 0, stepKnown: true, instar: known(5), skippedInstars: 0 },
      { step: 1, stepKnown: true, instar: known(6), skippedInstars: 0 },
      { step: 4, stepKnown: true, instar: known(9), skippedInstars: 2 },
    ]);
  });

  it('fills in a number only where there is just room for it', () => {
    expect(place(5, null, null, 8).map(({ instar }) => instar)).toEqual([5, 6, 7, 8].map(known));
    expect(place(5, null, null, 8).every(({ stepKnown }) => stepKnown)).toBe(true);
  });

  it('leaves open on which side of an unnumbered molt the gap is', () => {
    expect(place(5, null, 8)).toEqual([
      { step: 0, stepKnown: true, instar: known(5), skippedInstars: 0 },
      { step: 1, stepKnown: false, instar: null, skippedInstars: 0 },
      { step: 3, stepKnown: true, instar: known(8), skippedInstars: 1 },
    ]);
  });

  it('only infers what comes before the first or after the last known instar', () => {
    expect(place(null, 6, null).map(({ step, instar, stepKnown }) => [step, instar, stepKnown])).toEqual([
      [0, { number: 5, certainty: 'inferred' }, true],
      [1, known(6), true],
      [2, { number: 7, certainty: 'inferred' }, true],
    ]);
  });

  it('counts from the instar in which the animal was acquired, and keeps the gap between the two', () => {
    // Acquired in instar 7 between the first and the second molt: the second sheds 7 if none was missed; 5 to 7 leaves one open.
    const acquired = { acquiredOn: '2024-01-15', acquiredInstar: 7 };
    expect(placeMolts(rowOf([5, null, null]), acquired)).toEqual([
      { step: 0, stepKnown: true, instar: known(5), skippedInstars: 0 },
      { step: 2, stepKnown: true, instar: { number: 7, certainty: 'inferred' }, skippedInstars: 1 },
      { step: 3, stepKnown: true, instar: { number: 8, certainty: 'inferred' }, skippedInstars: 0 },
    ]);
    expect(placeMolts(rowOf([9]), { acquiredOn: '2023-12-01', acquiredInstar: 7 })).toEqual([
      { step: 0, stepKnown: true, instar: known(9), skippedInstars: 2 },
    ]);
    // One molt is missing between the acquisition and instar 9: nobody knows on which side of the molt without a number.
    expect(placeMolts(rowOf([null, 9]), { acquiredOn: '2023-12-01', acquiredInstar: 7 })).toMatchObject([
      { stepKnown: false, instar: null },
      { stepKnown: true, instar: known(9), skippedInstars: 1 },
    ]);
    expect(placeMolts(rowOf([5, null]), { acquiredOn: '2024-02-15', acquiredInstar: 9 })).toMatchObject([
      { step: 0 },
      { stepKnown: false },
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
