import { describe, expect, it } from 'vitest';
import { contentSecurityPolicy } from '../../src/core/policy.ts';

/** Content Security Policy Level 3: directives are separated by semicolons, names come first. */
const directives = new Map(
  contentSecurityPolicy()
    .split(';')
    .map((directive) => directive.trim().split(' '))
    .map(([name, ...sources]) => [name, sources] as const),
);

describe('the content security policy', () => {
  it('allows nothing that is not named', () => expect(directives.get('default-src')).toEqual(["'none'"]));
  it('names no other origin, no wildcard and no way to run text as code', () => {
    const sources = new Set([...directives.values()].flat());
    expect([...sources].sort()).toEqual(["'none'", "'script'", "'self'", 'blob:']);
  });
  it('shows pictures it has decoded itself, and only pictures', () => {
    const withBlobs = [...directives].filter(([, sources]) => sources.includes('blob:')).map(([name]) => name);
    expect(withBlobs).toEqual(['img-src']);
  });
  it('can be neither framed nor rebased, and sends no forms', () => {
    for (const name of ['frame-ancestors', 'base-uri', 'form-action', 'object-src']) expect(directives.get(name)).toEqual(["'none'"]);
  });
  it('takes no text where a script is meant (Trusted Types)', () => {
    expect(directives.get('require-trusted-types-for')).toEqual(["'script'"]);
  });
});
