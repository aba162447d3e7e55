/** The same as in package.json, which a test makes sure of. */
export const VERSION = '0.1.0';
