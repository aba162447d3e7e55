import { describe, expect, it } from 'vitest';
import { type Door, judge, type Verdict, type Visit } from '../../src/loopback/guard.ts';

const door: Door = {
  port: 4711,
  isSession: (offered) => offered === 'the-session',
  isToken: (offered) => offered === 'the-token',
};

/** A fetch of the page itself. */
const ownFetch: Visit = {
  method: 'GET',
  target: '/api/about',
  hosts: ['127.0.0.1:4711'],
  origin: null,
  secFetchSite: 'same-origin',
  secFetchMode: 'cors',
  secFetchDest: 'empty',
  authorization: null,
  cookie: '__Host-session-4711=the-session',
};

/** A person opening an address. */
const opening: Visit = { ...ownFetch, target: '/', secFetchSite: 'none', secFetchMode: 'navigate', secFetchDest: 'document' };

/** A program such as a script: no cookie, no headers of a browser. */
const program: Visit = {
  ...ownFetch,
  secFetchSite: null,
  secFetchMode: null,
  secFetchDest: null,
  cookie: null,
  authorization: 'Bearer the-token',
};

const ours = 'http://127.0.0.1:4711';
const enter: Verdict = { kind: 'enter' };
const refused = (status: 401 | 403 | 421, reason: string): Verdict => ({ kind: 'refuse', status, reason });

describe('what the guard lets in', () => {
  const cases: readonly [what: string, visit: Visit][] = [
    ['a fetch of the page itself', ownFetch],
    ['a HEAD of the page itself', { ...ownFetch, method: 'HEAD' }],
    ['a change by the page, which says its origin', { ...ownFetch, method: 'PUT', origin: ours }],
    ['the page opened again by a person who has the session', opening],
    ['the session among other cookies', { ...ownFetch, cookie: 'a=b; __Host-session-4711=the-session; c=d' }],
    ['a program with the token', program],
    ['a change by a program with the token', { ...program, method: 'POST' }],
    ['the scheme of the token in small letters (RFC 9110, 11.1)', { ...program, authorization: 'bearer the-token' }],
  ];
  it.each(cases)('lets in %s', (_, visit) => expect(judge(visit, door)).toEqual(enter));
});

describe('what the guard exchanges', () => {
  it('takes the ticket of an opened address', () => {
    expect(judge({ ...opening, target: '/?ticket=abc', cookie: null }, door)).toEqual({ kind: 'exchange', ticket: 'abc' });
  });
  it('takes no ticket from a fetch', () => {
    expect(judge({ ...ownFetch, target: '/?ticket=abc', cookie: null }, door)).toEqual(refused(401, 'session'));
  });
  it('takes no ticket from the link of a foreign page', () => {
    expect(judge({ ...opening, target: '/?ticket=abc', secFetchSite: 'cross-site' }, door)).toEqual(refused(403, 'site'));
  });
  it('takes no ticket anywhere but at the front door', () => {
    expect(judge({ ...opening, target: '/api/about?ticket=abc', cookie: null }, door)).toEqual(refused(401, 'session'));
  });
});

describe('what the guard refuses', () => {
  const cases: readonly [what: string, visit: Visit, status: 401 | 403 | 421, reason: string][] = [
    ['a name bound to this address (DNS rebinding)', { ...ownFetch, hosts: ['evil.example:4711'] }, 421, 'host'],
    ['localhost, which may be another address', { ...ownFetch, hosts: ['localhost:4711'] }, 421, 'host'],
    ['another port', { ...ownFetch, hosts: ['127.0.0.1:4712'] }, 421, 'host'],
    ['the address without the port', { ...ownFetch, hosts: ['127.0.0.1'] }, 421, 'host'],
    ['a missing host', { ...ownFetch, hosts: [] }, 421, 'host'],
    ['two hosts', { ...ownFetch, hosts: ['127.0.0.1:4711', 'evil.example'] }, 421, 'host'],
    ['an absolute request line', { ...ownFetch, target: 'http://evil.example/api/about' }, 421, 'host'],
    ['a foreign host even with the token', { ...program, hosts: ['evil.example'] }, 421, 'host'],
    ['the question whether another origin may ask', { ...ownFetch, method: 'OPTIONS' }, 403, 'method'],
    ['that question with the token', { ...program, method: 'OPTIONS' }, 403, 'method'],
    ['a foreign page', { ...ownFetch, secFetchSite: 'cross-site' }, 403, 'site'],
    ["another program's page on this address, whose requests carry our cookie", { ...ownFetch, secFetchSite: 'same-site' }, 403, 'site'],
    ['an image in such a page', { ...ownFetch, secFetchSite: 'same-site', secFetchMode: 'no-cors', secFetchDest: 'image' }, 403, 'site'],
    ['a browser that does not say where it comes from', { ...ownFetch, secFetchSite: null }, 403, 'site'],
    ['a fetch that claims to be opened by a person', { ...ownFetch, secFetchSite: 'none' }, 403, 'site'],
    ['a frame that claims to be opened by a person', { ...opening, secFetchDest: 'iframe' }, 403, 'site'],
    ['a form sent as if opened by a person', { ...opening, method: 'POST', origin: ours }, 403, 'site'],
    ['a change from a foreign origin', { ...ownFetch, method: 'POST', origin: 'http://127.0.0.1:9999' }, 403, 'origin'],
    ['a change from an opaque origin', { ...ownFetch, method: 'POST', origin: 'null' }, 403, 'origin'],
    ['a change that hides its origin', { ...ownFetch, method: 'DELETE' }, 403, 'origin'],
    ['reading from a foreign origin', { ...ownFetch, origin: 'https://127.0.0.1:4711' }, 403, 'origin'],
    ['the page without a session', { ...ownFetch, cookie: null }, 401, 'session'],
    ['the page with a wrong session', { ...ownFetch, cookie: '__Host-session-4711=guessed' }, 401, 'session'],
    ["the session of another port's program", { ...ownFetch, cookie: '__Host-session-4712=the-session' }, 401, 'session'],
    ['an address opened without a session', { ...opening, cookie: null }, 401, 'session'],
    ['a program with a wrong token', { ...program, authorization: 'Bearer guessed' }, 401, 'token'],
    ['a program with no token', { ...program, authorization: 'Bearer ' }, 401, 'token'],
    ['another way to show the token', { ...program, authorization: 'Basic the-token' }, 401, 'token'],
    ['a wrong token even with the session', { ...ownFetch, authorization: 'Bearer guessed' }, 401, 'token'],
    ['a program that shows nothing', { ...program, authorization: null }, 403, 'site'],
    ['the token shown by a foreign page', { ...program, secFetchSite: 'cross-site' }, 403, 'site'],
    ['the token shown from a foreign origin', { ...program, origin: 'http://evil.example' }, 403, 'origin'],
  ];
  it.each(cases)('refuses %s', (_, visit, status, reason) => expect(judge(visit, door)).toEqual(refused(status, reason)));
});
