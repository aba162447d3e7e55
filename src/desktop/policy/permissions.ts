import { isOurAddress } from './address.ts';

/** Copying a table of readings as text, and a notice about a molt that takes long; nothing else that Chromium could grant is needed. */
const GRANTED: ReadonlySet<string> = new Set(['clipboard-sanitized-write', 'notifications']);

/** Whether a page at an address (or an origin) gets a permission it asks for. */
export function mayEnter(permission: string, address: string): boolean {
  return GRANTED.has(permission) && isOurAddress(address);
}
