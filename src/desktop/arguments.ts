import { parseArgs } from 'node:util';
import { checkedNow } from '../core/ambient.ts';

export interface DesktopArguments {
  /** null for the platform's data folder. */
  readonly archive: string | null;
  /** First moment the clock shows; null for the machine's clock. */
  readonly now: string | null;
  /** Makes the identifiers repeatable; null for random ones. */
  readonly seed: string | null;
}

/**
 * Ours among the words of the command line; Chromium and Electron read others from the same line, so unknown ones are let be.
 *
 * @throws TypeError with a sentence for the person at the terminal when one of ours makes no sense.
 */
export function parseDesktopArguments(words: readonly string[]): DesktopArguments {
  const { values } = parseArgs({
    args: [...words],
    strict: false,
    options: { archive: { type: 'string' }, now: { type: 'string' }, seed: { type: 'string' } },
  });
  const text = (name: string): string | null => {
    const value = values[name];
    if (value === true || value === '') throw new TypeError(`Expected a value after --${name} but received none`);
    return typeof value === 'string' ? value : null;
  };
  const now = text('now');
  return { archive: text('archive'), now: now === null ? null : checkedNow(now), seed: text('seed') };
}
