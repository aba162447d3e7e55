import type { ReactElement } from 'react';
import type { SizeName, SkinSizes } from '../../../domain/growth/skinSizes.ts';
import { SIZE_LABELS } from '../../../words/quantities.ts';
import { DoubtMark } from '../../parts/DoubtMark.tsx';
import { EstimateText } from '../../parts/EstimateText.tsx';
import style from './KeySizes.module.css';

const SIZES = ['carapaceLengthMm', 'carapaceWidthMm', 'legFirstMm', 'legFourthMm'] as const satisfies readonly SizeName[];

/** The sizes of one skin that a keeper looks for first; says what is missing when there are none. */
export function KeySizes({ sizes, hasPhotos }: { sizes: SkinSizes; hasPhotos: boolean }): ReactElement {
  const rows = SIZES.flatMap((size) => {
    const estimate = sizes[size];
    return estimate ? [{ size, estimate }] : [];
  });
  if (rows.length === 0) {
    return (
      <p className={style['none']}>
        {hasPhotos ? 'Not measured yet: open a photo on the Bench.' : 'Not measured yet: it needs a photo first.'}
      </p>
    );
  }
  return (
    <dl className={style['sizes']}>
      {rows.map(({ size, estimate }) => (
        <div key={size} className={style['row']}>
          <dt>{SIZE_LABELS[size]}</dt>
          <dd>
            <EstimateText estimate={estimate} />
            {sizes.doubted.includes(size) && <DoubtMark />}
          </dd>
        </div>
      ))}
    </dl>
  );
}
