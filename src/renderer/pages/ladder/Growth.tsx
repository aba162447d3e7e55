import { type ReactElement, useState } from 'react';
import type { CalendarDay } from '../../../domain/dates.ts';
import type { GrowthReport } from '../../../domain/growth/growthReport.ts';
import type { Ladder } from '../../../domain/growth/rung.ts';
import { ratioCautionInWords } from '../../../words/growthRatios.ts';
import { GrowthChart } from './chart/GrowthChart.tsx';
import type { Subject } from './chart/ladderCsv.ts';
import type { LivingNow } from './chart/livingNow.ts';
import { measuresIn } from './chart/measures.ts';
import { intervalValues } from './chart/stepValues.ts';
import { FitSummary } from './FitSummary.tsx';

interface Props {
  ladder: Ladder;
  growth: GrowthReport;
  subject: Subject;
  /** Null where the animal is not kept any more. */
  today: CalendarDay | null;
  living: LivingNow | null;
}

/** The growth in one measure, in words and drawn: both speak of the same one. Where nothing is measured, the days between molts, if any. */
export function Growth({ ladder, growth, subject, today, living }: Props): ReactElement | null {
  const measures = measuresIn(ladder, growth.live);
  const [wanted, setMeasure] = useState(measures[0]);
  const measure = wanted && measures.includes(wanted) ? wanted : measures[0];
  if (!measure) {
    if (intervalValues(ladder.rungs).length === 0 && !living) return null;
    return <GrowthChart {...{ ladder, growth, subject, today, living, measures }} measure="carapaceLengthMm" onMeasure={setMeasure} />;
  }
  return (
    <>
      <FitSummary ladder={ladder} measure={measure} caution={ratioCautionInWords(growth.missed, growth.inDoubt)} />
      <GrowthChart {...{ ladder, growth, subject, today, living, measures, measure }} onMeasure={setMeasure} />
    </>
  );
}
