import { once } from 'node:events';
import { connect } from 'node:net';
import { Readable } from 'node:stream';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sessionCookieName } from '../../src/loopback/guard.ts';
import type { Presence } from '../../src/loopback/presence.ts';
import { type LoopbackServer, listen } from '../../src/loopback/server.ts';

let server: LoopbackServer;
let handled: Request[];
let open: number;

const presence: Presence = {
  enter: () => {
    open += 1;
    return () => {
      open -= 1;
    };
  },
  stop: () => undefined,
};

beforeEach(async () => {
  handled = [];
  open = 0;
  const handle = async (request: Request): Promise<Response> => {
    handled.push(request);
    return new Response(`${request.method} ${new URL(request.url).pathname}`);
  };
  server = await listen({ port: 0, handle, presence, elapsedMs: () => 0 });
});
afterEach(() => server.close());

/** Sends these lines as they stand and answers everything that came back until the server closed the connection. */
async function exchange(...lines: readonly string[]): Promise<string> {
  const socket = connect(server.port, '127.0.0.1').setEncoding('latin1');
  let received = '';
  socket.on('data', (text: string) => {
    received += text;
  });
  socket.write([...lines, 'Connection: close', '', ''].join('\r\n'));
  await once(socket, 'close');
  return received;
}

const host = (): string => `Host: 127.0.0.1:${server.port}`;
const bearer = (): string => `Authorization: Bearer ${server.token}`;
const opened = ['Sec-Fetch-Site: none', 'Sec-Fetch-Mode: navigate', 'Sec-Fetch-Dest: document'];

describe('on the wire', () => {
  const strangers: readonly [what: string, lines: () => string[]][] = [
    ['a foreign host', () => ['GET / HTTP/1.1', 'Host: evil.example', bearer()]],
    ['localhost', () => ['GET / HTTP/1.1', `Host: localhost:${server.port}`, bearer()]],
    ['no host', () => ['GET / HTTP/1.1', bearer()]],
    ['no host in HTTP/1.0', () => ['GET / HTTP/1.0', bearer()]],
    ['an absolute request line with a foreign name', () => ['GET http://evil.example/ HTTP/1.1', host(), bearer()]],
    ['an absolute request line with our name', () => [`GET http://127.0.0.1:${server.port}/ HTTP/1.1`, 'Host: evil.example', bearer()]],
  ];
  it.each(strangers)('%s gets 421 and nothing else', async (_, lines) => {
    const answer = await exchange(...lines());
    expect(answer).toMatch(/^HTTP\/1\.1 421 /);
    expect(answer.slice(answer.indexOf('\r\n\r\n'))).toBe('\r\n\r\n');
    expect(handled).toEqual([]);
  });
  it('two hosts are refused before anything looks at them', async () => {
    expect(await exchange('GET / HTTP/1.1', host(), 'Host: evil.example', bearer())).toMatch(/^HTTP\/1\.1 4\d\d /);
    expect(handled).toEqual([]);
  });
  it('a program with the token reaches the handler', async () => {
    const answer = await exchange('GET /api/about HTTP/1.1', host(), bearer());
    expect(answer).toMatch(/^HTTP\/1\.1 200 /);
    expect(answer).toContain('GET /api/about');
    expect(handled).toHaveLength(1);
  });
  it('the handler sees the request without swapped global classes', async () => {
    const before = [globalThis.Request, globalThis.Response];
    await exchange('GET /api/about HTTP/1.1', host(), bearer());
    expect([globalThis.Request, globalThis.Response]).toEqual(before);
  });
  it('no answer permits another origin anything', async () => {
    const answers = [
      await exchange('OPTIONS /api/about HTTP/1.1', host(), 'Origin: http://evil.example', 'Access-Control-Request-Method: PUT'),
      await exchange('GET /api/about HTTP/1.1', host(), bearer()),
    ];
    expect(answers[0]).toMatch(/^HTTP\/1\.1 403 /);
    for (const answer of answers) expect(answer.toLowerCase()).not.toContain('access-control-allow');
  });
  it('every answer carries the headers that keep other pages out, refusals included', async () => {
    const answers = [
      await exchange('GET /api/about HTTP/1.1', host(), bearer()),
      await exchange('GET /api/about HTTP/1.1', host()),
      await exchange('GET / HTTP/1.1', 'Host: evil.example'),
    ];
    for (const answer of answers) {
      for (const header of [
        'x-content-type-options: nosniff',
        'referrer-policy: no-referrer',
        'cross-origin-opener-policy: same-origin',
        'cross-origin-resource-policy: same-origin',
      ]) {
        expect(answer.toLowerCase()).toContain(header);
      }
    }
  });
  it('says who may come in but not what is inside', async () => {
    const answer = await exchange('GET /api/about HTTP/1.1', host(), 'Sec-Fetch-Site: same-origin');
    expect(answer).toMatch(/^HTTP\/1\.1 401 /);
    expect(answer).toContain('{"failure":{"code":"refused-by-guard","reason":"session"}}');
  });
  it('counts a visit until its answer is out', async () => {
    await exchange('GET /api/about HTTP/1.1', host(), bearer());
    expect(handled).toHaveLength(1);
    expect(open).toBe(0);
  });
});

