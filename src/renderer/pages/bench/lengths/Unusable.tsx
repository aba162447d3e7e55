import type { ReactElement } from 'react';
import type { Quantity } from '../../../../domain/measuring/quantity.ts';
import { isUsable } from '../../../../domain/measuring/usable.ts';
import { counted } from '../../../../words/counts.ts';
import { takeUp } from '../../../bench/deeds/travel.ts';
import { Button } from '../../../parts/Button.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { useCalibration, useSettledDocument, useWork } from '../useWork.ts';
import { budgetAdvice } from './budgetAdvice.ts';

/** That values are known too badly to be told, and what would make them known. */
export function Unusable({ quantities }: { quantities: readonly Quantity[] }): ReactElement | null {
  const { bench } = useWork();
  const calibration = useCalibration(useSettledDocument());
  const unusable = quantities.filter(({ estimate }) => !isUsable(estimate));
  const [first] = unusable;
  if (first === undefined) return null;
  const isSideOpen = calibration?.ok === true && calibration.value.warnings.some(({ code }) => code === 'tilt-direction-open');
  return (
    <Notice tone="warning" title={`${counted(unusable.length, 'value')} known too badly to be used`}>
      <p>
        The uncertainty is more than half of the value.{' '}
        {isSideOpen
          ? 'Nobody has said yet which edge of the coin was nearer to the camera: say it under Known size. If you cannot tell, mark a second object or take a photo from straight above.'
          : budgetAdvice(first)}
      </p>
      {isSideOpen && <Button onClick={() => takeUp(bench, 'scale')}>Say which edge was nearer</Button>}
    </Notice>
  );
}
