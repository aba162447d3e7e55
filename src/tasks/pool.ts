import { setImmediate as giveWay } from 'node:timers/promises';

/**
 * Works on `items` in order, at most `width` at a time. Takes no further one once `signal` is aborted; those in hand are
 * finished. The first error stops it the same way and is thrown when nothing is in hand any more. Between two items everything
 * else gets its turn, however little an item has to wait for.
 */
export async function forEachBounded<Item>(
  items: readonly Item[],
  width: number,
  signal: AbortSignal,
  work: (item: Item, index: number) => Promise<void>,
): Promise<void> {
  const queue = items.entries();
  let failed = false;
  const lane = async (): Promise<void> => {
    for (const [index, item] of queue) {
      try {
        await work(item, index);
      } catch (error) {
        failed = true;
        throw error;
      }
      await giveWay();
      if (signal.aborted || failed) return;
    }
  };
  if (signal.aborted) return;
  const lanes = await Promise.allSettled(Array.from({ length: Math.min(width, items.length) }, lane));
  const broken = lanes.find((result) => result.status === 'rejected');
  if (broken) throw broken.reason;
}
