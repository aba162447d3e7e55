import { type ReactElement, useState } from 'react';
import type { GrowthReport } from '../../../domain/growth/growthReport.ts';
import type { Ladder } from '../../../domain/growth/rung.ts';
import { GrowthChart } from './chart/GrowthChart.tsx';
import type { Subject } from './chart/ladderCsv.ts';
import { measuresIn } from './chart/measures.ts';
import { FitSummary } from './FitSummary.tsx';

/** The growth in one measure, in words and drawn: both speak of the same one. Null where nothing is measured. */
export function Growth({ ladder, growth, subject }: { ladder: Ladder; growth: GrowthReport; subject: Subject }): ReactElement | null {
  const measures = measuresIn(ladder, growth.live);
  const [wanted, setMeasure] = useState(measures[0]);
  const measure = wanted && measures.includes(wanted) ? wanted : measures[0];
  if (!measure) return null;
  return (
    <>
      <FitSummary ladder={ladder} measure={measure} />
      <GrowthChart {...{ ladder, growth, subject, measures, measure }} onMeasure={setMeasure} />
    </>
  );
}
