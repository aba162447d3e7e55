import { type ReactElement, useMemo } from 'react';
import type { CoinScale } from '../../../../domain/measuring/calibration.ts';
import { sayingWidens, sidesToAskFor } from '../../../../domain/measuring/coinSide.ts';
import { COVERAGE_FACTOR } from '../../../../domain/measuring/quantity.ts';
import { takeUp } from '../../../bench/deeds/travel.ts';
import { Button } from '../../../parts/Button.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import style from '../panel.module.css';
import { focusTask } from '../tasks.ts';
import { useWork } from '../useWork.ts';
import type { LengthBy } from './lengthBy.ts';

interface Props {
  marks: CoinScale;
  lengthBy: LengthBy | null;
}

/** Which of two planes a coin lies in decides every length: leads to the question while it is open, and says where the answer widens them. */
export function SideOfCoin({ marks, lengthBy }: Props): ReactElement | null {
  const { bench, sheet } = useWork();
  const isWider = useMemo(() => lengthBy !== null && sayingWidens(marks, lengthBy.of), [marks, lengthBy]);
  if (isWider) {
    return (
      <Notice>
        Saying which edge of the coin was nearer has made the ± wider. Its rim is known to ± {(COVERAGE_FACTOR * marks.rimPx).toFixed(1)} px
        only and hardly tells its tilt. While nobody says an edge, the camera is taken to have looked nearly straight down, as most do; who
        says one vouches for the tilt that the outline shows, and the ± reaches from there back to nearly level. A card, or another second
        object, tells it better.
      </Notice>
    );
  }
  if (marks.nearEdgeRad !== null || sidesToAskFor(marks, sheet.photo) === null) return null;
  return (
    <Notice tone="warning" title="Which edge of the coin was nearer to the camera?">
      Nobody has said it yet, so every length stands between two answers, and its ± allows for both. If you cannot tell, mark a second
      object or take a photo from straight above.
      <div className={style['answers']}>
        <Button
          onClick={() => {
            takeUp(bench, 'scale');
            focusTask('scale');
          }}
        >
          Say which edge was nearer
        </Button>
      </div>
    </Notice>
  );
}
