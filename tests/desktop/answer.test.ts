import { describe, expect, test } from 'vitest';
import { parseDesktopArguments } from '../../src/desktop/arguments.ts';
import { answerUnderScheme } from '../../src/desktop/policy/answer.ts';
import { washHeaders } from '../../src/desktop/policy/headers.ts';

describe('the headers under our scheme', () => {
  // The names that crash Chromium's renderer on a custom scheme, and those that speak of a connection.
  test.each([
    'strict-transport-security',
    'cross-origin-opener-policy',
    'cross-origin-resource-policy',
    'cross-origin-embedder-policy',
    'origin-agent-cluster',
    'transfer-encoding',
    'connection',
    'keep-alive',
    'set-cookie',
  ])('never hold %s', (name) => {
    expect([...washHeaders(new Headers({ [name]: 'x', etag: '"7"' })).keys()]).toEqual(['etag']);
  });

  test.each(['content-type', 'content-security-policy', 'cache-control', 'etag', 'x-content-type-options'])('keep %s', (name) => {
    expect(washHeaders(new Headers({ [name]: 'x' })).get(name)).toBe('x');
  });
});

describe('an answer under our scheme', () => {
  test("is the core's, with its status and body, and washed headers", async () => {
    const answer = await answerUnderScheme(new Request('app://archive/api/about'), async () =>
      Response.json({ photos: 3 }, { status: 202, headers: { connection: 'keep-alive', etag: '"7"' } }),
    );
    expect(answer.status).toBe(202);
    expect(await answer.json()).toEqual({ photos: 3 });
    expect(answer.headers.get('etag')).toBe('"7"');
    expect(answer.headers.has('connection')).toBe(false);
  });

  test.each([204, 304])('may be without a body (%i)', async (status) => {
    const answer = await answerUnderScheme(new Request('app://archive/api/about'), async () => new Response(null, { status }));
    expect(answer.status).toBe(status);
    expect(answer.body).toBeNull();
  });

  test('is a stream as it comes, not a copy of the whole', async () => {
    let asked = 0;
    const endless = new ReadableStream<Uint8Array>({
      pull(controller) {
        asked += 1;
        controller.enqueue(new Uint8Array(1024));
      },
    });
    const { body } = await answerUnderScheme(new Request('app://archive/api/tasks/7/events'), async () => new Response(endless));
    const reader = body?.getReader();
    expect((await reader?.read())?.value).toHaveLength(1024);
    await reader?.cancel();
    expect(asked).toBeLessThan(10);
  });

  test('for another host is nothing, and the core never hears of it', async () => {
    const answer = await answerUnderScheme(new Request('app://elsewhere/api/about'), () => {
      throw new Error('Expected the core not to be asked');
    });
    expect(answer.status).toBe(404);
    expect(await answer.text()).toBe('');
  });
});

describe("the desktop shell's arguments", () => {
  test.each([
    [['.', '--archive', '/skins'], { archive: '/skins', now: null, seed: null }],
    [['--no-sandbox', '.', '--archive=/skins', '--seed', '7'], { archive: '/skins', now: null, seed: '7' }],
    [['.', '--now', '2026-01-01T12:00Z', '--remote-debugging-port=0'], { archive: null, now: '2026-01-01T12:00Z', seed: null }],
    [[], { archive: null, now: null, seed: null }],
  ])('in %j', (words, read) => {
    expect(parseDesktopArguments(words)).toEqual(read);
  });
  test.each([
    [['--now', 'yesterday'], /--now to be a moment .* but received yesterday/],
    [['--now'], /a value after --now but received none/],
    [['--archive'], /a value after --archive but received none/],
  ])('are refused with a sentence: %j', (words, sentence) => {
    expect(() => parseDesktopArguments(words)).toThrow(TypeError);
    expect(() => parseDesktopArguments(words)).toThrow(sentence);
  });
});
