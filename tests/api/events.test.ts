import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { COMMENT_EVERY_MS, eventsResponse } from '../../src/api/events.ts';
import type { EventsAnswer, ServerEvent } from '../../src/api/route.ts';

/** A source that says what it is told to say. */
function source(first: ServerEvent) {
  let present = first;
  const listeners = new Set<(event: ServerEvent) => void>();
  const answer: EventsAnswer = {
    current: () => present,
    subscribe: (listen) => {
      listeners.add(listen);
      return () => void listeners.delete(listen);
    },
  };
  const say = (event: ServerEvent): void => {
    present = event;
    for (const listen of listeners) listen(event);
  };
  return { answer, say, listeners };
}

const event = (id: number, last = false): ServerEvent => ({ id: String(id), data: `{"n":${id}}`, last });
const ask = (answer: EventsAnswer, headers: Record<string, string> = {}): Response =>
  eventsResponse(answer, new Request('http://127.0.0.1/api/tasks/t/events', { headers }));

function reader(response: Response) {
  const bytes = (response.body ?? new ReadableStream<Uint8Array>()).getReader();
  const decoder = new TextDecoder();
  return {
    next: async (): Promise<string | null> => {
      const { done, value } = await bytes.read();
      return done ? null : decoder.decode(value);
    },
    leave: () => bytes.cancel(),
  };
}

describe('server-sent events (WHATWG HTML, 9.2)', () => {
  beforeEach(() => void vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] }));
  afterEach(() => void vi.useRealTimers());

  it('begin with the present state, then come as it changes, and end with the last', async () => {
    const { answer, say, listeners } = source(event(0));
    const response = ask(answer);
    expect(response.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
    const stream = reader(response);
    expect(await stream.next()).toBe('id: 0\ndata: {"n":0}\n\n');
    say(event(1));
    expect(await stream.next()).toBe('id: 1\ndata: {"n":1}\n\n');
    say(event(2, true));
    expect(await stream.next()).toBe('id: 2\ndata: {"n":2}\n\n');
    expect(await stream.next()).toBeNull();
    expect(listeners.size).toBe(0);
  });
  it('leave out what a slow reader has missed, but not the last', async () => {
    const { answer, say } = source(event(0));
    const stream = reader(ask(answer));
    for (let id = 1; id < 9; id++) say(event(id));
    say(event(9, true));
    expect(await stream.next()).toContain('"n":0');
    expect(await stream.next()).toContain('"n":9');
    expect(await stream.next()).toBeNull();
  });
  it('let go of the source when the reader leaves', async () => {
    const { answer, listeners } = source(event(0));
    const stream = reader(ask(answer));
    await stream.next();
    expect(listeners.size).toBe(1);
    await stream.leave();
    expect(listeners.size).toBe(0);
    expect(vi.getTimerCount()).toBe(0);
  });
  it('say that they are still there by a comment', async () => {
    const { answer } = source(event(0));
    const stream = reader(ask(answer));
    await stream.next();
    vi.advanceTimersByTime(COMMENT_EVERY_MS);
    expect(await stream.next()).toMatch(/^:.*\n\n$/);
  });
  it('do not pile comments up for a reader that reads nothing', async () => {
    const { answer, say } = source(event(0));
    const stream = reader(ask(answer));
    vi.advanceTimersByTime(100 * COMMENT_EVERY_MS);
    say(event(1, true));
    expect(await stream.next()).toContain('"n":0');
    expect(await stream.next()).toContain('"n":1');
  });
  it('answer 204 to a reader that has seen the last, so that it does not come again', () => {
    const { answer, listeners } = source(event(7, true));
    expect(ask(answer, { 'last-event-id': '7' }).status).toBe(204);
    expect(ask(answer, { 'last-event-id': '6' }).status).toBe(200);
    expect(listeners.size).toBe(0);
  });
  it('of a state of several lines keep them together', async () => {
    const { answer } = source({ id: '1', data: 'one\ntwo', last: true });
    expect(await ask(answer).text()).toBe('id: 1\ndata: one\ndata: two\n\n');
  });
});
