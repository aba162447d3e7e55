import type { ReactElement } from 'react';
import type { GrowthReport } from '../../../../domain/growth/growthReport.ts';
import { measuredSteps } from '../../../../domain/growth/measuredStep.ts';
import type { Ladder } from '../../../../domain/growth/rung.ts';
import { bandsOf } from '../../../../domain/growth/trend/bands.ts';
import { isUsable } from '../../../../domain/measuring/usable.ts';
import { SIZE_LABELS } from '../../../../words/quantities.ts';
import { DatePlot } from './DatePlot.tsx';
import { InstarPlot } from './InstarPlot.tsx';
import { dateLegend, instarLegend, intervalLegend, ratioLegend } from './legends.ts';
import { livePointsOf } from './livePoints.ts';
import { type Measure, pointsOf } from './measures.ts';
import { StepPlot, type Yardstick } from './StepPlot.tsx';
import { intervalValues, ratioValues } from './stepValues.ts';

export const DRAWINGS = [
  { value: 'instar', label: 'By instar' },
  { value: 'date', label: 'By date' },
  { value: 'ratio', label: 'Ratios' },
  { value: 'interval', label: 'Intervals' },
] as const;
export type Drawing = (typeof DRAWINGS)[number]['value'];

interface Shown {
  ladder: Ladder;
  growth: GrowthReport;
  measure: Measure;
  widthPx: number;
}

interface Drawn {
  readonly plot: ReactElement | null;
  readonly legend: string;
  /** What is drawn: "Carapace length by instar". */
  readonly title: string;
}

/** The drawing asked for with the words that explain it; without anything to draw, the words say what is missing. */
export function drawingOf(drawing: Drawing, { ladder, growth, measure, widthPx }: Shown): Drawn {
  const { rungs } = ladder;
  const measureLabel = SIZE_LABELS[measure];
  const points = pointsOf(ladder, measure);
  const allLive = livePointsOf(growth.live, measure);
  const unusable = [...rungs, ...growth.live].filter((sizes) => sizes[measure] && !isUsable(sizes[measure])).length;
  switch (drawing) {
    case 'instar': {
      const bands = bandsOf(measuredSteps(rungs, measure));
      const live = allLive.filter((point) => point.live.step !== null);
      const legend = instarLegend({ rungs, measure, bands, points, live, unplaced: allLive.length - live.length, unusable });
      const isEmpty = points.length + live.length === 0;
      return {
        plot: isEmpty ? null : <InstarPlot {...{ rungs, points, live, bands, widthPx, measure, measureLabel }} />,
        legend,
        title: `${measureLabel} by instar`,
      };
    }
    case 'date': {
      const live = allLive.filter((point) => point.live.takenOn !== null);
      const legend = dateLegend({ rungs, measure, points, live, unplaced: allLive.length - live.length, unusable });
      const isEmpty = points.length + live.length === 0;
      return {
        plot: isEmpty ? null : <DatePlot {...{ rungs, points, live, widthPx, measure, measureLabel }} />,
        legend,
        title: `${measureLabel} by date`,
      };
    }
    case 'ratio': {
      const title = `Ratio of ${measureLabel.toLowerCase()}`;
      const values = ratioValues(rungs, measure);
      const legend = ratioLegend(
        values.length,
        values.some(({ hollow }) => hollow),
      );
      if (values.length === 0) return { plot: null, legend, title };
      return {
        plot: <StepPlot {...{ rungs, values, widthPx }} yardsticks={yardsticksOf(growth, measure)} unit="×" axis="even" label={title} />,
        legend,
        title,
      };
    }
    case 'interval': {
      const title = 'Days an instar lasted';
      const values = intervalValues(rungs);
      const legend = intervalLegend(
        values.length,
        values.some(({ hollow }) => hollow),
      );
      if (values.length === 0) return { plot: null, legend, title };
      return {
        plot: <StepPlot {...{ rungs, values, widthPx }} yardsticks={[]} unit="days" axis="logarithmic" label={title} />,
        legend,
        title,
      };
    }
  }
}

function yardsticksOf({ ratios }: GrowthReport, measure: Measure): Yardstick[] {
  const published: Yardstick = { value: ratios.przibram, words: `Przibram ${ratios.przibram.toFixed(2)}`, kind: 'published' };
  const own = measure === 'carapaceLengthMm' ? ratios.geometricMean : null;
  return own ? [{ value: own.value, words: `own geometric mean ${own.value.toFixed(2)}`, kind: 'own' }, published] : [published];
}
