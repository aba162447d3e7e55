/** The facts of a request that decide whether it may enter; null where a header is missing. */
export interface Visit {
  readonly method: string;
  /** The request target as sent: `/path?query`, or something we do not take. */
  readonly target: string;
  /** Every Host header that was sent. */
  readonly hosts: readonly string[];
  readonly origin: string | null;
  readonly secFetchSite: string | null;
  readonly secFetchMode: string | null;
  readonly secFetchDest: string | null;
  readonly authorization: string | null;
  readonly cookie: string | null;
}

/** What the guard holds visitors against. */
export interface Door {
  readonly port: number;
  isSession(offered: string): boolean;
  isToken(offered: string): boolean;
}

export type Verdict =
  | { readonly kind: 'enter' }
  | { readonly kind: 'exchange'; readonly ticket: string }
  | { readonly kind: 'refuse'; readonly status: 401 | 403 | 421; readonly reason: string };

export function originOf(port: number): string {
  return `http://127.0.0.1:${port}`;
}

/** Cookies are shared by all ports of a host, so the port is part of the name. */
export function sessionCookieName(port: number): string {
  return `__Host-session-${port}`;
}

/**
 * Decides about one request, before routing and before static files. In this order:
 * - the Host must be exactly ours, or a name bound to this address by a foreign page would be taken for us (DNS rebinding);
 * - no cross-origin questions are answered: OPTIONS is refused and a foreign Origin too;
 * - a program shows the token (`Authorization: Bearer`, RFC 6750); a page cannot send that header across origins unasked;
 * - a page must come from ourselves (Fetch Metadata `same-origin`, on GET too: another program's page on this address is
 *   "same-site" and gets our cookie sent), or be the document the person opened (`none`);
 * - what changes something must say its Origin;
 * - the first address carries a ticket to exchange for the session; everything else needs the session.
 */
export function judge(visit: Visit, door: Door): Verdict {
  if (!isOurHost(visit, door)) return refuse(421, 'host');
  if (visit.method === 'OPTIONS') return refuse(403, 'method');
  if (visit.origin !== null && visit.origin !== originOf(door.port)) return refuse(403, 'origin');
  if (visit.authorization !== null) return judgeProgram(visit, visit.authorization, door);
  const reads = visit.method === 'GET' || visit.method === 'HEAD';
  const opens = reads && visit.secFetchMode === 'navigate' && visit.secFetchDest === 'document';
  if (visit.secFetchSite !== 'same-origin' && !(visit.secFetchSite === 'none' && opens)) return refuse(403, 'site');
  if (!reads && visit.origin === null) return refuse(403, 'origin');
  const ticket = opens ? ticketIn(visit.target) : null;
  if (ticket !== null) return { kind: 'exchange', ticket };
  return hasSession(visit, door) ? { kind: 'enter' } : refuse(401, 'session');
}

export function hasSession(visit: Visit, door: Door): boolean {
  const name = sessionCookieName(door.port);
  const offered = (visit.cookie ?? '').split(';').map((pair) => pair.trim().split('='));
  return offered.some(([cookieName, value]) => cookieName === name && value !== undefined && door.isSession(value));
}

function isOurHost({ hosts, target }: Visit, door: Door): boolean {
  return target.startsWith('/') && hosts.length === 1 && hosts[0] === `127.0.0.1:${door.port}`;
}

function judgeProgram(visit: Visit, authorization: string, door: Door): Verdict {
  if (visit.secFetchSite !== null && visit.secFetchSite !== 'same-origin' && visit.secFetchSite !== 'none') return refuse(403, 'site');
  const token = /^Bearer (\S+)$/i.exec(authorization)?.[1];
  return token !== undefined && door.isToken(token) ? { kind: 'enter' } : refuse(401, 'token');
}

function ticketIn(target: string): string | null {
  const query = target.startsWith('/?') ? target.slice(2) : '';
  return new URLSearchParams(query).get('ticket');
}

function refuse(status: 401 | 403 | 421, reason: string): Verdict {
  return { kind: 'refuse', status, reason };
}
