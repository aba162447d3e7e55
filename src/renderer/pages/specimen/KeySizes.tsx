import type { ReactElement } from 'react';
import type { SkinSizes } from '../../../domain/growth/skinSizes.ts';
import type { Estimate } from '../../../domain/measuring/quantity.ts';
import { EstimateText } from '../../parts/EstimateText.tsx';
import style from './KeySizes.module.css';

/** The sizes of one skin that a keeper looks for first; says what is missing when there are none. */
export function KeySizes({ sizes, hasPhotos }: { sizes: SkinSizes | null; hasPhotos: boolean }): ReactElement {
  const rows = [
    ['Carapace length', sizes?.carapaceLengthMm],
    ['Carapace width', sizes?.carapaceWidthMm],
    ['Leg I', sizes?.legFirstMm],
    ['Leg IV', sizes?.legFourthMm],
  ].filter((row): row is [string, Estimate] => row[1] !== null && row[1] !== undefined);
  if (rows.length === 0) {
    return (
      <p className={style['none']}>
        {hasPhotos ? 'Not measured yet: open a photo on the Bench.' : 'Not measured yet: it needs a photo first.'}
      </p>
    );
  }
  return (
    <dl className={style['sizes']}>
      {rows.map(([label, estimate]) => (
        <div key={label} className={style['row']}>
          <dt>{label}</dt>
          <dd>
            <EstimateText estimate={estimate} />
          </dd>
        </div>
      ))}
    </dl>
  );
}
