import { z } from 'zod';
import { type Estimate, estimateFrom } from '../measuring/quantity.ts';
import type { MoltsSince } from '../molting/instars.ts';
import { CARAPACE, foretoldSize, type Power, SizeForecast, type SkinLength } from './belief/foretoldSize.ts';
import type { GrowthBelief } from './belief/growthBelief.ts';
import type { LineBasis } from './belief/lineBasis.ts';
import { fitAllometry, type LegAllometry } from './legs/allometry.ts';
import type { SkinSizes } from './skinSizes.ts';

/** A size of the living animal, foretold from the latest skin that shows it. */
export const SizeNow = SizeForecast.extend({
  moltId: z.string().describe('Of the skin'),
  lengthMm: z.number().positive().describe('On the skin'),
  moltsSince: z
    .object({ fewest: z.int().min(1), most: z.int().min(1) })
    .describe('Instars from the skin to the animal, on record or not; 1 for the skin of the last molt'),
}).meta({ id: 'SizeNow' });
export type SizeNow = z.infer<typeof SizeNow>;

/** A length on a skin, and how far the living animal is ahead of that skin. */
export interface LengthBehind extends SkinLength {
  readonly moltId: string;
  readonly moltsSince: MoltsSince;
}

/** All that the present sizes of one animal follow from. */
export interface GroundOfSize {
  readonly growth: LineBasis;
  readonly carapace: LengthBehind | null;
  readonly span: LengthBehind | null;
  readonly spanPower: Power;
}

/** The skin of one molt, as far as it was measured. */
export type SizesOfMolt = Pick<SkinSizes, 'carapaceLengthMm' | 'legFirstMm' | 'legFourthMm' | 'legSpanMm'> & { readonly moltId: string };

/**
 * Relative standard uncertainty of a leg span by how the skin lay: spread legs seldom lie quite straight, and spans of one animal
 * come out apart by tens of per cent. No source gives a figure; an assumption of ours. That legs curl makes it too short rather
 * than too long, which this leaves out.
 */
const LAYOUT = 0.15;
/** Standard uncertainty of the exponent where skins do not show that it is not 1: an assumption of ours. */
const ABOUT_ALIKE = 0.1;

/** @param skins oldest first. */
export function groundOfSize(skins: readonly SizesOfMolt[], { growth, lastSkin, instar, places }: GrowthBelief): GroundOfSize {
  const molts = lastSkin ? instar - lastSkin.instar : 0;
  return {
    growth,
    carapace: lastSkin && { ...lastSkin, moltsSince: { fewest: molts, most: molts } },
    span: lastSpan(skins, places),
    spanPower: powerOf(fitAllometry(skins, 'legFirstMm')),
  };
}

/** The carapace of the living animal: what the forecast says of the next skin, which shows it. */
export function carapaceNow({ growth, carapace }: GroundOfSize): SizeNow | null {
  return carapace && ahead(carapace, growth, CARAPACE);
}

/** Its leg span, by the exponent of leg I where skins show that this is not 1. */
export function spanNow({ growth, span, spanPower }: GroundOfSize): SizeNow | null {
  return span && ahead(span, growth, spanPower);
}

/** The same after one molt more than is on record. */
export function oneMoltFurther(ground: GroundOfSize): GroundOfSize {
  const further = (length: LengthBehind | null) =>
    length && { ...length, moltsSince: { fewest: length.moltsSince.fewest + 1, most: length.moltsSince.most + 1 } };
  return { ...ground, carapace: further(ground.carapace), span: further(ground.span) };
}

/** Where it is open how many molts went by, from the least to the most growth that this allows. */
function ahead(length: LengthBehind, growth: LineBasis, power: Power): SizeNow | null {
  const { moltId, lengthMm, moltsSince } = length;
  const least = foretoldSize(length, growth, moltsSince.fewest, power);
  const most = foretoldSize(length, growth, moltsSince.most, power);
  if (!least || !most) return null;
  return {
    moltId,
    lengthMm,
    moltsSince,
    middleMm: Math.sqrt(least.middleMm * most.middleMm),
    low50Mm: Math.min(least.low50Mm, most.low50Mm),
    high50Mm: Math.max(least.high50Mm, most.high50Mm),
    low90Mm: Math.min(least.low90Mm, most.low90Mm),
    high90Mm: Math.max(least.high90Mm, most.high90Mm),
  };
}

function lastSpan(skins: readonly SizesOfMolt[], places: GrowthBelief['places']): LengthBehind | null {
  for (const skin of skins.toReversed()) {
    const span = spanOf(skin);
    const place = places.find(({ moltId }) => moltId === skin.moltId);
    if (span && place) return place.inDoubt ? null : { ...place, lengthMm: span.value, uncertaintyMm: asItLay(span) };
  }
  return null;
}

/**
 * As the legs reach, where they were measured along their joints and reach farther than the skin was laid: legs that lie curled or
 * bent make the span of a skin too short, and too short a span would let its animal be fed too early. The body between them is left out.
 */
function spanOf({ legFirstMm, legFourthMm, legSpanMm }: SizesOfMolt): Estimate | null {
  if (!legFirstMm || !legFourthMm) return legSpanMm;
  const legsMm = legFirstMm.value + legFourthMm.value;
  if (legSpanMm && legSpanMm.value >= legsMm) return legSpanMm;
  return estimateFrom(legsMm, Math.hypot(legFirstMm.standardUncertainty, legFourthMm.standardUncertainty));
}

function asItLay({ value, standardUncertainty }: Estimate): number {
  return Math.hypot(standardUncertainty, LAYOUT * value);
}

function powerOf(leg: LegAllometry | null): Power {
  if (!leg || leg.growth === 'alike') return { exponent: 1, uncertainty: ABOUT_ALIKE };
  // Half of the half width of 95 %, which with few skins lies above the standard error.
  return { exponent: leg.exponent, uncertainty: (leg.exponentHigh95 - leg.exponentLow95) / 4 };
}
