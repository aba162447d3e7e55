import type { ReactElement } from 'react';
import { FEWEST_RUNGS_FOR_FIT, fitGrowth } from '../../../domain/growth/growthFit.ts';
import { measuredSteps } from '../../../domain/growth/measuredStep.ts';
import type { Ladder } from '../../../domain/growth/rung.ts';
import { fitWeighted } from '../../../domain/growth/trend/weightedFit.ts';
import { counted } from '../../../words/counts.ts';
import { fitInWords, tellsGrowth } from '../../../words/ladder.ts';
import { GROWN_WORDS } from '../../../words/quantities.ts';
import type { Measure } from './chart/measures.ts';
import style from './LadderPage.module.css';

/** How fast the animal grew over the skins on record, in the measure that is shown, or what is missing to tell. */
export function FitSummary({
  ladder,
  measure,
  caution,
}: {
  ladder: Ladder;
  measure: Measure;
  /** What is open about the row and changes its ratio. */
  caution: string | null;
}): ReactElement {
  const sizes = measuredSteps(ladder.rungs, measure);
  const fit = fitWeighted(sizes);
  const classical = fitGrowth(sizes);
  const grown = GROWN_WORDS[measure];
  if (fit && !tellsGrowth(fit)) {
    return (
      <p className={style['small']}>
        These {fit.rungs} skins tell no common growth ratio: their sizes follow no one ratio closely enough. Is one of them of another
        animal, another instar, or measured by a wrong scale? The ratios of single molts stand in the table.
      </p>
    );
  }
  if (fit && classical) {
    const words = fitInWords(fit, classical);
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
        {caution && <p className={style['small']}>{caution}</p>}
        <details className={style['how']}>
          <summary>How this is fitted</summary>
          <p className={style['small']}>{words.explanation}</p>
        </details>
      </div>
    );
  }
  return (
    <p className={style['small']}>
      A growth ratio with its interval is fitted from {FEWEST_RUNGS_FOR_FIT} measured skins up; {grown.what} is measured on{' '}
      {counted(sizes.length, 'skin')} so far.
    </p>
  );
}
