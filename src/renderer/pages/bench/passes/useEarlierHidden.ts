import type { Reading } from '../../../../domain/measuring/reading.ts';
import { isInHand } from '../pass.ts';
import { useBench, useWork } from '../useWork.ts';

/**
 * The passes before the one in hand while they are hidden, else none: only a pass made without looking at them tells how well a
 * hand repeats. They are hidden until every point has its answer or the keeper places no more.
 */
export function useEarlierHidden(): readonly Reading[] {
  const { sheet, pass } = useWork();
  const isPlacing = useBench((state) => state.guide.current !== null && !state.isPlacingEnded);
  return isPlacing ? sheet.readings.filter((reading) => !isInHand(reading, pass) && reading.pass < pass.pass) : [];
}
