/** The page's own scheme. Standard, so that it has an origin and the policy's 'self' means something. */
export const SCHEME = 'app';
const HOST = 'archive';
export const ORIGIN = `${SCHEME}://${HOST}`;
export const START_PAGE = `${ORIGIN}/`;

/**
 * Whether an address, as text, belongs to Exuviary itself. Compared part by part: the WHATWG parser of Node calls the
 * origin of a custom scheme "null", so `url.origin` would not tell two schemes apart.
 */
export function isOurAddress(address: string): boolean {
  const url = URL.parse(address);
  return url !== null && url.protocol === `${SCHEME}:` && url.host === HOST && url.username === '' && url.password === '';
}