describe('the first address', () => {
  const target = (): string => server.newAddress().slice(`http://127.0.0.1:${server.port}`.length);
  const cookieIn = (answer: string): string => /set-cookie: ([^;\r]+)/i.exec(answer)?.[1] ?? '';

  it('exchanges its ticket for a session, and the address is clean afterwards', async () => {
    const answer = await exchange(`GET ${target()} HTTP/1.1`, host(), ...opened);
    expect(answer).toMatch(/^HTTP\/1\.1 303 /);
    expect(answer).toMatch(/\r\nlocation: \/\r\n/i);
    const cookie = /set-cookie: (.*)\r\n/i.exec(answer)?.[1] ?? '';
    expect(cookie).toMatch(new RegExp(`^${sessionCookieName(server.port)}=[\\w-]{43}; Path=/; HttpOnly; Secure; SameSite=Strict$`));
    const inside = await exchange('GET / HTTP/1.1', host(), ...opened, `Cookie: ${cookieIn(answer)}`);
    expect(inside).toMatch(/^HTTP\/1\.1 200 /);
  });
  it('is good once', async () => {
    const once = target();
    await exchange(`GET ${once} HTTP/1.1`, host(), ...opened);
    const late = await exchange(`GET ${once} HTTP/1.1`, host(), ...opened);
    expect(late).toMatch(/^HTTP\/1\.1 401 /);
    expect(late).toMatch(/\r\ncontent-type: text\/plain/i);
    expect(late).toContain('start Exuviary again for a new one');
  });
  it('used again by the same browser leads to the clean address without a new session', async () => {
    const once = target();
    const first = await exchange(`GET ${once} HTTP/1.1`, host(), ...opened);
    const again = await exchange(`GET ${once} HTTP/1.1`, host(), ...opened, `Cookie: ${cookieIn(first)}`);
    expect(again).toMatch(/^HTTP\/1\.1 303 /);
    expect(cookieIn(again)).toBe('');
  });
  it('does not contain the session or the token', async () => {
    const address = target();
    const answer = await exchange(`GET ${address} HTTP/1.1`, host(), ...opened);
    expect(address).not.toContain(cookieIn(answer).split('=')[1]);
    expect(address).not.toContain(server.token);
  });
});

describe('a large body', () => {
  it('reaches the handler while it is still being sent, and is never held whole', async () => {
    const firstPieceArrived = Promise.withResolvers<void>();
    let received = 0;
    const streaming = await listen({
      port: 0,
      handle: async (request) => {
        for await (const piece of request.body ?? new ReadableStream<Uint8Array>()) {
          received += piece.byteLength;
          firstPieceArrived.resolve();
        }
        return new Response(null, { status: 204 });
      },
      presence,
      elapsedMs: () => 0,
    });
    async function* pieces(): AsyncGenerator<Uint8Array> {
      yield new Uint8Array(1_000);
      await firstPieceArrived.promise;
      for (let index = 0; index < 100; index++) yield new Uint8Array(1_000_000);
    }
    const init: RequestInit & { duplex: 'half' } = {
      method: 'PUT',
      headers: { authorization: `Bearer ${streaming.token}` },
      body: Readable.toWeb(Readable.from(pieces())) as ReadableStream<Uint8Array<ArrayBuffer>>,
      duplex: 'half',
    };
    const response = await fetch(`http://127.0.0.1:${streaming.port}/api/intakes/i/files/0`, init);
    expect([response.status, received]).toEqual([204, 100_001_000]);
    await streaming.close();
  });
});

describe('where it listens', () => {
  it('is not reachable at another address of this machine', async () => {
    const socket = connect(server.port, '127.0.0.2');
    const [error] = (await once(socket, 'error')) as [NodeJS.ErrnoException];
    expect(error.code).toBe('ECONNREFUSED');
  });
  it('ends open answers when it closes', async () => {
    const never = await listen({
      port: 0,
      handle: async () => new Response(new ReadableStream({ start: (controller) => controller.enqueue(new Uint8Array([58])) })),
      presence,
      elapsedMs: () => 0,
    });
    const response = await fetch(`http://127.0.0.1:${never.port}/api/presence`, { headers: { authorization: `Bearer ${never.token}` } });
    await never.close();
    await expect(response.text()).rejects.toThrow();
  });
  it('says so when the port is taken', async () => {
    await expect(listen({ port: server.port, handle: async () => new Response(), presence, elapsedMs: () => 0 })).rejects.toThrow(
      'EADDRINUSE',
    );
  });
});
