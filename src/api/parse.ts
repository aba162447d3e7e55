import type { z } from 'zod';
import { refuse } from '../domain/failure.ts';

/** The parsed value, or a refusal that names every field in error: `landmarks.carapace-front.at.xPx`. */
export function parseWith<Schema extends z.ZodType>(schema: Schema, value: unknown, under: string): z.output<Schema> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  const issues = parsed.error.issues.map((issue) => ({
    field: [...(under === '' ? [] : [under]), ...issue.path.map(String)].join('.'),
    problem: issue.message,
  }));
  return refuse({ code: 'input-invalid', issues });
}

/** The version a change is based on, from `If-Match: "<version>"` (RFC 9110, 13.1.1). */
export function versionOf(request: Request, what: string): number {
  const header = request.headers.get('if-match');
  if (header === null) refuse({ code: 'version-missing', what });
  const digits = /^"(\d{1,15})"$/.exec(header)?.[1];
  if (digits !== undefined) return Number(digits);
  return refuse({
    code: 'input-invalid',
    issues: [{ field: 'if-match', problem: `Expected "<version>" in quotes but received ${header}` }],
  });
}
