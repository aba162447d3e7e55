import type { ReactElement } from 'react';
import { COVERAGE_FACTOR } from '../../../../domain/measuring/quantity.ts';
import { DEFAULT_POINTING_PX } from '../../../../domain/measuring/reading.ts';
import { setPointing } from '../../../bench/deeds/points.ts';
import { NumberField } from '../NumberField.tsx';
import { useBench, useMeasured, useSettledDocument, useWork } from '../useWork.ts';

/** How exactly the points are placed. */
export function PointingField(): ReactElement {
  const { bench } = useWork();
  const entered = useBench((state) => state.edited.document.pointingPx) ?? DEFAULT_POINTING_PX;
  const { pointing } = useMeasured(useSettledDocument());
  return (
    <NumberField
      label="Points placed to ± px"
      hint={
        pointing !== undefined
          ? `Your repeated passes agree to ± ${(COVERAGE_FACTOR * pointing.overall.pointingPx).toFixed(1)} px, and each point that was repeated often enough has its own figure; that is used instead.`
          : 'k = 2, about 95 %. A second pass over the photo would measure it.'
      }
      value={COVERAGE_FACTOR * entered}
      figures={2}
      most={200}
      aboveZero
      onChange={(expanded) => setPointing(bench, expanded / COVERAGE_FACTOR)}
    />
  );
}
