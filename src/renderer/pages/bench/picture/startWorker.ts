import warpAddress from '../plane/warp.worker.ts?worker&url';
import levelsAddress from './levels.worker.ts?worker&url';

/** The part of Trusted Types that is used here; not every browser has it, and not every list of DOM types knows it. */
interface TrustedTypes {
  createPolicy(name: string, rules: { createScriptURL(url: string): string }): { createScriptURL(url: string): string };
}

/** Starts the worker that decodes photos. */
export function startWorker(): Worker {
  return new Worker(vouchedFor(levelsAddress), { type: 'module' });
}

/** Starts the worker that draws a photo as seen from straight above. */
export function startWarpWorker(): Worker {
  return new Worker(vouchedFor(warpAddress), { type: 'module' });
}

/**
 * The page's content security policy lets only vouched addresses become scripts: these are part of the bundle, and the policy
 * vouches for no other.
 */
function vouchedFor(url: string): string {
  const trustedTypes = (globalThis as { trustedTypes?: TrustedTypes }).trustedTypes;
  if (trustedTypes === undefined) return url;
  const policy = trustedTypes.createPolicy('exuviary-photo-worker', {
    createScriptURL(wanted) {
      if (wanted !== levelsAddress && wanted !== warpAddress)
        throw new TypeError(`Expected the address of a photo worker but received ${wanted}`);
      return wanted;
    },
  });
  // Typed as text by this interface; at run time an object that only the policy can make.
  return policy.createScriptURL(url);
}
