import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { holdPresence } from '../../../src/renderer/client/presence.ts';

/** The browser's event stream, as far as it is looked at. */
class Stream {
  static readonly OPEN = 1;
  static readonly CLOSED = 2;
  static opened: Stream[] = [];
  readyState = 0;
  onopen: (() => void) | null = null;
  onerror: (() => void) | null = null;

  constructor() {
    Stream.opened.push(this);
  }

  close(): void {
    this.readyState = Stream.CLOSED;
  }

  connect(): void {
    this.readyState = Stream.OPEN;
    this.onopen?.();
  }

  fail(readyState: number): void {
    this.readyState = readyState;
    this.onerror?.();
  }
}

let answer: () => Response;
let heard: boolean[];
const latest = (): Stream => {
  const stream = Stream.opened.at(-1);
  if (!stream) throw new Error('Expected a stream to be open');
  return stream;
};

beforeEach(() => {
  vi.useFakeTimers();
  Stream.opened = [];
  heard = [];
  answer = () => Response.json({});
  vi.stubGlobal('EventSource', Stream);
  vi.stubGlobal('fetch', async () => answer());
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('whether Exuviary answers', () => {
  test('is asked when the stream breaks off, and again until it does', async () => {
    const letGo = holdPresence((answers) => heard.push(answers));
    latest().connect();
    answer = () => {
      throw new TypeError('refused');
    };
    latest().fail(0);
    await vi.advanceTimersByTimeAsync(4_100);
    expect(heard).toEqual([true, false, false, false]);
    answer = () => Response.json({});
    await vi.advanceTimersByTimeAsync(2_100);
    expect(heard.at(-1)).toBe(true);
    letGo();
  });

  test('is not doubted when only the stream broke off; a closed one is opened again', async () => {
    const letGo = holdPresence((answers) => heard.push(answers));
    latest().fail(Stream.CLOSED);
    await vi.advanceTimersByTimeAsync(2_100);
    expect(heard).toEqual([true]);
    expect(Stream.opened).toHaveLength(2);
    letGo();
  });

  test('is yes where it refuses: it has answered', async () => {
    const letGo = holdPresence((answers) => heard.push(answers));
    answer = () => Response.json({ failure: { code: 'refused-by-guard', reason: 'no ticket' } }, { status: 403 });
    latest().fail(0);
    await vi.advanceTimersByTimeAsync(10);
    expect(heard).toEqual([true]);
    letGo();
  });

  test('is nobody’s question any more once the page has let go', async () => {
    const letGo = holdPresence((answers) => heard.push(answers));
    answer = () => {
      throw new TypeError('refused');
    };
    latest().fail(0);
    letGo();
    await vi.advanceTimersByTimeAsync(10_000);
    expect(heard).toEqual([]);
    expect(Stream.opened).toHaveLength(1);
  });
});
