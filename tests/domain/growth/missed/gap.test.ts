import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closeGap, insertGap } from '../../../../src/domain/growth/missed/gap.ts';
import { placeMolts } from '../../../../src/domain/growth/positions.ts';
import type { Acquisition } from '../../../../src/domain/molting/instarAnchors.ts';
import { reversed } from '../../../../src/domain/molting/renumbering.ts';

function rowOf(instars: readonly (number | null)[]) {
  return instars.map((instarShed, index) => {
    const day = `2024-${String(index + 1).padStart(2, '0')}-10`;
    return { id: `molt-${index}`, instarShed, happenedFrom: day, happenedTo: day };
  });
}

type Row = ReturnType<typeof rowOf>;

function applied(
  molts: Row,
  changes: readonly { readonly moltId: string; readonly from: number | null; readonly to: number | null }[],
): Row {
  return molts.map((molt) => {
    const change = changes.find(({ moltId }) => moltId === molt.id);
    if (change && change.from !== molt.instarShed) throw new Error('expected the change to start from what is on record');
    return change ? { ...molt, instarShed: change.to } : molt;
  });
}

function numbersAfter(instars: readonly (number | null)[], before: number, skipped = 1, acquisition?: Acquisition) {
  const molts = rowOf(instars);
  const gap = insertGap(molts, { beforeMoltId: `molt-${before}`, skipped }, acquisition);
  return gap.ok ? applied(molts, gap.value.changes).map(({ instarShed }) => instarShed) : gap.failure;
}

describe('insertGap', () => {
  it('raises the numbers from the gap on', () => {
    expect(numbersAfter([4, 5, 6, 7], 2)).toEqual([4, 5, 7, 8]);
    expect(numbersAfter([4, 5, 6, 7], 2, 2)).toEqual([4, 5, 8, 9]);
  });

  it('notes the numbers on both sides where they were only counted', () => {
    expect(numbersAfter([4, null, null, null], 2)).toEqual([4, 5, 7, null]);
    expect(numbersAfter([4, null, null, 7], 2)).toEqual([4, 5, 7, 8]);
  });

  it('only finds the place of a gap for which the numbers left room', () => {
    expect(numbersAfter([4, null, null, 8], 2)).toEqual([4, 5, 7, 8]);
    expect(numbersAfter([4, null, null, 8], 2, 2)).toEqual([4, 5, 8, 9]);
  });

  it('adds to a gap that has its place already', () => {
    expect(numbersAfter([4, 6, 7], 1)).toEqual([4, 7, 8]);
  });

  it('lets the numbers of later molts stand where they are the only ones', () => {
    expect(numbersAfter([null, null, 8, 9], 1)).toEqual([5, 7, 8, 9]);
    expect(numbersAfter([null, null, 3], 1)).toEqual({ code: 'instar-too-low', instar: 0, earlierMolts: 0 });
  });

  it('counts from the acquisition too, and keeps to it', () => {
    expect(numbersAfter([null, null], 1, 1, { acquiredOn: '2024-01-01', acquiredInstar: 6 })).toEqual([6, 8]);
    expect(numbersAfter([4, 5, 6], 1, 1, { acquiredOn: '2024-02-20', acquiredInstar: 6 })).toMatchObject({
      code: 'acquired-instar-contradicted',
    });
  });

  it('asks for a number where there is none to count from', () => {
    expect(numbersAfter([null, null], 1)).toEqual({ code: 'gap-uncounted', moltDate: '2024-02-10' });
  });

  it('refuses an instar beyond 60, and a gap where none can be', () => {
    expect(numbersAfter([59, 60], 1)).toEqual({ code: 'instar-too-high', instar: 61 });
    expect(numbersAfter([4, 5], 0)).toEqual({ code: 'gap-misplaced', moltDate: '2024-01-10' });
    expect(numbersAfter([4, 5], 7)).toEqual({ code: 'not-found', what: 'molt', id: 'molt-7' });
  });

  it('leaves the gap just there, nothing of it open, and can be taken back', () => {
    const plan = fc
      .record({ numbers: fc.array(fc.boolean(), { minLength: 2, maxLength: 12 }), skipped: fc.integer({ min: 1, max: 2 }), at: fc.nat() })
      .filter(({ numbers }) => numbers.some(Boolean));
    fc.assert(
      fc.property(plan, ({ numbers, skipped, at }) => {
        const molts = rowOf(numbers.map((isNoted, index) => (isNoted ? index + 5 : null)));
        const place = 1 + (at % (molts.length - 1));
        const gap = insertGap(molts, { beforeMoltId: `molt-${place}`, skipped });
        if (!gap.ok) throw new Error(gap.failure.code);
        const after = applied(molts, gap.value.changes);
        const positions = placeMolts(after);
        expect(positions.map(({ skippedInstars }) => skippedInstars)).toEqual(molts.map((_, index) => (index === place ? skipped : 0)));
        expect(positions.every(({ stepKnown }) => stepKnown)).toBe(true);
        expect(applied(after, reversed(gap.value).changes)).toEqual(molts);
      }),
    );
  });
});

describe('closeGap', () => {
  const numbersWithout = (instars: readonly (number | null)[], before: number, acquisition?: Acquisition) => {
    const molts = rowOf(instars);
    const closed = closeGap(molts, `molt-${before}`, acquisition);
    return closed.ok ? applied(molts, closed.value.changes).map(({ instarShed }) => instarShed) : closed.failure;
  };

  it('lets every number from the gap on fall by what it skipped', () => {
    expect(numbersWithout([4, 5, 8, 9, null, 11], 2)).toEqual([4, 5, 6, 7, null, 9]);
    expect(numbersWithout([4, null, null, 8, 10], 3)).toEqual([4, null, null, 7, 9]);
  });

  it('leaves other gaps where they are', () => {
    expect(numbersWithout([4, 6, 8], 1)).toEqual([4, 5, 7]);
  });

  it('counts from the acquisition too', () => {
    expect(numbersWithout([8, 9], 0, { acquiredOn: '2024-01-01', acquiredInstar: 6 })).toEqual([6, 7]);
  });

  it('says where there is no gap, and does not know molts of other animals', () => {
    expect(numbersWithout([4, 5, 6], 1)).toEqual({ code: 'gap-absent', moltDate: '2024-02-10' });
    expect(numbersWithout([null, 6], 1)).toEqual({ code: 'gap-absent', moltDate: '2024-02-10' });
    expect(numbersWithout([4, 5], 7)).toEqual({ code: 'not-found', what: 'molt', id: 'molt-7' });
  });

  it('takes back what insertGap has put in, in any row with numbers on both sides', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 20 }),
        fc.integer({ min: 2, max: 8 }),
        fc.integer({ min: 1, max: 3 }),
        (first, count, skipped) => {
          const molts = rowOf(Array.from({ length: count }, (_, index) => first + index));
          const place = 1 + (first % (count - 1));
          const put = insertGap(molts, { beforeMoltId: `molt-${place}`, skipped });
          if (!put.ok) throw new Error(put.failure.code);
          const row = applied(molts, put.value.changes);
          const taken = closeGap(row, `molt-${place}`);
          if (!taken.ok) throw new Error(taken.failure.code);
          expect(applied(row, taken.value.changes)).toEqual(molts);
        },
      ),
    );
  });
});
