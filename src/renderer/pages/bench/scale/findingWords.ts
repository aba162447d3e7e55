import type { FoundScale, ScaleProposal } from '../../../../domain/finding/foundScale.ts';
import type { ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import type { Contradiction } from '../../../../domain/measuring/contradiction.ts';
import { counted } from '../../../../words/counts.ts';
import { scaleObjectName } from '../../../../words/measuring.ts';

const CLEAR = 0.8;
const LIKELY = 0.5;

/** "clear (0.93)". A figure alone would be read as a probability, which it is not. */
export function confidenceInWords({ confidence }: Pick<ScaleProposal, 'confidence'>): string {
  const word = confidence >= CLEAR ? 'clear' : confidence >= LIKELY ? 'likely' : 'uncertain';
  return `${word} (${confidence.toFixed(2)} of 1)`;
}

const SIDE_NAMES = ['1 to 2', '2 to 3', '3 to 4', '4 to 1'] as const;

/** What found marks rest on, and what was lost. */
export function evidenceInWords({ evidence }: Pick<FoundScale, 'evidence'>): string {
  switch (evidence.kind) {
    case 'markers':
      return `${counted(evidence.markers, 'marker')} and ${counted(evidence.points, 'point')} of the card were placed.${
        evidence.sizeAssumed ? ' The card does not tell its size: that of the common kind is taken. Check it below.' : ''
      }`;
    case 'sides': {
      const unseen = SIDE_NAMES.filter((_, index) => evidence.sides[index] === null);
      if (unseen.length === 0) return 'All four edges were found; the corners are where they meet.';
      return `The edge ${unseen.join(' and ')} was not seen; its corners follow from the other three and the size. What is lost: a wrong corner no longer shows in the shape, and an error of the focal length turns the plane.`;
    }
    case 'ticks': {
      const missing =
        evidence.missing.length === 0 ? '' : ` ${counted(evidence.missing.length, 'tick')} between them worn or covered and left out.`;
      return `${counted(evidence.found, 'tick')} used, off a straight row by ${evidence.scatterPx.toFixed(2)} px.${missing}`;
    }
    case 'rim':
      return `The rim was seen along ${(100 * evidence.coverage).toFixed(0)} % of its way, off an ellipse by ${evidence.residualPx.toFixed(2)} px.`;
  }
}

const DIRECTIONS = ['right', 'lower right', 'lower', 'lower left', 'left', 'upper left', 'upper', 'upper right'] as const;

/** An angle in the picture, from x (right) towards y (down), as the nearest of eight directions. */
export function directionInWords(angleRad: number): string {
  const eighth = Math.round((4 * angleRad) / Math.PI);
  return DIRECTIONS[((eighth % 8) + 8) % 8] ?? DIRECTIONS[0];
}

/** Two objects that cannot both be right: what each says. */
export function contradictionInWords(
  one: ScaleMarks,
  other: ScaleMarks,
  { itselfMm, byOtherMm, expandedUncertaintyMm }: Contradiction,
): string {
  const percent = 100 * (byOtherMm / itselfMm - 1);
  return `By “${scaleObjectName(one)}” the longest extent of “${scaleObjectName(other)}” would be ${byOtherMm.toFixed(2)} mm; by itself it is ${itselfMm.toFixed(2)} mm (${percent < 0 ? '−' : '+'}${Math.abs(percent).toFixed(1)} %). Together they are known to ± ${expandedUncertaintyMm.toFixed(2)} mm.`;
}
