import type { ReactElement } from 'react';
import type { CalendarDay } from '../../../../domain/dates.ts';
import type { GrowthReport } from '../../../../domain/growth/growthReport.ts';
import { measuredSteps } from '../../../../domain/growth/measuredStep.ts';
import type { Ladder } from '../../../../domain/growth/rung.ts';
import { type Bands, bandsOf } from '../../../../domain/growth/trend/bands.ts';
import { isUsable } from '../../../../domain/measuring/usable.ts';
import { SIZE_LABELS } from '../../../../words/quantities.ts';
import { DatePlot } from './DatePlot.tsx';
import { InstarPlot } from './InstarPlot.tsx';
import { dateLegend, instarLegend, intervalLegend, ratioLegend } from './legends.ts';
import { livePointsOf } from './livePoints.ts';
import { type LivingNow, runningInterval } from './livingNow.ts';
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
  /** Null where the animal is not kept any more. */
  today: CalendarDay | null;
  /** Null where it is not kept, and after a molt that is not on record. */
  living: LivingNow | null;
}

interface Drawn {
  readonly plot: ReactElement | null;
  readonly legend: string;
  /** What is drawn: "Carapace length by instar". */
  readonly title: string;
}

/** The drawing asked for with the words that explain it; without anything to draw, the words say what is missing. */
export function drawingOf(drawing: Drawing, { ladder, growth, measure, widthPx, today, living }: Shown): Drawn {
  const { rungs } = ladder;
  const measureLabel = SIZE_LABELS[measure];
  const points = pointsOf(ladder, measure, growth.inDoubt);
  const allLive = livePointsOf(growth.live, measure);
  const unusable = [...rungs, ...growth.live].filter((sizes) => sizes[measure] && !isUsable(sizes[measure])).length;
  switch (drawing) {
    case 'instar': {
      const bands = upTo(rungs.at(-1)?.step ?? 0, bandsOf(measuredSteps(rungs, measure)));
      const live = allLive.filter((point) => point.live.step !== null);
      const legend = instarLegend({ rungs, measure, bands, living, points, live, unplaced: allLive.length - live.length, unusable });
      const isEmpty = points.length + live.length === 0;
      return {
        plot: isEmpty ? null : <InstarPlot {...{ rungs, points, live, bands, living, widthPx, measure, measureLabel }} />,
        legend,
        title: `${measureLabel} by instar`,
      };
    }
    case 'date': {
      const live = allLive.filter((point) => point.live.takenOn !== null);
      const legend = dateLegend({ rungs, measure, living, points, live, unplaced: allLive.length - live.length, unusable });
      const isEmpty = points.length + live.length === 0;
      return {
        plot: isEmpty ? null : <DatePlot {...{ rungs, points, live, today, living, widthPx, measure, measureLabel }} />,
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
      const last = rungs.at(-1);
      const interval = living && last ? runningInterval(last, living) : null;
      const running = living && interval && { living, interval };
      const legend = intervalLegend(values, running);
      if (values.length === 0 && !running) return { plot: null, legend, title };
      return {
        plot: <StepPlot {...{ rungs, values, widthPx, running }} yardsticks={[]} unit="days" axis="logarithmic" label={title} />,
        legend,
        title,
      };
    }
  }
}

/** The place after the last rung is the forecast's, which knows the kin too: two figures for one skin would contradict each other. */
function upTo(lastStep: number, bands: Bands | null): Bands | null {
  return bands && { ...bands, at: bands.at.filter(({ step }) => step <= lastStep), next: null };
}

function yardsticksOf({ ratios }: GrowthReport, measure: Measure): Yardstick[] {
  const published: Yardstick = { value: ratios.przibram, words: `Przibram ${ratios.przibram.toFixed(2)}`, kind: 'published' };
  const own = measure === 'carapaceLengthMm' ? ratios.geometricMean : null;
  return own ? [{ value: own.value, words: `own geometric mean ${own.value.toFixed(2)}`, kind: 'own' }, published] : [published];
}
