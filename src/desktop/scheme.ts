import { protocol } from 'electron';
import type { Core } from '../core/core.ts';
import { SCHEME } from './policy/address.ts';
import { answerUnderScheme } from './policy/answer.ts';

/**
 * Makes the page's scheme behave like the web: with an origin, secure, fetchable, its scripts cached as code. It may not
 * bypass the content security policy and takes part in no CORS. Must run before the app is ready.
 */
export function declareScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
}

/** Lets the core answer everything under the scheme. */
export function serve(core: Pick<Core, 'handle'>): void {
  protocol.handle(SCHEME, (request) => answerUnderScheme(request, (asked) => core.handle(asked)));
}
