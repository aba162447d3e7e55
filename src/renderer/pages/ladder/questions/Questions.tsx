import type { ReactElement } from 'react';
import type { GrowthFinding } from '../../../../domain/growth/findings.ts';
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
  const doubted = new Set(growth.findings.flatMap(doubtedSkins));
  const suggested = growth.missed.filter(
    ({ verdict, earlierMoltId, laterMoltId }) => verdict !== 'none' && !doubted.has(earlierMoltId) && !doubted.has(laterMoltId),
  );
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

/** No molt makes a carapace smaller: before scale and owner of such skins are settled, nothing is suggested from them. */
function doubtedSkins(finding: GrowthFinding): string[] {
  const isSmaller = finding.kind === 'shrunk' || (finding.kind === 'absurd-ratio' && finding.perInstar < 1);
  return isSmaller ? [finding.earlierMoltId, finding.laterMoltId] : [];
}
