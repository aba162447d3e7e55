import { Readable } from 'node:stream';
import type { ReadableStream as WebStream } from 'node:stream/web';
import { expect } from 'vitest';
import type { Core } from '../../src/core/core.ts';
import { answerUnderScheme } from '../../src/desktop/policy/answer.ts';
import { listen } from '../../src/loopback/server.ts';

/** One request, before any road has made a Request of it. */
export interface Asked {
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body?: string | Uint8Array<ArrayBuffer>;
}

/** One way from a page or a program to the core. */
export interface Road {
  /** The answer as the asker sees it. */
  ask(asked: Asked): Promise<Response>;
  close(): Promise<void>;
}

export const ROADS: Readonly<Record<string, (core: Core) => Promise<Road>>> = {
  'the core itself': async (core) => ({
    ask: ({ path, ...init }) => core.handle(new Request(`http://core.invalid${path}`, init)),
    close: async () => undefined,
  }),
  'the loopback shell over HTTP': overLoopback,
  "a stand-in for Electron's protocol.handle": async (core) => underScheme(core),
};

async function overLoopback(core: Core): Promise<Road> {
  const presence = { enter: () => () => undefined, stop: () => undefined };
  const server = await listen({ port: 0, handle: (request) => core.handle(request), presence, elapsedMs: () => performance.now() });
  return {
    ask: ({ path, headers, ...init }) =>
      fetch(`http://127.0.0.1:${server.port}${path}`, { ...init, headers: { ...headers, authorization: `Bearer ${server.token}` } }),
    close: () => server.close(),
  };
}

/**
 * Does to a request and its answer what Electron's own source does (electron/electron, lib/browser/api/protocol.ts): the
 * Request has no abort signal of the page; `Origin: null` is dropped; a body of text comes as one buffer, that of a file as a
 * stream; the answer's headers become a plain object and its body a stream of Node's; whatever is thrown reaches the page as
 * a bare network error.
 */
function underScheme(core: Core): Road {
  return {
    async ask({ method, path, headers, body }) {
      const sent = new Headers(headers);
      if (sent.get('origin') === 'null') sent.delete('origin');
      const carried = body === undefined ? null : typeof body === 'string' ? Buffer.from(body) : new Blob([body]).stream();
      const init: RequestInit & { duplex: 'half' } = { method, headers: sent, body: carried, duplex: 'half' };
      const request = new Request(`app://archive${path}`, init);
      const answered = await answerUnderScheme(request, async (asked) => expectWashable(await core.handle(asked))).catch(
        (error: unknown) => {
          throw new TypeError('Failed to fetch', { cause: error });
        },
      );
      const data = answered.body && Readable.fromWeb(answered.body as WebStream<Uint8Array>);
      return new Response(data && (Readable.toWeb(data) as ReadableStream<Uint8Array<ArrayBuffer>>), {
        status: answered.status,
        headers: Object.fromEntries(answered.headers),
      });
    },
    close: async () => undefined,
  };
}

/** Chromium aborts, or takes them for nonsense, when an answer under a custom scheme carries one of these. */
const FORBIDDEN = [
  'strict-transport-security',
  'cross-origin-opener-policy',
  'cross-origin-embedder-policy',
  'cross-origin-resource-policy',
  'origin-agent-cluster',
  'transfer-encoding',
  'connection',
  'keep-alive',
  'set-cookie',
];

function expectWashable(response: Response): Response {
  expect(FORBIDDEN.filter((name) => response.headers.has(name))).toEqual([]);
  return response;
}
