import type { ReactElement } from 'react';
import type { SpecimenSummary } from '../../../api/contract/specimens.ts';
import { countBySex, isKept, tradeCount } from '../../../domain/specimen/counts.ts';
import { counted } from '../../../words/counts.ts';
import style from './TradeCount.module.css';

/** The totals of the animals kept, in the trade's males.females.unsexed form and in words. */
export function TradeCount({ summaries }: { summaries: readonly SpecimenSummary[] }): ReactElement {
  const kept = summaries.filter((summary) => isKept(summary.specimen.status));
  const counts = countBySex(kept.map((summary) => summary.sex));
  return (
    <>
      <span className={style['count']} title="males.females.unsexed" aria-hidden="true">
        {tradeCount(counts)}
      </span>
      {`${counted(kept.length, 'animal')} kept: ${counted(counts.males, 'male')}, ${counted(counts.females, 'female')}, ${counts.unsexed} unsexed or only leaning`}
    </>
  );
}
