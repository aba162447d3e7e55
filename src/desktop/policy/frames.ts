import { isOurAddress, ORIGIN } from './address.ts';
import { mayNavigate } from './navigation.ts';

/** Who asks for something under our scheme. */
export interface Asker {
  readonly url: string;
  readonly resourceType: string;
  /** Addresses of the asking frame and of all its parents, innermost first; empty where there is no frame, as in a worker. */
  readonly frames: readonly string[];
  /** Origin of the page that asked; null for what the browser started itself. */
  readonly initiatorOrigin: string | null;
}

/** Whether a frame and everything around it is our page. A chain without a frame is nobody's. */
export function isOurFrameChain(frames: readonly string[]): boolean {
  return frames.length > 0 && frames.every(isOurAddress);
}

/**
 * Whether a request under our scheme comes from our own page. On a custom scheme there is no Origin and no Sec-Fetch-Site
 * header to go by; what can be trusted is which frame asked.
 */
export function mayAsk({ url, resourceType, frames, initiatorOrigin }: Asker): boolean {
  if (!isOurAddress(url)) return false;
  if (resourceType === 'mainFrame') return mayNavigate(url);
  if (frames.length > 0) return isOurFrameChain(frames);
  return initiatorOrigin === ORIGIN;
}
