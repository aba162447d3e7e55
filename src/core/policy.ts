const DIRECTIVES: readonly (readonly [directive: string, sources: string])[] = [
  ['default-src', "'none'"],
  ['script-src', "'self'"],
  ['style-src', "'self'"],
  ['img-src', "'self' blob:"],
  ['font-src', "'self'"],
  ['connect-src', "'self'"],
  ['worker-src', "'self'"],
  ['form-action', "'none'"],
  ['base-uri', "'none'"],
  ['frame-src', "'none'"],
  ['frame-ancestors', "'none'"],
  ['object-src', "'none'"],
  ['require-trusted-types-for', "'script'"],
];

/**
 * What the page may load and run (Content Security Policy Level 3): only what Exuviary itself serves. Sent with the page in
 * both shells; as a header, because `frame-ancestors` is ignored in a meta element.
 */
export function contentSecurityPolicy(): string {
  return DIRECTIVES.map((directive) => directive.join(' ')).join('; ');
}
