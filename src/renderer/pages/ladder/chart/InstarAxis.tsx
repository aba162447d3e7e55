import type { ReactElement } from 'react';
import type { Rung } from '../../../../domain/growth/rung.ts';
import { instarMark } from '../../../../words/instars.ts';
import { rungMark } from '../../../../words/ladder.ts';
import style from './Chart.module.css';
import { FRAME } from './scales.ts';

interface Props {
  rungs: readonly Rung[];
  /** A place after the last rung, for what is foretold. */
  next: boolean;
  x: (step: number) => number;
  widthPx: number;
}

/** The row of instars below a chart; those without a molt on record keep their place. */
export function InstarAxis({ rungs, next, x, widthPx }: Props): ReactElement {
  const lastStep = rungs.at(-1)?.step ?? 0;
  const bottomPx = FRAME.heightPx - FRAME.bottomPx;
  const ticks = [...ticksOf(rungs, lastStep), ...(next ? [{ step: lastStep + 1, words: 'next' }] : [])];
  return (
    <g>
      {ticks.map(({ step, words }) => (
        <text key={step} x={x(step)} y={bottomPx + 20} textAnchor="middle" className={style['tick']}>
          {words}
        </text>
      ))}
      <text x={(FRAME.leftPx + widthPx - FRAME.rightPx) / 2} y={FRAME.heightPx - 6} textAnchor="middle" className={style['axis']}>
        instar that ended, as its skin shows it
      </text>
    </g>
  );
}

function ticksOf(rungs: readonly Rung[], lastStep: number): { step: number; words: string }[] {
  return Array.from({ length: lastStep + 1 }, (_, step) => {
    const rung = rungs.find((candidate) => candidate.step === step);
    if (rung) return { step, words: rungMark(rung) };
    const after = rungs.find((candidate) => candidate.step > step);
    return {
      step,
      words: after?.instar && after.stepKnown ? instarMark({ ...after.instar, number: after.instar.number - (after.step - step) }) : '?',
    };
  });
}
