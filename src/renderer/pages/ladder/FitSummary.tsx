import type { ReactElement } from 'react';
import { FEWEST_RUNGS_FOR_FIT } from '../../../domain/growth/growthFit.ts';
import type { Ladder } from '../../../domain/growth/rung.ts';
import { counted } from '../../../words/counts.ts';
import { fitInWords } from '../../../words/ladder.ts';
import { GROWN_WORDS } from '../../../words/quantities.ts';
import { fitOf, type Measure, measuredSteps } from './chart/measures.ts';
import style from './LadderPage.module.css';

/** How fast the animal grew over the skins on record, in the measure that is shown, or what is missing to tell. */
export function FitSummary({ ladder, measure }: { ladder: Ladder; measure: Measure }): ReactElement {
  const fit = fitOf(ladder, measure);
  const grown = GROWN_WORDS[measure];
  if (fit) {
    const words = fitInWords(fit);
    return (
      <div className={style['fit']}>
        <p className={style['fitSentence']}>
          Over these {fit.rungs} skins, a molt made {grown.what} on average <strong className="figures">{words.ratio}</strong> times as{' '}
          {grown.how}{' '}
          <span className={style['interval']}>
            (95 % interval <span className="figures">{words.interval}</span>)
          </span>
          .
        </p>
        <p className={style['small']}>{words.explanation}</p>
      </div>
    );
  }
  const measured = measuredSteps(ladder, measure).length;
  return (
    <p className={style['small']}>
      A growth ratio with its interval is fitted from {FEWEST_RUNGS_FOR_FIT} measured skins up; {grown.what} is measured on{' '}
      {counted(measured, 'skin')} so far.
    </p>
  );
}
