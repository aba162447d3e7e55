import type { Shown } from '../../../../domain/measuring/heights.ts';
import type { Measurement } from '../../../../domain/measuring/quantity.ts';

/**
 * Heights above the table from here on can hardly be, as a share of the carapace's length or width, whichever is shorter: a skin has
 * sunk onto its legs, an animal may stand high on them. Own judgment.
 */
const HARDLY_POSSIBLE_SHARES: Readonly<Record<Shown, number>> = { skin: 1, animal: 1.5 };

const CARAPACE_SIZES = [
  { name: 'carapace-length', how: 'long' },
  { name: 'carapace-width', how: 'wide' },
] as const;

/** What a typed height makes of the animal, as a question: a slipped digit or another unit shows beside the carapace. Null where it may be. */
export function heightDoubtInWords(heightMm: number, measurement: Measurement | null, shown: Shown): string | null {
  const [shortest] = CARAPACE_SIZES.flatMap(({ name, how }) => {
    const sizeMm = measurement?.quantities.find((quantity) => quantity.name === name)?.estimate.value;
    return sizeMm === undefined ? [] : [{ sizeMm, how }];
  }).toSorted((one, other) => one.sizeMm - other.sizeMm);
  if (shortest === undefined || heightMm <= HARDLY_POSSIBLE_SHARES[shown] * shortest.sizeMm) return null;
  return `Can that be? ${Number(heightMm.toPrecision(6))} mm above the table is more than the carapace is ${shortest.how} (${Number(shortest.sizeMm.toPrecision(2))} mm as measured now). Check the figure, and that it is in millimeters.`;
}
