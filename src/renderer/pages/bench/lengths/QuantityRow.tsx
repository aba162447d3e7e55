import type { ReactElement } from 'react';
import type { Quantity } from '../../../../domain/measuring/quantity.ts';
import { isUsable } from '../../../../domain/measuring/usable.ts';
import { unusableInWords } from '../../../../words/estimates.ts';
import { quantityName } from '../../../../words/quantities.ts';
import { EstimateText } from '../../../parts/EstimateText.tsx';
import { Budget } from './Budget.tsx';
import { BudgetInDetail } from './BudgetInDetail.tsx';
import style from './LengthsPanel.module.css';

interface Props {
  quantity: Quantity;
  /** What the keeper calls the distance of their own. */
  own: string | null;
  isOpen: boolean;
  onToggle: () => void;
  /** Into the list of remarks below the table. */
  flagNumbers: readonly number[];
}

/** One length; "Why?" beside its number opens the uncertainty budget. */
export function QuantityRow({ quantity, own, isOpen, onToggle, flagNumbers }: Props): ReactElement {
  return (
    <>
      <tr data-quantity={quantity.name}>
        <th scope="row">
          {quantityName(quantity.name, own)}
          {flagNumbers.length > 0 && (
            <sup>
              <span className="spoken-only">remarks </span>
              {flagNumbers.toSorted((one, other) => one - other).join(', ')}
            </sup>
          )}
        </th>
        <td>
          <button type="button" className={style['number']} aria-expanded={isOpen} onClick={onToggle}>
            {isUsable(quantity.estimate) ? (
              <EstimateText estimate={quantity.estimate} unit={quantity.unit} />
            ) : (
              <span>{unusableInWords(quantity.unit)}</span>
            )}
            <span className={style['why']}>Why?</span>
          </button>
        </td>
      </tr>
      {isOpen && (
        <tr>
          <td colSpan={2}>
            <Budget quantity={quantity} />
            <BudgetInDetail quantity={quantity} />
          </td>
        </tr>
      )}
    </>
  );
}
