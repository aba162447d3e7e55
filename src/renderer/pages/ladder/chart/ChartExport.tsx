import { type ReactElement, type RefObject, useState } from 'react';
import { SAMPLE_NOTE } from '../../../../words/sample.ts';
import { csvBlob } from '../../../leaving/csv.ts';
import { saveFile } from '../../../leaving/save.ts';
import { pngOf, standaloneSvg, svgBlob } from '../../../leaving/svg.ts';
import { Button } from '../../../parts/Button.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import style from './Chart.module.css';
import type { Subject } from './ladderCsv.ts';

/** Dots of a saved PNG for each pixel on screen: enough for print at the width of a page. */
const DOTS_PER_PX = 3;

interface Props {
  /** What holds the drawing; null where there is none. */
  canvas: RefObject<HTMLElement | null> | null;
  subject: Subject;
  /** What is drawn. */
  title: string;
  legend: string;
  /** Of the file with the figures, after the animal. */
  figuresName: string;
  rows: () => (readonly (string | number | null)[])[];
}

/** Saves the drawing as it stands, with the words that it needs away from this page, or the figures behind it. */
export function ChartExport({ canvas, subject, title, legend, figuresName, rows }: Props): ReactElement {
  const [error, setError] = useState<unknown>(null);
  const called = subject.name ?? subject.code;
  const whose = [called, subject.name ? subject.code : '', subject.taxon].filter(Boolean).join(', ');
  const drawing = () =>
    standaloneSvg([...(canvas?.current?.querySelectorAll('svg') ?? [])], {
      title: `${title}: ${whose}`,
      below: [legend, subject.sample ? SAMPLE_NOTE : ''].filter(Boolean),
    });
  const png = () => {
    setError(null);
    pngOf(drawing(), DOTS_PER_PX).then((blob) => saveFile(`${called}, ${title}.png`, blob), setError);
  };
  return (
    <div className={style['exports']}>
      <span>Save</span>
      {canvas && (
        <>
          <Button kind="quiet" onClick={() => saveFile(`${called}, ${title}.svg`, svgBlob(drawing()))}>
            Drawing (SVG)
          </Button>
          <Button kind="quiet" onClick={png}>
            Picture (PNG)
          </Button>
        </>
      )}
      <Button kind="quiet" onClick={() => saveFile(`${called}, ${figuresName}.csv`, csvBlob(rows()))}>
        Figures (CSV)
      </Button>
      {error !== null && <FailureNotice error={error} />}
    </div>
  );
}
