import { describe, expect, it } from 'vitest';
import { succeed } from '../../../src/domain/result.ts';
import { openFindingQueue } from '../../../src/tasks/finding/queue.ts';

const never = new AbortController().signal;

/** Work that notes when it begins and ends when it is told to. */
function gated(begun: string[], name: string) {
  const gate = Promise.withResolvers<void>();
  const work = async () => {
    begun.push(name);
    await gate.promise;
    return succeed(name);
  };
  return { work, open: () => gate.resolve() };
}

describe('the queue of photos to look at', () => {
  it('takes one at a time, what is wanted now before what has time', async () => {
    const queue = openFindingQueue();
    const begun: string[] = [];
    const [first, later, urgent] = [gated(begun, 'first'), gated(begun, 'later'), gated(begun, 'urgent')];
    const answers = [
      queue.add('whenever', never, first.work),
      queue.add('whenever', never, later.work),
      queue.add('now', never, urgent.work),
    ];
    expect(begun).toEqual(['first']);
    first.open();
    expect(await answers[0]).toEqual(succeed('first'));
    urgent.open();
    await answers[2];
    later.open();
    await answers[1];
    expect(begun).toEqual(['first', 'urgent', 'later']);
  });

  it('leaves out whoever has gone before the turn came', async () => {
    const queue = openFindingQueue();
    const begun: string[] = [];
    const [first, second] = [gated(begun, 'first'), gated(begun, 'second')];
    const leaving = new AbortController();
    const answers = [queue.add('whenever', never, first.work), queue.add('whenever', leaving.signal, second.work)];
    leaving.abort();
    first.open();
    expect(await answers[1]).toEqual({ ok: false, failure: { code: 'finding-stopped' } });
    expect(begun).toEqual(['first']);
  });

  it('goes on after work that throws', async () => {
    const queue = openFindingQueue();
    const broken = queue.add('now', never, () => Promise.reject(new TypeError('broken')));
    const whole = queue.add('now', never, async () => succeed('whole'));
    await expect(broken).rejects.toThrow('broken');
    expect(await whole).toEqual(succeed('whole'));
  });

  it('finishes what is in hand when it closes, and begins nothing more', async () => {
    const queue = openFindingQueue();
    const begun: string[] = [];
    const [first, second] = [gated(begun, 'first'), gated(begun, 'second')];
    const answers = [queue.add('now', never, first.work), queue.add('now', never, second.work)];
    const closed = queue.close();
    first.open();
    await closed;
    expect(await answers[0]).toEqual(succeed('first'));
    expect(await answers[1]).toEqual({ ok: false, failure: { code: 'finding-stopped' } });
    expect(await queue.add('now', never, second.work)).toEqual({ ok: false, failure: { code: 'finding-stopped' } });
    expect(begun).toEqual(['first']);
  });
});
