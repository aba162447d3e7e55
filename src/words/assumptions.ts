import { MIDDLE_INSTAR } from '../domain/growth/belief/line.ts';
import { type AssumedRange, assumedChange, assumedRange, GROWTH_PRIOR, INTERVAL_PRIOR, UNSEEN_STEPS } from '../domain/growth/priors.ts';

/** One figure that stands in wherever records are few. */
export interface AssumptionWords {
  readonly what: string;
  readonly figure: string;
  /** What is published or common practice about it; how far it reaches is our own judgment throughout. */
  readonly source: string;
}

const VACHONI = 'Grammostola vachoni, Zool. Anz. 293:37–45, 2021';

/** What is assumed of every tarantula before anything is on record, in the order and by the sources of `priors.ts`. */
export const ASSUMPTIONS: readonly AssumptionWords[] = [
  {
    what: `Days that instar ${MIDDLE_INSTAR} lasts`,
    figure: withRange(assumedRange(INTERVAL_PRIOR), (days) => String(Number(days.toPrecision(2)))),
    source: `up to 8 molts in the first year and one a year when grown (common practice); 184 and later 365 days (${VACHONI})`,
  },
  {
    what: 'Each next instar lasts',
    figure: `${withRange(assumedChange(INTERVAL_PRIOR), twoDecimals)} times as long`,
    source: '1.07 times (Aglaoctenus lagotis, Moreira & Del-Claro 2011, Zoologia 28:565–570)',
  },
  {
    what: 'Single intervals scatter by',
    figure: percent(Math.sqrt(INTERVAL_PRIOR.scatterVariance)),
    source: 'Chiromachus ochropus (Lourenço et al. 2011)',
  },
  {
    what: `At a molt near instar ${MIDDLE_INSTAR} the carapace becomes`,
    figure: `${withRange(assumedRange(GROWTH_PRIOR), twoDecimals)} times as long`,
    source: `1.38 times at each molt (${VACHONI})`,
  },
  {
    what: 'Each next ratio is',
    figure: `${withRange(assumedChange(GROWTH_PRIOR), twoDecimals)} times that`,
    source: 'increases tend to decline (Hutchinson et al. 1997, Phil. Trans. R. Soc. B 352:113–138)',
  },
  {
    what: 'Single ratios scatter by',
    figure: percent(Math.sqrt(GROWTH_PRIOR.scatterVariance)),
    source: 'Centruroides gracilis (Francke & Jones 1982, J. Arachnol. 10:223–239)',
  },
  {
    what: 'Steps from molt to molt in which another went unseen',
    figure: percent(UNSEEN_STEPS.share),
    source: 'no source',
  },
];

function withRange({ middle, low95, high95 }: AssumedRange, inWords: (value: number) => string): string {
  return `${inWords(middle)} (95 % ${inWords(low95)} to ${inWords(high95)})`;
}

function twoDecimals(value: number): string {
  return value.toFixed(2);
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}
