import type { ReactElement } from 'react';
import type { AbdomenDistance } from '../../../../domain/sexing/abdomenDistances.ts';
import { distanceName } from '../../../../words/quantities.ts';
import { ButtonLink } from '../../../parts/ButtonLink.tsx';
import { EstimateText } from '../../../parts/EstimateText.tsx';
import style from './MeasuredLengths.module.css';
import type { StepProps } from './StepProps.ts';

interface Props extends Pick<StepProps, 'sheet' | 'table'> {
  /** Which distances belong to the question above. */
  only: readonly AbdomenDistance['distance'][];
}

/** What was measured on the opened abdomen, beside the answer it belongs to, and the way to the Bench and back. */
export function MeasuredLengths({ sheet, table, only }: Props): ReactElement | null {
  const distances = sheet.distances.filter(({ distance }) => only.includes(distance));
  const inside = (photo: { readonly view: string } | undefined) => photo?.view === 'abdomen-inside';
  const photo = inside(table.shown) ? table.shown : table.skinPhotos.find(inside);
  if (!photo && distances.length === 0) return null;
  return (
    <div className={style['lengths']}>
      {distances.length > 0 && (
        <dl>
          {distances.map(({ distance, called, estimate }) => (
            <div key={`${distance} ${called}`}>
              <dt>{distanceName(distance, called)}</dt>
              <dd className="figures">
                <EstimateText estimate={estimate} />
              </dd>
            </div>
          ))}
        </dl>
      )}
      {photo && (
        <ButtonLink kind="quiet" icon="measure" to={`/bench/${photo.id}`}>
          Measure on the Bench
        </ButtonLink>
      )}
    </div>
  );
}
