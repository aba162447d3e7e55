import type { ReactElement } from 'react';
import type { GrowthReport } from '../../../../domain/growth/growthReport.ts';
import type { Rung } from '../../../../domain/growth/rung.ts';
import { findingInWords, maturityInWords } from '../../../../words/growth.ts';
import { moltNames } from '../../../../words/ladder.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { AcceptedGap } from './AcceptedGap.tsx';
import { MissedMolt } from './MissedMolt.tsx';
import style from './Questions.module.css';
import { useGaps } from './useGaps.ts';

/** What the row of skins leaves open: oddities to look at, molts that may be missing, a male that may have grown up. */
export function Questions({
  specimenId,
  rungs,
  growth,
}: {
  specimenId: string;
  rungs: readonly Rung[];
  growth: GrowthReport;
}): ReactElement | null {
  const gaps = useGaps(specimenId);
  const nameOf = moltNames(rungs);
  const suggested = growth.missed.filter(({ verdict }) => verdict !== 'none');
  if (suggested.length === 0 && growth.findings.length === 0 && !growth.maturity && !gaps.accepted) return null;
  return (
    <section className={style['questions']} aria-label="Questions about this row">
      {gaps.accepted && <AcceptedGap accepted={gaps.accepted} gaps={gaps} />}
      {suggested.map((check) => (
        <MissedMolt
          key={check.laterMoltId}
          check={check}
          nameOf={nameOf}
          isNumbered={rungs.some(({ instar }) => instar !== null)}
          gaps={gaps}
        />
      ))}
      {growth.findings.length > 0 && (
        <ul className={style['oddities']}>
          {growth.findings.map((finding) => {
            const words = findingInWords(finding, nameOf);
            return (
              <li key={JSON.stringify(finding)}>
                <strong>{words.odd}</strong> {words.ask}
              </li>
            );
          })}
        </ul>
      )}
      {growth.maturity && <Notice title="A question about his age">{maturityInWords(growth.maturity)}</Notice>}
    </section>
  );
}
