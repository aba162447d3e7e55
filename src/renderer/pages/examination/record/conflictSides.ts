import type { Determination, ReadSex } from '../../../../domain/sexing/determination.ts';
import { claimOf } from '../../../../domain/sexing/live/claim.ts';
import { type LiveSign, standingLiveSigns } from '../../../../domain/sexing/live/liveSign.ts';
import { isFirm } from '../../../../domain/sexing/rank.ts';
import { contradictionsOf } from '../../../../domain/sexing/sign.ts';

interface Side {
  readonly sex: ReadSex;
  readonly readings: readonly Determination[];
  readonly signs: readonly LiveSign[];
}

/** Everything that stands on either side of a contradiction: readings of skins, and what the animal itself showed. */
export function conflictSides(
  determinations: readonly Determination[],
  liveSigns: readonly LiveSign[],
): { readonly sides: readonly Side[]; readonly bulbsSeen: boolean } {
  const readings = contradictionsOf(determinations, liveSigns);
  const claimed = standingLiveSigns(liveSigns).flatMap((sign) => {
    const claim = claimOf(sign);
    return claim === null ? [] : [{ sign, claim }];
  });
  // As the rule weighs them: beside anything firm a leaning contradicts nothing.
  const firm = readings.some(({ level }) => isFirm(level)) || claimed.some(({ claim }) => isFirm(claim.level));
  const weighing = claimed.filter(({ claim }) => isFirm(claim.level) || !firm);
  const sides = (['female', 'male'] as const).map((sex) => ({
    sex,
    readings: readings.filter((reading) => reading.sex === sex),
    signs: weighing.filter(({ claim }) => claim.sex === sex).map(({ sign }) => sign),
  }));
  return { sides, bulbsSeen: weighing.some(({ sign }) => sign.finding.kind === 'palpal-bulbs') };
}
