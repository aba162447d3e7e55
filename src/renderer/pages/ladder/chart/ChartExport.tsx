import { type ReactElement, type RefObject, useState } from 'react';
import type { LiveSize } from '../../../../domain/growth/liveSizes.ts';
import type { Ladder } from '../../../../domain/growth/rung.ts';
import { csvBlob } from '../../../leaving/csv.ts';
import { saveFile } from '../../../leaving/save.ts';
import { pngOf, standaloneSvg, svgBlob } from '../../../leaving/svg.ts';
import { Button } from '../../../parts/Button.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import style from './Chart.module.css';
import { ladderRows } from './ladderCsv.ts';
import type { Measure } from './measures.ts';

/** Dots of a saved PNG for each pixel on screen: enough for print at the width of a page. */
const DOTS_PER_PX = 3;

interface Props {
  canvas: RefObject<HTMLElement | null>;
  ladder: Ladder;
  live: readonly LiveSize[];
  measures: readonly Measure[];
  /** Of the files, without their endings. */
  name: string;
  /** Whether there is a drawing. */
  drawn: boolean;
}

/** Saves the drawing as it stands, or the figures behind it. */
export function ChartExport({ canvas, ladder, live, measures, name, drawn }: Props): ReactElement {
  const [error, setError] = useState<unknown>(null);
  const drawing = () => standaloneSvg([...(canvas.current?.querySelectorAll('svg') ?? [])]);
  const png = () => {
    setError(null);
    pngOf(drawing(), DOTS_PER_PX).then((blob) => saveFile(`${name}.png`, blob), setError);
  };
  return (
    <div className={style['exports']}>
      <span>Save</span>
      {drawn && (
        <>
          <Button kind="quiet" onClick={() => saveFile(`${name}.svg`, svgBlob(drawing()))}>
            Drawing (SVG)
          </Button>
          <Button kind="quiet" onClick={png}>
            Picture (PNG)
          </Button>
        </>
      )}
      <Button kind="quiet" onClick={() => saveFile(`${name}.csv`, csvBlob(ladderRows(ladder, live, measures)))}>
        Figures (CSV)
      </Button>
      {error !== null && <FailureNotice error={error} />}
    </div>
  );
}
