import { isOurAddress } from './address.ts';

/** Places inside the page are fragments, so the window never needs another document than this one. */
const DOCUMENTS: ReadonlySet<string> = new Set(['/', '/index.html']);

/** Whether a frame of the window may go to an address: only to Exuviary's own page. */
export function mayNavigate(address: string): boolean {
  return isOurAddress(address) && DOCUMENTS.has(new URL(address).pathname);
}
