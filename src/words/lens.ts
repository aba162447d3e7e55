import type { ScaleMarks } from '../domain/measuring/calibration.ts';
import { CORNER_SHIFT_BOUND } from '../domain/measuring/distortion.ts';
import type { LensFound } from '../domain/measuring/lens/lensFound.ts';
import type { Estimate } from '../domain/measuring/quantity.ts';
import { estimateInWords } from './estimates.ts';

/** By what the bending of a lens is told, and at which of its marks it shows most. */
const SHOWN_BY: Readonly<Record<ScaleMarks['kind'], { readonly seen: string; readonly outermost: string }>> = {
  rectangle: { seen: 'The straight edges of the scale object look bent here', outermost: 'corner' },
  'rule-ticks': { seen: 'The even ticks of the rule look uneven here', outermost: 'tick' },
  points: { seen: 'The straight rows of the card look bent here', outermost: 'point' },
  'two-points': { seen: '', outermost: 'end' },
  coin: { seen: '', outermost: 'place of the rim' },
};

/**
 * What is taken of the lens, in plain words.
 *
 * @param shows how far beside its place the outermost mark of the scale object was drawn, mm.
 */
export function lensInWords(lens: Pick<LensFound, 'reason' | 'isCorrected'>, kind: ScaleMarks['kind'], shows: Estimate | null): string {
  const { seen, outermost } = SHOWN_BY[kind];
  if (lens.isCorrected) {
    const undone = 'Lengths, the view from straight above and the gallery undo it.';
    if (shows === null) return `${seen}: the lens bends the picture. ${undone}`;
    const { value, expandedUncertainty } = estimateInWords({ ...shows, value: Math.abs(shows.value) }, 'mm');
    if (Math.abs(shows.value) <= shows.expandedUncertainty) {
      return `The scale object shows that the lens hardly bends the picture: its outermost ${outermost} lies ${value} ± ${expandedUncertainty} mm beside its place. ${undone}`;
    }
    const way = shows.value < 0 ? 'too near to' : 'too far from';
    return `${seen}: the lens drew the outermost ${outermost} ${value} ± ${expandedUncertainty} mm ${way} the middle of the picture. ${undone}`;
  }
  if (lens.reason === 'switched-off' && shows !== null) {
    const { expandedUncertainty } = estimateInWords(shows, 'mm');
    return `Left as it is, as you chose: the outermost ${outermost} may be up to ${expandedUncertainty} mm beside its place. The ± of every length allows for that.`;
  }
  return NOT_CORRECTED[lens.reason];
}

const ALLOWED = `The ± of every length allows for what a camera commonly leaves of it, up to ${(100 * CORNER_SHIFT_BOUND).toFixed(1)} % at the corner of the picture.`;

/** Why the lens stays as it is; beside its line in a budget. */
export const NOT_CORRECTED: Readonly<Record<LensFound['reason'], string>> = {
  found: '',
  'switched-off': 'Left as it is, as you chose; what was seen of it counts into the ±.',
  'nothing-straight': `Not corrected: on this scale object nothing straight was found that would show it. ${ALLOWED}`,
  'not-determined': `Not corrected: too little of the scale object was found to tell it. ${ALLOWED}`,
  'not-significant': `Not corrected: what the scale object shows of it cannot be told from none, because it is too small in the picture, or too near to its middle; where it seems to be more than is common, the ± is larger still. ${ALLOWED}`,
  implausible: `Not corrected: the scale object looks bent by more than any lens would bend it, so it is bent itself, or a part of it was found wrong. ${ALLOWED}`,
  uneven: `Not corrected: the scale object itself is bent, or not all of its edges were found. ${ALLOWED}`,
};
