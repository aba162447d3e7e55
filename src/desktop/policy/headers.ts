/**
 * Headers that mean something over HTTP only. Several of them crash Chromium's renderer when they come with a response
 * of a custom scheme (Strict-Transport-Security, Cross-Origin-*, Origin-Agent-Cluster); the others speak of a connection
 * that is not there. Cookies are not used here and Electron would merge several into one.
 */
const HTTP_ONLY: ReadonlySet<string> = new Set([
  'strict-transport-security',
  'origin-agent-cluster',
  'transfer-encoding',
  'connection',
  'keep-alive',
  'set-cookie',
]);
const HTTP_ONLY_PREFIX = 'cross-origin-';

/** A response's headers without those that a custom scheme must not carry; names come out in lower case. */
export function washHeaders(headers: Headers): Headers {
  const washed = new Headers();
  for (const [name, value] of headers) {
    if (!HTTP_ONLY.has(name) && !name.startsWith(HTTP_ONLY_PREFIX)) washed.append(name, value);
  }
  return washed;
}
