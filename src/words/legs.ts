import type { LegAllometry } from '../domain/growth/legs/allometry.ts';
import type { RegrowthStage } from '../domain/growth/legs/regrowth.ts';
import type { LegId } from '../domain/measuring/landmarks.ts';
import { estimateFrom } from '../domain/measuring/quantity.ts';
import { isUsable } from '../domain/measuring/usable.ts';
import { counted } from './counts.ts';
import { estimateInWords } from './estimates.ts';
import type { NameOfMolt } from './growth.ts';
import { LEG_LABELS, uncapitalized } from './labels.ts';

/** How a leg grows against the carapace. `leg` as it begins a sentence: "Leg I". */
export function allometryInWords(leg: string, allometry: LegAllometry | null): string {
  if (!allometry) {
    return `${leg} against the carapace: told from three skins up that show both, unless their carapaces are all of one size.`;
  }
  const { skins, exponent, exponentLow95, exponentHigh95, growth } = allometry;
  const figures = `exponent ${decimal(exponent)}, 95 % interval ${decimal(exponentLow95)} to ${decimal(exponentHigh95)}, from ${counted(skins, 'skin')}`;
  switch (growth) {
    case 'alike':
      return `${leg} grows in step with the carapace, as far as these skins can tell (${figures}).`;
    case 'leg-faster':
      return `${leg} grows faster than the carapace: it becomes longer for the size of the animal (${figures}).`;
    case 'leg-slower':
      return `${leg} grows slower than the carapace: it becomes shorter for the size of the animal (${figures}).`;
  }
}

/**
 * How far a lost leg is back on one skin. What it won is told since the skin before that shows it: the skin of a molt carries
 * what grew at the molt before, and skins may lie between that do not show the leg.
 *
 * @param before the stage before, undefined on the first skin of the loss.
 */
export function stageInWords(stage: RegrowthStage, before: RegrowthStage | undefined, partner: LegId, nameOf: NameOfMolt): string {
  if (stage.state === 'missing') return 'missing';
  const state = stage.state === 'regenerated' ? 'regenerated' : 'no longer noted as regenerated';
  if (!stage.share) return `${state}; no share, since it or ${LEG_LABELS[partner]} has no length to compare`;
  if (!isUsable(stage.share)) {
    return `${state}; how much of ${LEG_LABELS[partner]} it is cannot be told: the two lengths are known too badly for that`;
  }
  const share = estimateInWords(estimateFrom(100 * stage.share.value, 100 * stage.share.standardUncertainty), '1');
  const since =
    before && stage.gained !== null && (before.share === null || isUsable(before.share))
      ? `; ${gainInWords(stage.gained, before, nameOf)}`
      : '';
  const unusual = stage.unusual ? '. Unusual for a regenerated leg: look at its points and at the note again' : '';
  return `${state}, ${share.value} ± ${share.expandedUncertainty} % of ${LEG_LABELS[partner]}${since}${unusual}`;
}

function gainInWords(gained: number, before: RegrowthStage, nameOf: NameOfMolt): string {
  const earlier = uncapitalized(nameOf(before.moltId));
  if (before.state === 'missing') return `missing on the skin of ${earlier}, regrown since`;
  const points = Math.round(100 * gained);
  if (points === 0) return `as on the skin of ${earlier}`;
  return `${counted(Math.abs(points), 'percentage point')} ${points > 0 ? 'more' : 'less'} than on the skin of ${earlier}`;
}

function decimal(value: number): string {
  return value.toFixed(2).replace('-', '−');
}
