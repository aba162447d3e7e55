import type { ReactElement } from 'react';
import { FEWEST_RUNGS_FOR_FIT } from '../../../domain/growth/growthFit.ts';
import type { Ladder } from '../../../domain/growth/rung.ts';
import { counted } from '../../../words/counts.ts';
import { fitInWords } from '../../../words/ladder.ts';
import style from './LadderPage.module.css';

/** How fast the animal grows, in words, or what is missing to tell. */
export function FitSummary({ ladder }: { ladder: Ladder }): ReactElement {
  if (ladder.fit) {
    const words = fitInWords(ladder.fit);
    return (
      <div className={style['fit']}>
        <p className={style['fitSentence']}>
          Each molt makes the carapace <strong className="figures">{words.ratio}</strong> times as long{' '}
          <span className={style['interval']}>
            (95 % interval <span className="figures">{words.interval}</span>)
          </span>
          .
        </p>
        <p className={style['small']}>{words.explanation}</p>
      </div>
    );
  }
  const measured = ladder.rungs.filter(({ carapaceLengthMm, stepKnown }) => carapaceLengthMm && stepKnown).length;
  return (
    <p className={style['small']}>
      A growth ratio with its interval is fitted from {FEWEST_RUNGS_FOR_FIT} measured skins up; there {measured === 1 ? 'is' : 'are'}{' '}
      {counted(measured, 'measured skin')} so far.
    </p>
  );
}
