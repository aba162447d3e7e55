import type { ReactElement } from 'react';
import { addressOf } from '../../../client/ask.ts';
import { buttonClass } from '../../../parts/Button.tsx';
import style from '../panel.module.css';

/** Our own card: the object that is found without a click and tells its plane best. */
export function PrintOurCard(): ReactElement {
  const address = addressOf('GET /api/scale-card.pdf', {});
  return (
    <details>
      <summary className={style['summary']}>Print a card that is found by itself</summary>
      <p className={style['soft']}>
        Print it at actual size (100 %, no fitting to the page), cut it in the middle, glue it on something flat, and read its two check
        bars with a caliper once. Half covered it is still found.
      </p>
      <div className={style['row']}>
        <a className={buttonClass('plain')} href={`${address}?sheet=a4`} download="exuviary-scale-card-a4.pdf">
          For A4 paper
        </a>
        <a className={buttonClass('plain')} href={`${address}?sheet=letter`} download="exuviary-scale-card-letter.pdf">
          For Letter paper
        </a>
      </div>
    </details>
  );
}
