import type { BudgetSource, Quantity } from '../../../../domain/measuring/quantity.ts';

/** A second source worth a word: half as much again would be gained by it. Own judgment. */
const WORTH_A_WORD = 1 / 3;

/** What narrows the uncertainty most: what can be done about its largest share, and about another that weighs much. Null for a quantity without one. */
export function budgetAdvice({ budget, flags }: Pick<Quantity, 'budget' | 'flags'>): string | null {
  const [largest, second] = budget.toSorted((one, other) => other.share - one.share);
  if (largest === undefined) return null;
  const adviceOn = (source: BudgetSource) => (source === 'height' ? heightAdvice(flags) : ADVICE[source]);
  const more = second !== undefined && second.share >= WORTH_A_WORD ? ` ${adviceOn(second.source)}` : '';
  return `${adviceOn(largest.source)}${more}`;
}

/** Legs of which so many are uncertain by their heights most of all are worth saying it once for all. */
const SEVERAL = 3;

/** Whether the heights of joints, which nobody measured, are most of what is uncertain of several legs. */
export function areLegHeightsOpen(quantities: readonly Pick<Quantity, 'name' | 'budget' | 'flags'>[]): boolean {
  const open = quantities.filter(
    ({ name, budget, flags }) =>
      /^leg-..$/.test(name) && flags.includes('height-assumed') && budget.some(({ source, share }) => source === 'height' && share > 0.5),
  );
  return open.length >= SEVERAL;
}

const ADVICE: Readonly<Record<Exclude<BudgetSource, 'height'>, string>> = {
  pointing:
    'Place the points enlarged, and make a further pass (below): the mean of several is narrower. A photo from nearer gives each point more pixels.',
  calibration:
    'Put the marks on the scale object more exactly, under Known size: enlarged, or fitted to the edges. In the next photo let the object fill more of the picture.',
  'scale-object': 'Measure the scale object itself with a caliper and enter its size, and how well you know it, under Known size.',
  'tilt-unknown':
    'The marks hardly show how the camera was tilted. Four corners of a card or sheet do, also as a second object beside a coin. Or photograph from straight above.',
  'camera-distance':
    'Photograph from farther away and straight from above, and keep the camera’s own file: its focal length tells how far away it was.',
  distortion:
    'In the next photo lay the scale object close beside the skin, both near the middle of the picture: there a lens distorts least, and both alike.',
};

function heightAdvice(flags: Quantity['flags']): string {
  if (flags.includes('height-not-corrected'))
    return 'The distance of the camera is not known, so nothing could be corrected: use a card with four corners and keep the camera’s own file. From farther away height matters less.';
  return flags.includes('height-assumed')
    ? 'Measure how high these points stand above the table and enter it under Points: now it is only assumed. From farther away height matters less.'
    : 'Enter the height more closely, under Points, if you can measure it better. From farther away it matters less.';
}
