/** What a schema of the domain says about a draft that does not fit. */
interface Issue {
  readonly code?: string | undefined;
  readonly path: readonly PropertyKey[];
  readonly origin?: unknown;
  readonly minimum?: unknown;
  readonly maximum?: unknown;
}

/** One sentence per field, by the name of the field; the first problem of each. */
export function fieldErrors(issues: readonly Issue[]): Readonly<Record<string, string>> {
  const errors: Record<string, string> = {};
  for (const issue of issues) errors[String(issue.path[0] ?? '')] ??= problemInWords(issue);
  return errors;
}

function problemInWords(issue: Issue): string {
  const ofText = issue.origin === 'string';
  switch (issue.code) {
    case 'too_small':
      return ofText ? 'Has to be filled in.' : `Has to be ${String(issue.minimum)} or more.`;
    case 'too_big':
      return ofText ? `Too long: at most ${String(issue.maximum)} characters.` : `Has to be ${String(issue.maximum)} or less.`;
    case 'invalid_format':
      return 'Has to be a day of the calendar.';
    case 'invalid_type':
      return 'Has to be a whole number, or empty.';
    default:
      return 'Does not fit here.';
  }
}
