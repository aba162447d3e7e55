import type { ReactElement } from 'react';
import type { ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import { sameValue } from '../../../bench/change.ts';
import style from '../panel.module.css';
import { useBench } from '../useWork.ts';
import { evidenceInWords, ticksSpanInWords } from './findingWords.ts';

/** On what the marks rest that were found in the picture; of ticks also after they were stored. */
export function FoundFacts({ marks }: { marks: ScaleMarks }): ReactElement | null {
  const found = useBench((state) => state.found);
  const words = found !== null && sameValue(geometryOf(found.marks), geometryOf(marks)) ? evidenceInWords(found) : storedInWords(marks);
  const span = marks.kind === 'rule-ticks' ? ticksSpanInWords(marks) : '';
  return words === null ? null : (
    <p className={style['soft']}>
      {words} {span}
    </p>
  );
}

/** What lies in the picture; the sizes may have been corrected since. */
function geometryOf(marks: ScaleMarks): unknown {
  switch (marks.kind) {
    case 'two-points':
      return marks.ends;
    case 'rectangle':
      return marks.corners;
    case 'coin':
      return marks.rim;
    case 'points':
      return marks.points;
    case 'rule-ticks':
      return marks.ticks;
  }
}

function storedInWords(marks: ScaleMarks): string | null {
  if (marks.kind === 'points') return `${marks.points.length} points of the card, found in the picture.`;
  if (marks.kind !== 'rule-ticks') return null;
  const numbers = marks.ticks.map(({ number }) => number);
  const missing = Math.max(...numbers) - Math.min(...numbers) + 1 - marks.ticks.length;
  const left = missing > 0 ? `, ${missing} between them left out` : '';
  return `${marks.ticks.length} ticks${left}.`;
}
