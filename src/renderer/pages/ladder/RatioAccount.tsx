import { type ReactElement, useId } from 'react';
import type { GrowthReport } from '../../../domain/growth/growthReport.ts';
import type { Rung } from '../../../domain/growth/rung.ts';
import { consistencyInWords, curvatureInWords, ratiosInWords } from '../../../words/growthRatios.ts';
import { moltNames } from '../../../words/ladder.ts';
import page from './LadderPage.module.css';
import style from './RatioAccount.module.css';

/** Each way to say how fast the carapace grows, beside the others; whether that changes; whether readings of one skin agree. */
export function RatioAccount({ rungs, growth }: { rungs: readonly Rung[]; growth: GrowthReport }): ReactElement | null {
  const caption = useId();
  if (growth.ratios.stepwise.length === 0) return null;
  const nameOf = moltNames(rungs);
  return (
    <details className={style['account']}>
      <summary id={caption}>Growth of the carapace, each figure by its name</summary>
      <div className={style['scroller']}>
        <table className={style['table']} aria-labelledby={caption}>
          <thead>
            <tr>
              <th scope="col">Figure</th>
              <th scope="col">Later over earlier</th>
              <th scope="col">What it rests on</th>
            </tr>
          </thead>
          <tbody>
            {ratiosInWords(growth).map(({ name, ratio, means }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td className="figures">{ratio}</td>
                <td className={page['small']}>{means}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className={page['small']}>{curvatureInWords(growth)}</p>
      {growth.consistency.map((consistency) => (
        <p key={consistency.moltId} className={page['small']}>
          {consistencyInWords(consistency, nameOf)}
        </p>
      ))}
    </details>
  );
}
