import address from './levels.worker.ts?worker&url';

/** The part of Trusted Types that is used here; not every browser has it, and not every list of DOM types knows it. */
interface TrustedTypes {
  createPolicy(name: string, rules: { createScriptURL(url: string): string }): { createScriptURL(url: string): string };
}

/**
 * Starts the worker that decodes photos. The page's content security policy lets only vouched addresses become scripts:
 * this one is part of the bundle, and the policy vouches for no other.
 */
export function startWorker(): Worker {
  return new Worker(vouchedFor(address), { type: 'module' });
}

function vouchedFor(url: string): string {
  const trustedTypes = (globalThis as { trustedTypes?: TrustedTypes }).trustedTypes;
  if (trustedTypes === undefined) return url;
  const policy = trustedTypes.createPolicy('exuviary-photo-worker', {
    createScriptURL(wanted) {
      if (wanted !== address) throw new TypeError(`Expected the address of the photo worker but received ${wanted}`);
      return wanted;
    },
  });
  // Typed as text by this interface; at run time an object that only the policy can make.
  return policy.createScriptURL(url);
}
