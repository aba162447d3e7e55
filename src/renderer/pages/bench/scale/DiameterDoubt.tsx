import { type ReactElement, useMemo } from 'react';
import type { CoinScale } from '../../../../domain/measuring/calibration.ts';
import { doubtAboutCoin } from '../../../../domain/measuring/coinDistance.ts';
import { bringIntoView } from '../../../parts/bringIntoView.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { useWork } from '../useWork.ts';
import { coinDoubtInWords } from './findingWords.ts';

/** Asks, beside the diameter of a coin, whether it can be: a slipped digit or another unit shows in where the camera would have been. */
export function DiameterDoubt({ marks }: { marks: CoinScale }): ReactElement | null {
  const { photo } = useWork().sheet;
  const doubt = useMemo(() => doubtAboutCoin(marks, photo), [marks, photo]);
  if (doubt === null) return null;
  return (
    <div ref={bringIntoView}>
      <Notice tone="warning">{coinDoubtInWords(marks.diameterMm, doubt)}</Notice>
    </div>
  );
}
