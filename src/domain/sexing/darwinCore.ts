import type { SexSign } from './determination.ts';
import { rankOf } from './rank.ts';

/**
 * The value of Darwin Core's `sex` (TDWG, dwc:sex) for an animal: a sex only from "strong" up, `indeterminate` for one that
 * was examined without coming so far, and null, which is left blank, for one that nobody has examined.
 */
export function darwinCoreSexOf({ sex, level, conflict }: SexSign, examined: boolean): 'female' | 'male' | 'indeterminate' | null {
  if (!examined) return null;
  const named = sex === 'female' || sex === 'male' ? sex : null;
  return named !== null && !conflict && level !== null && rankOf(level) >= rankOf('strong') ? named : 'indeterminate';
}
