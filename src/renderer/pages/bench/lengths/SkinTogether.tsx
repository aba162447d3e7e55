import type { ReactElement } from 'react';
import { useAnswer } from '../../../client/queries.ts';
import { EstimateText } from '../../../parts/EstimateText.tsx';
import style from '../panel.module.css';
import { useEarlierHidden } from '../passes/useEarlierHidden.ts';
import { useWork } from '../useWork.ts';

/**
 * The one size that the other rooms give for this skin: from all its photos and passes, as far as they are saved. Not while earlier
 * passes are hidden, for their sizes are in it.
 */
export function SkinTogether(): ReactElement | null {
  const { subject } = useWork().sheet.photo;
  const exuviaId = subject.kind === 'skin' ? subject.exuviaId : '';
  const sizes = useAnswer('GET /api/exuviae/{exuviaId}/sizes', { path: { exuviaId } }, { enabled: exuviaId !== '' });
  const isBlind = useEarlierHidden().length > 0;
  const carapace = sizes.data?.carapaceLengthMm;
  if (!carapace || isBlind) return null;
  return (
    <p className={style['soft']}>
      Carapace length of the skin, all saved photos and passes together: <EstimateText estimate={carapace} />. This is what the other rooms
      show.
    </p>
  );
}
