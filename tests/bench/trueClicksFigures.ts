import { trueClickResults } from '../support/trueClicks.ts';
import { atMost, type Figure, median } from './figure.ts';

/** Carapace length of the rendered photos with a card, board or rule outline, clicked at the true pixels, against the truth. */
export function trueClicksFigures(): Figure[] {
  const errorsPercent = trueClickResults().map((result) => Math.abs(result.errorPercent));
  return [
    atMost('carapace-true-clicks-median-pct', median(errorsPercent), '%', 0.5),
    atMost('carapace-true-clicks-worst-pct', Math.max(...errorsPercent), '%', 1.5),
  ];
}
