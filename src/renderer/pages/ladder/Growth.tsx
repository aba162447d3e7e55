import { type ReactElement, useState } from 'react';
import type { Ladder } from '../../../domain/growth/rung.ts';
import { GrowthChart } from './chart/GrowthChart.tsx';
import { measuresIn } from './chart/measures.ts';
import { FitSummary } from './FitSummary.tsx';

/** The growth in one measure, in words and drawn: both speak of the same one. Null where nothing is measured. */
export function Growth({ ladder }: { ladder: Ladder }): ReactElement | null {
  const measures = measuresIn(ladder);
  const [wanted, setMeasure] = useState(measures[0]);
  const measure = wanted && measures.includes(wanted) ? wanted : measures[0];
  if (!measure) return null;
  return (
    <>
      <FitSummary ladder={ladder} measure={measure} />
      <GrowthChart ladder={ladder} measures={measures} measure={measure} onMeasure={setMeasure} />
    </>
  );
}
