import type { Archive } from '../../archive/archive.ts';
import type { CabinetEntry } from '../../archive/records/animals.ts';
import type { CalendarDay } from '../../domain/dates.ts';
import { seriesOf } from '../../domain/growth/belief/growthRecord.ts';
import { coverageOf } from '../../domain/growth/forecast/coverage.ts';
import { judgeForecasts } from '../../domain/growth/forecast/keptForecast.ts';
import { diedIn } from '../../domain/molting/outcomes.ts';
import { isKept } from '../../domain/specimen/counts.ts';
import type { ForecastScores } from '../contract/forecasts.ts';
import { carapaceSizesIn, recordOf } from './growthBelief.ts';
import { maleMaturityOf } from './maleMaturity.ts';
import { pointingIn } from './pointing.ts';

/** Scored anew each time by what is on record now; only animals with forecasts are measured. */
export function forecastScoresOf(archive: Archive, today: CalendarDay): ForecastScores {
  const sizesOf = carapaceSizesIn(archive, pointingIn(archive));
  const kept = Map.groupBy(archive.forecasts.list(), ({ specimenId }) => specimenId);
  const scored = archive.cabinet.entries().flatMap((entry) => {
    const { id, sample } = entry.specimen;
    const forecasts = kept.get(id) ?? [];
    if (forecasts.length === 0) return [];
    const { placed } = seriesOf(recordOf(entry, sizesOf(id)), today);
    const judged = judgeForecasts(forecasts, { placed, isAwaited: isAwaited(entry), today });
    return forecasts.flatMap(({ basis, ...forecast }, index) => {
      const verdict = judged[index];
      return verdict ? [{ sample, scored: { ...forecast, ...verdict } }] : [];
    });
  });
  return {
    coverage: coverageOf(scored.flatMap(({ sample, scored: { score, counts } }) => (score && counts && !sample ? [score] : []))),
    forecasts: scored.map((one) => one.scored),
  };
}

/** Whether a molt of this animal would still be seen here. */
function isAwaited(entry: CabinetEntry): boolean {
  return isKept(entry.specimen.status) && diedIn(entry.molts) === null && maleMaturityOf(entry) === null;
}
