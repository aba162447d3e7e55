import type { ReactElement } from 'react';
import type { Rung } from '../../../../domain/growth/rung.ts';
import { instarMark } from '../../../../words/instars.ts';
import { rungMark } from '../../../../words/ladder.ts';
import style from './Chart.module.css';
import { FRAME } from './scales.ts';
import { type Tick, thinned } from './thinned.ts';

interface Props {
  rungs: readonly Rung[];
  /** What stands below the place after the last rung, on one line or two; null where there is none. */
  after: readonly string[] | null;
  x: (step: number) => number;
  widthPx: number;
}

/** The row of instars below a chart; those without a molt on record keep their place. */
export function InstarAxis({ rungs, after, x, widthPx }: Props): ReactElement {
  const lastStep = rungs.at(-1)?.step ?? 0;
  const bottomPx = FRAME.heightPx - FRAME.bottomPx;
  const name = after?.at(-1);
  const number = after && after.length > 1 ? (after[0] ?? '') : '';
  const ticks = thinned([
    ...ticksOf(rungs, lastStep).map(({ step, words }) => ({ xPx: x(step), words })),
    ...(after ? [{ xPx: x(lastStep + 1), words: number }] : []),
  ]);
  return (
    <g>
      {ticks.map(({ xPx, words }: Tick) => (
        <text key={xPx} x={xPx} y={bottomPx + 20} textAnchor="middle" className={style['tick']}>
          {words}
        </text>
      ))}
      {name && (
        <text
          x={Math.min(x(lastStep + 1) + LIVING_HALF_PX, widthPx - 2)}
          y={FRAME.heightPx - 6}
          textAnchor="end"
          className={style['livingTick']}
        >
          {name}
        </text>
      )}
      <text
        x={after ? FRAME.leftPx : (FRAME.leftPx + widthPx - FRAME.rightPx) / 2}
        y={FRAME.heightPx - 6}
        textAnchor={after ? 'start' : 'middle'}
        className={style['axis']}
      >
        instar that ended, as its skin shows it
      </text>
    </g>
  );
}

/** Half of the room that "living now" takes, px. */
const LIVING_HALF_PX = 32;

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
