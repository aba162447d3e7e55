import { parseArgs } from 'node:util';

export interface DesktopArguments {
  /** null for the platform's data folder. */
  readonly archive: string | null;
  /** First moment the clock shows; null for the machine's clock. */
  readonly now: string | null;
  /** Makes the identifiers repeatable; null for random ones. */
  readonly seed: string | null;
}

/** Ours among the words of the command line; Chromium and Electron read others from the same line, so unknown ones are let be. */
export function parseDesktopArguments(words: readonly string[]): DesktopArguments {
  const { values } = parseArgs({
    args: [...words],
    strict: false,
    options: { archive: { type: 'string' }, now: { type: 'string' }, seed: { type: 'string' } },
  });
  return { archive: text(values['archive']), now: text(values['now']), seed: text(values['seed']) };
}

function text(value: string | boolean | undefined): string | null {
  return typeof value === 'string' ? value : null;
}
