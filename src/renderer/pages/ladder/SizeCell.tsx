import type { ReactElement } from 'react';
import type { Estimate } from '../../../domain/measuring/quantity.ts';
import { isUsable } from '../../../domain/measuring/usable.ts';
import { unusableInWords } from '../../../words/estimates.ts';
import { DoubtMark } from '../../parts/DoubtMark.tsx';
import { EstimateText } from '../../parts/EstimateText.tsx';
import style from './RungTable.module.css';

/** One size with its U, or words for why there is none. */
export function SizeCell({
  estimate,
  unit,
  instead = 'not measured',
  isDoubted = false,
}: {
  estimate: Estimate | null;
  unit: 'mm' | '1';
  instead?: string;
  isDoubted?: boolean;
}): ReactElement {
  if (!estimate) return <td className={style['small']}>{instead}</td>;
  if (!isUsable(estimate)) return <td className={style['small']}>{unusableInWords(unit)}</td>;
  return (
    <td>
      <EstimateText estimate={estimate} unit={unit} />
      {isDoubted && <DoubtMark />}
    </td>
  );
}
