import { config } from 'zod';

/**
 * For pages under a policy that forbids code from strings (CSP `require-trusted-types-for 'script'`): schemas are then
 * interpreted, and the probe that the browser would report is not made. Schemas ask for this while they are built, so a page
 * imports this module before any other.
 */
config({ jitless: true });
