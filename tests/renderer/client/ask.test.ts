import { afterEach, describe, expect, test, vi } from 'vitest';
import { ask, askBytes } from '../../../src/renderer/client/ask.ts';

const BROKEN_OFF = () =>
  new Response(
    new ReadableStream({
      start(controller) {
        controller.enqueue(new TextEncoder().encode('{"version": '));
        controller.error(new TypeError('the connection was lost'));
      },
    }),
  );

function answering(answer: () => Response | Promise<Response>): void {
  vi.stubGlobal('fetch', async () => answer());
}

afterEach(() => vi.unstubAllGlobals());

describe('asking the archive', () => {
  test('an answer that breaks off while it is read has not arrived', async () => {
    answering(BROKEN_OFF);
    await expect(ask('GET /api/about', {})).rejects.toMatchObject({ failure: { code: 'unreachable' } });
    const path = { photoId: 'p1' };
    await expect(askBytes('GET /api/photos/{photoId}/original', path, AbortSignal.any([]))).rejects.toMatchObject({
      failure: { code: 'unreachable' },
    });
  });

  test('a refusal keeps the failure it carries', async () => {
    answering(() => Response.json({ failure: { code: 'not-found', what: 'photo', id: 'p1' } }, { status: 404 }));
    await expect(ask('GET /api/about', {})).rejects.toMatchObject({ failure: { code: 'not-found', what: 'photo', id: 'p1' } });
  });

  test('who stopped asking is told just that, not that the archive is silent', async () => {
    answering(() => Promise.reject(new DOMException('stopped', 'AbortError')));
    await expect(ask('GET /api/about', {})).rejects.toMatchObject({ name: 'AbortError' });
  });
});
