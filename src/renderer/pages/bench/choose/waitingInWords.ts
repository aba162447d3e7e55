import { counted } from '../../../../words/counts.ts';
import { isSkinFromAbove, type Shown } from './order.ts';

/** What is left to measure: skins seen from above by their number, and the others, so that none is called measured that is not. */
export function waitingInWords(candidates: readonly (Shown & { readonly measured: boolean })[]): string {
  const unmeasured = candidates.filter(({ measured }) => !measured);
  const waiting = unmeasured.filter(isSkinFromAbove).length;
  if (waiting > 0) return `${counted(waiting, 'photo of a skin from above waits', 'photos of skins from above wait')} to be measured.`;
  const others = unmeasured.length;
  if (others === 0) return 'Every photo is measured.';
  if (candidates.some(isSkinFromAbove))
    return `Every photo of a skin from above is measured, ${counted(others, 'other photo is', 'other photos are')} not.`;
  return `${counted(others, 'photo is', 'photos are')} not measured yet; none is marked as a skin seen from above.`;
}
