import { type ReactElement, useRef } from 'react';
import type { GrowthFinding } from '../../../../domain/growth/findings.ts';
import type { GrowthReport } from '../../../../domain/growth/growthReport.ts';
import type { GapOnRecord } from '../../../../domain/growth/missed/gap.ts';
import type { Rung } from '../../../../domain/growth/rung.ts';
import type { Molt } from '../../../../domain/molting/molt.ts';
import { findingInWords, maturityInWords, type OddityWords, oddOneInWords } from '../../../../words/growth.ts';
import { moltNames, noneMissedInWords, rungName } from '../../../../words/ladder.ts';
import { Button } from '../../../parts/Button.tsx';
import { ButtonLink } from '../../../parts/ButtonLink.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { AcceptedGap } from './AcceptedGap.tsx';
import { MissedMolt } from './MissedMolt.tsx';
import style from './Questions.module.css';
import { useGaps } from './useGaps.ts';
import { useNoneMissed } from './useNoneMissed.ts';

/** What the row of skins leaves open: oddities to look at, molts that may be missing, a male that may have grown up. */
export function Questions({
  specimenId,
  rungs,
  molts,
  growth,
}: {
  specimenId: string;
  rungs: readonly Rung[];
  /** Of the rungs, as far as they are known. */
  molts: readonly Molt[];
  growth: GrowthReport;
}): ReactElement | null {
  const gaps = useGaps(specimenId);
  const section = useRef<HTMLElement>(null);
  // The button that was pressed goes; whoever pressed it stays among the questions.
  const noneMissed = useNoneMissed(molts, () => section.current?.focus());
  const settled = rungs.flatMap((rung, index) => {
    const previous = rungs[index - 1];
    return rung.noneMissedBefore && previous ? [{ rung, previous }] : [];
  });
  const nameOf = moltNames(rungs);
  const remarks = growth.findings.filter((finding) => !isGrave(finding));
  const suggested = growth.missed.filter(({ verdict }) => verdict !== 'none');
  const accepted = gaps.accepted !== null && standsOnRecord(gaps.accepted, molts) ? gaps.accepted : null;
  if (suggested.length === 0 && growth.findings.length === 0 && !growth.maturity && !accepted && settled.length === 0) return null;
  return (
    <section ref={section} tabIndex={-1} className={style['questions']} aria-label="Questions about this row">
      {accepted && <AcceptedGap accepted={accepted} gaps={gaps} />}
      {suggested.map((check) => (
        <MissedMolt
          key={check.laterMoltId}
          check={check}
          nameOf={nameOf}
          isNumbered={rungs.some(({ instar }) => instar !== null)}
          gaps={gaps}
          noneMissed={noneMissed}
        />
      ))}
      {settled.map(({ rung, previous }) => (
        <p key={rung.moltId} className={style['answer']}>
          <span>{noneMissedInWords(previous, rung)}</span>
          {noneMissed.knows(rung.moltId) && (
            <Button kind="quiet" busy={noneMissed.busy} onClick={() => noneMissed.say(rung.moltId, false)}>
              Ask again
            </Button>
          )}
        </p>
      ))}
      {growth.findings.filter(isGrave).map((finding) => (
        <Oddity
          key={JSON.stringify(finding)}
          words={findingInWords(finding, nameOf)}
          skins={skinsOf(finding, rungs)}
          inDoubt={growth.inDoubt}
        />
      ))}
      {remarks.length > 0 && (
        <ul className={style['remarks']}>
          {remarks.map((finding) => {
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

/** Something is wrong with a figure, a day or a number, whatever the animal did. */
function isGrave({ kind }: GrowthFinding): boolean {
  return kind === 'shrunk' || kind === 'absurd-ratio' || kind === 'dates-out-of-order' || kind === 'future-date';
}

function skinsOf(finding: GrowthFinding, rungs: readonly Rung[]): Rung[] {
  if (finding.kind !== 'shrunk' && finding.kind !== 'absurd-ratio') return [];
  return rungs.filter(({ moltId }) => moltId === finding.earlierMoltId || moltId === finding.laterMoltId);
}

/** A warning, with the way to the photos that its sizes were read on; where the doubt is of one of two skins, that one is named. */
function Oddity({ words, skins, inDoubt }: { words: OddityWords; skins: readonly Rung[]; inDoubt: readonly string[] }): ReactElement {
  const [odd, ...more] = skins.filter(({ moltId }) => inDoubt.includes(moltId));
  return (
    <Notice tone="warning" title={words.odd}>
      {words.ask}
      {odd && more.length === 0 && ` ${oddOneInWords(rungName(odd))}`}
      {skins.length > 0 && (
        <p className={style['ways']}>
          {skins.map((rung) =>
            rung.photoId === null ? null : (
              <ButtonLink key={rung.moltId} to={`/bench/${rung.photoId}`} kind="quiet" icon="measure">
                {rungName(rung)} on the Bench
              </ButtonLink>
            ),
          )}
        </p>
      )}
    </Notice>
  );
}

/** Whether a gap that was put on record from here is still there: it may have been taken out from its row meanwhile. As far as is known. */
function standsOnRecord(gap: GapOnRecord, molts: readonly Molt[]): boolean {
  if (molts.length === 0) return true;
  if (gap.kind === 'presumed') return gap.moltIds.every((id) => molts.some((molt) => molt.id === id));
  return gap.renumbering.changes.every(({ moltId, to }) => molts.some(({ id, instarShed }) => id === moltId && instarShed === to));
}
