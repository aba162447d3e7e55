import type { ReactElement } from 'react';
import { shownOn } from '../../../../domain/photo/photo.ts';
import { bringIntoView } from '../../../parts/bringIntoView.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { useMeasured, useSettledDocument, useWork } from '../useWork.ts';
import { heightDoubtInWords } from './heightDoubt.ts';

/** Asks, beside a height that was typed, whether it can be; it counts all the same. */
export function HeightDoubt({ heightMm }: { heightMm: number }): ReactElement | null {
  const { photo } = useWork().sheet;
  const { measurement } = useMeasured(useSettledDocument());
  const doubt = heightDoubtInWords(heightMm, measurement, shownOn(photo));
  if (doubt === null) return null;
  return (
    <div ref={bringIntoView} role="status">
      <Notice tone="warning">{doubt}</Notice>
    </div>
  );
}
