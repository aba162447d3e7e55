import type { ReactElement } from 'react';
import { useLitMolt } from '../lit.tsx';
import style from './Chart.module.css';
import type { Mark } from './mark.ts';
import { PointMark } from './PointMark.tsx';
import { FRAME } from './scales.ts';

/** Room that a note takes at most, px. */
const NOTE_PX = 220;

/** The figures over the drawing of axes and lines; the only part of a chart that is spoken and reached by keys. */
export function PointLayer({ marks, widthPx, label }: { marks: readonly Mark[]; widthPx: number; label: string }): ReactElement {
  const litId = useLitMolt();
  const lit = marks.find((mark) => mark.litId === litId);
  return (
    <>
      <svg width={widthPx} height={FRAME.heightPx} className={style['points']} aria-label={`${label}, oldest first`}>
        {marks.map((mark) => (
          <PointMark key={mark.litId} mark={mark} />
        ))}
      </svg>
      {lit && <Note mark={lit} toTheLeft={lit.xPx > widthPx - NOTE_PX} />}
    </>
  );
}

/** What the lit figure says, also when it was lit in the table or the gallery. Its link carries the same words for screen readers. */
function Note({ mark, toTheLeft }: { mark: Mark; toTheLeft: boolean }): ReactElement {
  return (
    <div className={`${style['note']} ${toTheLeft ? style['toTheLeft'] : ''}`} style={{ left: mark.xPx, top: mark.yPx }} aria-hidden="true">
      <strong>{mark.name}</strong>
      {mark.lines.map((line, index) => (
        <span key={line} className={index === 0 ? 'figures' : style['noteMore']}>
          {line}
        </span>
      ))}
    </div>
  );
}
