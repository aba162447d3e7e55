import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { getRequestListener } from '@hono/node-server';
import type { Failure } from '../domain/failure.ts';
import { type Door, hasSession, judge, originOf, sessionCookieName, type Visit } from './guard.ts';
import type { Presence } from './presence.ts';
import { createTickets, isSameSecret, newSecret } from './secrets.ts';

const MOST_CONNECTIONS = 256;
/** A photo of a hundred megabytes from a slow stick may take its time. */
const LONGEST_REQUEST_MS = 15 * 60_000;

/** For this shell only: on a custom scheme some of these make Chromium fail. */
const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
};

const OPENED_TOO_LATE =
  'This address opens Exuviary once, within a minute of being printed. It was used already or is too old: start Exuviary again for a new one.';

export interface LoopbackOptions {
  /** 0 lets the system choose. */
  readonly port: number;
  readonly handle: (request: Request) => Promise<Response>;
  readonly presence: Presence;
  /** A clock that never goes back, in milliseconds. */
  readonly elapsedMs: () => number;
}

export interface LoopbackServer {
  readonly port: number;
  /** For programs: `Authorization: Bearer <token>`. */
  readonly token: string;
  /** An address that lets one browser in, once, within a minute. */
  newAddress(): string;
  /** Takes no more requests. */
  refuseNew(): void;
  /** Ends what is still open, event streams included. */
  close(): Promise<void>;
}

/** Listens on 127.0.0.1 only: `localhost` may mean another address, and 0.0.0.0 would let the network in. */
export async function listen(options: LoopbackOptions): Promise<LoopbackServer> {
  const session = newSecret();
  const token = newSecret();
  const tickets = createTickets(options.elapsedMs);
  // The adapter would otherwise swap the global Request and Response for its own.
  const answer = getRequestListener((request) => options.handle(request), { overrideGlobalObjects: false });
  let door: Door | null = null;

  const server = createServer({ requireHostHeader: false, requestTimeout: LONGEST_REQUEST_MS }, (incoming, outgoing) => {
    for (const [name, value] of Object.entries(SECURITY_HEADERS)) outgoing.setHeader(name, value);
    if (door === null) return void refuse(outgoing, 421, 'host');
    const visit = visitOf(incoming);
    const verdict = judge(visit, door);
    if (verdict.kind === 'refuse')
      return void refuse(outgoing, verdict.status, verdict.reason, verdict.status === 401 && visit.secFetchMode === 'navigate');
    if (verdict.kind === 'exchange') {
      if (tickets.redeem(verdict.ticket)) return void welcome(outgoing, `${sessionCookieName(door.port)}=${session}`);
      return hasSession(visit, door) ? void welcome(outgoing, null) : void refuse(outgoing, 401, 'ticket', true);
    }
    outgoing.once('close', options.presence.enter());
    void answer(incoming, outgoing);
  });
  server.maxConnections = MOST_CONNECTIONS;
  const port = await portOf(server, options.port);
  door = { port, isSession: (offered) => isSameSecret(offered, session), isToken: (offered) => isSameSecret(offered, token) };

  let closed: Promise<void> | null = null;
  const refuseNew = (): void => {
    closed ??= new Promise((resolve, reject) => server.close((error) => (error ? reject(error) : resolve())));
  };
  return {
    port,
    token,
    newAddress: () => `${originOf(port)}/?ticket=${tickets.issue()}`,
    refuseNew,
    async close() {
      refuseNew();
      server.closeAllConnections();
      await closed;
    },
  };
}

function portOf(server: Server, wanted: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(wanted, '127.0.0.1', () => {
      server.off('error', reject);
      const address = server.address();
      if (address === null || typeof address === 'string') reject(new TypeError('Expected the server to listen on a port'));
      else resolve(address.port);
    });
  });
}

function visitOf(incoming: IncomingMessage): Visit {
  const { headers, headersDistinct } = incoming;
  const single = (name: string): string | null => headersDistinct[name]?.join(', ') ?? null;
  return {
    method: incoming.method ?? '',
    target: incoming.url ?? '',
    hosts: headersDistinct['host'] ?? [],
    origin: single('origin'),
    secFetchSite: single('sec-fetch-site'),
    secFetchMode: single('sec-fetch-mode'),
    secFetchDest: single('sec-fetch-dest'),
    authorization: single('authorization'),
    cookie: headers.cookie ?? null,
  };
}

/** Takes the ticket out of the address bar and, the first time, hands over the session. */
function welcome(outgoing: ServerResponse, cookie: string | null): void {
  if (cookie !== null) outgoing.setHeader('set-cookie', `${cookie}; Path=/; HttpOnly; Secure; SameSite=Strict`);
  outgoing.writeHead(303, { location: '/', 'cache-control': 'no-store', 'content-length': 0 }).end();
}

/** A wrong host gets nothing at all: whoever asked may not even learn who we are. A person who opened an address reads a sentence. */
function refuse(outgoing: ServerResponse, status: number, reason: string, isOpened = false): void {
  const failure: Failure = { code: 'refused-by-guard', reason };
  const told = isOpened ? `${OPENED_TOO_LATE}\n` : JSON.stringify({ failure });
  const body = status === 421 ? '' : told;
  const type = isOpened ? 'text/plain' : 'application/json';
  const headers = { 'content-type': `${type}; charset=utf-8`, 'cache-control': 'no-store', connection: 'close' };
  outgoing.writeHead(status, { ...headers, 'content-length': Buffer.byteLength(body) }).end(body);
}
