import type { ReactElement } from 'react';
import type { Quantity } from '../../../../domain/measuring/quantity.ts';
import { isUsable } from '../../../../domain/measuring/usable.ts';
import { counted } from '../../../../words/counts.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { budgetAdvice } from './budgetAdvice.ts';

/** That values are known too badly to be told, and what would make them known. */
export function Unusable({ quantities }: { quantities: readonly Quantity[] }): ReactElement | null {
  const unusable = quantities.filter(({ estimate }) => !isUsable(estimate));
  const [first] = unusable;
  if (first === undefined) return null;
  return (
    <Notice tone="warning" title={`${counted(unusable.length, 'value')} known too badly to be used`}>
      The uncertainty is more than half of the value. {budgetAdvice(first)}
    </Notice>
  );
}
