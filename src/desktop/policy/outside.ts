/** The web sites that the page's own texts point to: where published sources can be read. */
const SITES: ReadonlySet<string> = new Set(['doi.org', 'www.bipm.org', 'www.itl.nist.gov']);

/**
 * The address to hand to the system's browser, or null for one that must not leave: only https, only sites of our own
 * list, no name or password in it. What a keeper typed therefore never becomes a link that opens something.
 */
export function outsideUrl(address: string): string | null {
  const url = URL.parse(address);
  if (url === null || url.protocol !== 'https:' || url.username !== '' || url.password !== '' || url.port !== '') return null;
  return SITES.has(url.hostname) ? url.href : null;
}
