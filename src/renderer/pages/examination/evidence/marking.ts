import type { EvidenceMark } from '../../../../domain/sexing/determination.ts';

type At = Extract<EvidenceMark, { kind: 'point' }>['at'];

/** A mark while it is being placed: an outline of fewer than three corners is none yet. */
export interface Marking {
  readonly kind: 'none' | 'point' | 'outline';
  readonly points: readonly At[];
}

export const NO_MARKING: Marking = { kind: 'none', points: [] };
const MOST_CORNERS = 200;

export function markingOf(mark: EvidenceMark | null): Marking {
  if (mark === null) return NO_MARKING;
  return mark.kind === 'point' ? { kind: 'point', points: [mark.at] } : { kind: 'outline', points: mark.points };
}

/** Another kind of mark; a point that was placed begins the outline, and the first corner stays as the point. */
export function asKind({ points }: Marking, kind: Marking['kind']): Marking {
  return { kind, points: kind === 'none' ? [] : kind === 'point' ? points.slice(0, 1) : points };
}

/** A click, a tap or Enter at a place of the photo. */
export function placed(marking: Marking, at: At): Marking {
  if (marking.kind === 'point') return { ...marking, points: [at] };
  if (marking.kind === 'none' || marking.points.length >= MOST_CORNERS) return marking;
  return { ...marking, points: [...marking.points, at] };
}

export function withoutLast({ kind, points }: Marking): Marking {
  return { kind, points: points.slice(0, -1) };
}

/** What is kept; null for a photo as a whole. */
export function markFrom({ kind, points }: Marking): EvidenceMark | null {
  const [first] = points;
  if (kind === 'point' && first) return { kind, at: first };
  return kind === 'outline' && points.length >= 3 ? { kind, points: [...points] } : null;
}

/** Why a mark cannot be kept as it is; null where it can. */
export function markingGap({ kind, points }: Marking): string | null {
  if (kind === 'point' && points.length === 0) return 'Place the point, or show the photo as a whole.';
  if (kind === 'outline' && points.length < 3) return `An outline needs three corners; ${points.length} placed.`;
  return null;
}
