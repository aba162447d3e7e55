import type { ReactElement } from 'react';
import { DEFAULT_POINTING_PX } from '../../../../domain/measuring/reading.ts';
import { setPointing } from '../../../bench/deeds/points.ts';
import { landmarksOf } from '../../../bench/document.ts';
import { askedPoints } from '../../../bench/steps.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { PlusMinusField } from '../PlusMinusField.tsx';
import { useBench, useMeasured, useSettledDocument, useWork } from '../useWork.ts';
import { coarselyAimedInWords, pointingInWords } from './pointingInWords.ts';

/** How exactly the points are placed. */
export function PointingField(): ReactElement {
  const { bench } = useWork();
  const entered = useBench((state) => state.edited.document.pointingPx) ?? DEFAULT_POINTING_PX;
  const asks = useBench((state) => state.guide.asks);
  const document = useSettledDocument();
  const { pointing } = useMeasured(document);
  const coarsely = coarselyAimedInWords(landmarksOf(document));
  return (
    <>
      <PlusMinusField
        label="Points placed to ± px"
        hint={pointingInWords(askedPoints(asks), pointing, entered)}
        standardUncertainty={entered}
        most={200}
        aboveZero
        onChange={(pointingPx) => setPointing(bench, pointingPx)}
      />
      {coarsely !== null && <Notice>{coarsely}</Notice>}
    </>
  );
}
