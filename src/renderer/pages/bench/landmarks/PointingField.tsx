import type { ReactElement } from 'react';
import { COVERAGE_FACTOR } from '../../../../domain/measuring/quantity.ts';
import { DEFAULT_POINTING_PX } from '../../../../domain/measuring/reading.ts';
import { setPointing } from '../../../bench/deeds/points.ts';
import { askedPoints } from '../../../bench/steps.ts';
import { NumberField } from '../NumberField.tsx';
import { useBench, useMeasured, useSettledDocument, useWork } from '../useWork.ts';
import { pointingInWords } from './pointingInWords.ts';

/** How exactly the points are placed. */
export function PointingField(): ReactElement {
  const { bench } = useWork();
  const entered = useBench((state) => state.edited.document.pointingPx) ?? DEFAULT_POINTING_PX;
  const asks = useBench((state) => state.guide.asks);
  const { pointing } = useMeasured(useSettledDocument());
  return (
    <NumberField
      label="Points placed to ± px"
      hint={pointingInWords(askedPoints(asks), pointing, entered)}
      value={COVERAGE_FACTOR * entered}
      figures={2}
      most={200}
      aboveZero
      onChange={(expanded) => setPointing(bench, expanded / COVERAGE_FACTOR)}
    />
  );
}
