import { type ReactElement, useMemo } from 'react';
import { calibrate } from '../../../../domain/measuring/calibrate.ts';
import type { ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import { comparisonOf, contradictionOf } from '../../../../domain/measuring/contradiction.ts';
import { wordsFor } from '../../../../words/failures.ts';
import { wantRefined } from '../../../bench/deeds/finding.ts';
import { removeCheck, swapScales } from '../../../bench/deeds/scale.ts';
import { Button } from '../../../parts/Button.tsx';
import { focusPhoto } from '../focusPhoto.ts';
import style from '../panel.module.css';
import { useBench, useWork } from '../useWork.ts';
import { comparisonInWords, namesApart } from './findingWords.ts';

interface Props {
  marks: ScaleMarks;
  check: ScaleMarks;
}

/** The object that checks the scale: whether both agree, and what can be done with it. */
export function SecondObject({ marks, check }: Props): ReactElement {
  const { bench } = useWork();
  const isSought = useBench((state) => state.refining?.kind === 'wanted');
  const words = useVerdict(marks, check);
  const thenPhoto = (act: () => void) => {
    act();
    focusPhoto();
  };
  return (
    <section aria-label="Second object">
      <h3 className={style['heading']}>Checked by a second object: {namesApart(marks, check)[1]}</h3>
      {words !== null && <p role="status">{words}</p>}
      <p className={style['soft']}>Drawn yellow. To move its marks or change its size, measure by it for a moment.</p>
      <div className={style['row']}>
        <Button onClick={() => thenPhoto(() => swapScales(bench))}>Measure by it instead</Button>
        {check.kind === 'rectangle' && (
          <Button disabled={isSought} onClick={() => wantRefined(bench, { kind: 'rectangle', marks: check, cornerRadiusMm: 0 }, 'check')}>
            Fit it to its edges
          </Button>
        )}
        <Button kind="quiet" icon="remove" onClick={() => thenPhoto(() => removeCheck(bench))}>
          Take the check away
        </Button>
      </div>
    </section>
  );
}

/** Null where they contradict each other, which is said as a warning of its own. */
function useVerdict(marks: ScaleMarks, check: ScaleMarks): string | null {
  const { photo } = useWork().sheet;
  return useMemo(() => {
    const [first, second] = [calibrate(marks, photo), calibrate(check, photo)];
    if (!first.ok) return null;
    if (!second.ok) return `${wordsFor(second.failure).happened} It checks nothing, and is not saved, until its marks are put right.`;
    const one = { marks, calibration: first.value };
    const other = { marks: check, calibration: second.value };
    if (contradictionOf(one, other) !== null) return null;
    const comparison = comparisonOf(one, other);
    return comparison === null ? 'By the present scale it cannot be seen how long this object is.' : comparisonInWords(comparison);
  }, [marks, check, photo]);
}
