import type { SizeName } from '../domain/growth/skinSizes.ts';
import { FREE_DISTANCES, type FreeDistance, LEG_IDS, LEG_SEGMENTS, type LegId, type LegSegment } from '../domain/measuring/landmarks.ts';
import type { AbsentQuantity } from '../domain/measuring/quantity.ts';
import { capitalized, LEG_LABELS, SEGMENT_LABELS } from './labels.ts';

const WHOLE: Readonly<Record<string, string>> = {
  'carapace-length': 'Carapace length',
  'carapace-width': 'Carapace width',
  'carapace-ratio': 'Carapace length to width',
};

/** The sizes of a skin that are followed from molt to molt; of legs the mean of both sides. */
export const SIZE_LABELS: Readonly<Record<SizeName, string>> = {
  carapaceLengthMm: 'Carapace length',
  carapaceWidthMm: 'Carapace width',
  legFirstMm: 'Leg I',
  legFourthMm: 'Leg IV',
  legSpanMm: 'Leg span as laid out',
};

/** Each size as what grows in a sentence: "made the carapace 1.3 times as wide". */
export const GROWN_WORDS: Readonly<Record<Exclude<SizeName, 'legSpanMm'>, { what: string; how: string }>> = {
  carapaceLengthMm: { what: 'the carapace', how: 'long' },
  carapaceWidthMm: { what: 'the carapace', how: 'wide' },
  legFirstMm: { what: 'leg I', how: 'long' },
  legFourthMm: { what: 'leg IV', how: 'long' },
};

const DISTANCE_LABELS: Readonly<Record<FreeDistance, string>> = {
  'receptacle-width': 'Width of the receptacles',
  'receptacle-height': 'Height of the receptacles',
  'book-lungs': 'Front book lungs, middle to middle',
  furrow: 'Width of the epigastric furrow',
  own: 'Your own distance',
};

/** A distance on an opened abdomen; `own` is what the keeper calls theirs. */
export function distanceName(distance: FreeDistance, own: string | null): string {
  return distance === 'own' && own !== null ? own : DISTANCE_LABELS[distance];
}

/**
 * What a measured quantity is called: "Carapace length", "Leg I left", "Leg I left, femur", "Laid-out span, I left to IV right".
 *
 * @param own what the keeper calls the distance of their own.
 */
export function quantityName(name: string, own: string | null = null): string {
  const distance = FREE_DISTANCES.find((one) => name === `free-${one}`);
  if (distance) return distanceName(distance, own);
  const whole = WHOLE[name];
  if (whole) return whole;
  const [kind, first, second] = name.split('-');
  const leg = legOf(first);
  if (kind === 'leg' && leg) {
    const segment = LEG_SEGMENTS.find((candidate) => candidate === second);
    return capitalized(segment ? `${LEG_LABELS[leg]}, ${SEGMENT_LABELS[segment satisfies LegSegment]}` : LEG_LABELS[leg]);
  }
  const other = legOf(second);
  if (kind === 'span' && leg && other) return `Laid-out span, ${legShort(leg)} to ${legShort(other)}`;
  return name;
}

function legOf(id: string | undefined): LegId | undefined {
  return LEG_IDS.find((candidate) => candidate === id);
}

function legShort(leg: LegId): string {
  return LEG_LABELS[leg].replace('leg ', '');
}

const ABSENT_LABELS: Readonly<Record<AbsentQuantity['reason'], string>> = {
  'not-placed': 'points not placed yet',
  missing: 'part missing',
  'not-visible': 'not visible',
  'no-position': 'point lies outside the plane of the scale',
};

/** Why a quantity has no value, in words; of a leg that is missing as a whole, so. `all` is what else the reading could not tell. */
export function absentInWords({ name, reason }: AbsentQuantity, all: readonly AbsentQuantity[]): string {
  const leg = name.split('-')[0] === 'leg' ? legOf(name.split('-')[1]) : undefined;
  const isGone = (segment: LegSegment) => all.some((other) => other.name === `leg-${leg}-${segment}` && other.reason === 'missing');
  return reason === 'missing' && leg !== undefined && LEG_SEGMENTS.every(isGone) ? 'leg missing' : ABSENT_LABELS[reason];
}

const LEAST_SHARE_TOLD = 0.01;

/** "42 %", "under 1 %": a small share of an uncertainty is not none. */
export function shareInWords(share: number): string {
  if (share > 0 && share < LEAST_SHARE_TOLD) return 'under 1\u00A0%';
  return `${(100 * share).toFixed(0)}\u00A0%`;
}
