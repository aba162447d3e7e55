/** One line of a benchmark: what was measured, against which bar, or between which two. `bar` null: reported, not judged. */
export interface Figure {
  readonly figure: string;
  readonly value: number;
  readonly unit: string;
  readonly bar: number | { readonly least: number; readonly most: number } | null;
  readonly ok: boolean | null;
}

/** A figure that must not exceed its bar. */
export function atMost(figure: string, value: number, unit: string, bar: number): Figure {
  return { figure, value: rounded(value), unit, bar, ok: value <= bar };
}

/** A figure that must reach its bar. */
export function atLeast(figure: string, value: number, unit: string, bar: number): Figure {
  return { figure, value: rounded(value), unit, bar, ok: value >= bar };
}

/** A figure that must lie between two bars. */
export function between(figure: string, value: number, unit: string, least: number, most: number): Figure {
  return { figure, value: rounded(value), unit, bar: { least, most }, ok: value >= least && value <= most };
}

export function reported(figure: string, value: number, unit: string): Figure {
  return { figure, value: rounded(value), unit, bar: null, ok: null };
}

export function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

/** Linear interpolation between order statistics (definition 7 of Hyndman and Fan 1996). */
export function quantile(values: readonly number[], probability: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const position = (sorted.length - 1) * probability;
  const below = sorted[Math.floor(position)];
  const above = sorted[Math.ceil(position)];
  if (below === undefined || above === undefined) throw new RangeError('Expected at least one value');
  return below + (above - below) * (position - Math.floor(position));
}

function rounded(value: number): number {
  return Number(value.toPrecision(4));
}
