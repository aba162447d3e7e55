import type { ScaleProposal } from '../../../../domain/finding/foundScale.ts';
import { coinsToldBy, type ToldCoins, wouldFitBetter } from '../../../../domain/finding/whichCoin.ts';
import type { CoinScale, ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import type { PictureFacts } from '../../../../domain/measuring/camera.ts';
import { areOfOneObject } from '../../../../domain/measuring/sameObject.ts';
import { COIN_LABELS, scaleObjectName } from '../../../../words/scaleObjects.ts';
import { isClearlySeen } from './findingWords.ts';
import { isAssumed } from './useProposals.ts';

/** What other objects of the picture say of a coin that was taken. */
export interface CoinHint extends ToldCoins {
  /** The chosen coin contradicts the object, which is clearly seen, and these would fit it. */
  readonly isBetter: boolean;
  /** Nobody has said the object's size yet. */
  readonly isSizeAssumed: boolean;
}

/** The keeper's own second object is asked first, then those seen: of stated size before those of an assumed one. */
export function coinHintOf(
  marks: CoinScale,
  check: ScaleMarks | undefined,
  proposals: readonly ScaleProposal[],
  picture: PictureFacts,
): CoinHint | null {
  const own = check === undefined ? [] : [check];
  const seen = proposals
    .filter((proposal) => own.every((said) => !areOfOneObject(said, proposal.marks)))
    .toSorted((one, other) => Number(isAssumed(one)) - Number(isAssumed(other)));
  // A coin beside it is no more certain than this one.
  const others = [...own, ...seen.map((proposal) => proposal.marks)].filter(({ kind }) => kind !== 'coin');
  const told = coinsToldBy(marks.rim, others, picture);
  if (told === null) return null;
  const proposal = seen.find((candidate) => candidate.marks === told.by);
  return {
    ...told,
    isBetter: (proposal === undefined || isClearlySeen(proposal)) && wouldFitBetter(marks, told, picture),
    isSizeAssumed: proposal !== undefined && isAssumed(proposal),
  };
}

export function betterCoinInWords({ by, coins, isSizeAssumed }: Pick<CoinHint, 'by' | 'coins' | 'isSizeAssumed'>): string {
  const condition = !isSizeAssumed ? '' : by.kind === 'rule-ticks' ? ', if its ticks are 1 mm apart' : ', if it is of the common size';
  return `By “${scaleObjectName(by)}” in this picture${condition}, the coin chosen here does not fit; “${COIN_LABELS[coins[0]]}” would. Look once more which coin it is.`;
}
