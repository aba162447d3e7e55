import { describe, expect, it } from 'vitest';
import { forEachBounded } from '../../src/tasks/pool.ts';

const never = new AbortController().signal;

/** Work that goes on only when it is told to. */
function gates(count: number) {
  const all = Array.from({ length: count }, () => Promise.withResolvers<void>());
  return { open: (index: number) => all[index]?.resolve(), passed: (index: number) => all[index]?.promise };
}

describe('a bounded pool', () => {
  it('does everything once, in order, and never more than its width at a time', async () => {
    const begun: number[] = [];
    let inHand = 0;
    let most = 0;
    await forEachBounded([0, 1, 2, 3, 4, 5, 6], 3, never, async (item, index) => {
      expect(index).toBe(item);
      begun.push(item);
      inHand += 1;
      most = Math.max(most, inHand);
      await new Promise(setImmediate);
      inHand -= 1;
    });
    expect(begun).toEqual([0, 1, 2, 3, 4, 5, 6]);
    expect(most).toBe(3);
  });
  it('takes no further item after a stop, and finishes those in hand', async () => {
    const { open, passed } = gates(4);
    const stopping = new AbortController();
    const [begun, ended]: [number[], number[]] = [[], []];
    const pool = forEachBounded([0, 1, 2, 3], 2, stopping.signal, async (item) => {
      begun.push(item);
      await passed(item);
      ended.push(item);
    });
    stopping.abort();
    open(1);
    open(0);
    await pool;
    expect(begun).toEqual([0, 1]);
    expect(ended.toSorted()).toEqual([0, 1]);
  });
  it('gives way between two items that wait for nothing', async () => {
    const stopping = new AbortController();
    let done = 0;
    setTimeout(() => stopping.abort(), 0);
    await forEachBounded(Array.from({ length: 1_000_000 }), 2, stopping.signal, async () => {
      done += 1;
    });
    expect(done).toBeLessThan(1_000_000);
  });
  it('begins nothing when it was stopped before', async () => {
    await forEachBounded([0], 1, AbortSignal.abort(), async () => expect.unreachable());
  });
  it('throws the first error once nothing is in hand any more', async () => {
    const { open, passed } = gates(3);
    const ended: number[] = [];
    const pool = forEachBounded([0, 1, 2], 2, never, async (item) => {
      if (item === 0) throw new Error('broken');
      await passed(item);
      ended.push(item);
    });
    open(1);
    await expect(pool).rejects.toThrow('broken');
    expect(ended).toEqual([1]);
  });
  it('has nothing to do with nothing', async () => {
    await forEachBounded([], 4, never, async () => expect.unreachable());
  });
});
