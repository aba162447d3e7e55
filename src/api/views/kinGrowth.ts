import type { Archive } from '../../archive/archive.ts';
import type { Pointing } from '../../domain/agreement/pointing.ts';
import { areSiblings, eggSacOf } from '../../domain/growth/kin.ts';
import { growthSteps, isOneMolt, type MeasuredStep } from '../../domain/growth/measuredStep.ts';
import type { KinLogRatios } from '../../domain/growth/missed/growthBelief.ts';
import { placeMoltsIfSound } from '../../domain/growth/positions.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import { carapaceOnly } from './measurements.ts';
import { moltedSkinsOf, skinSizesOf } from './skins.ts';

export interface KinGrowth {
  readonly siblings: number;
  readonly logRatios: KinLogRatios;
}

/** More siblings than this add nothing that could be seen, and each has to be measured. */
const MOST_SIBLINGS = 12;

/** Growth of the measured siblings from one egg sac, molt by molt; one whose instar numbers contradict each other is left out. */
export function kinGrowthOf(archive: Archive, specimen: Specimen, pointing: Pointing): KinGrowth {
  if (eggSacOf(specimen) === null) return { siblings: 0, logRatios: [] };
  const siblings: KinLogRatios[] = [];
  for (const other of archive.specimens.list()) {
    if (other.id === specimen.id || !areSiblings(specimen, other)) continue;
    const steps = growthSteps(measuredStepsOf(archive, other, pointing)).filter(isOneMolt);
    if (steps.length > 0) siblings.push(steps.map(({ logRatio }) => logRatio));
    if (siblings.length === MOST_SIBLINGS) break;
  }
  return { siblings: siblings.length, logRatios: siblings.flat() };
}

/** The carapace lengths of an animal along its steps, without measuring its legs. */
function measuredStepsOf(archive: Archive, specimen: Specimen, pointing: Pointing): MeasuredStep[] {
  const positions = placeMoltsIfSound(archive.molts.ofSpecimen(specimen.id), specimen);
  if (!positions) return [];
  return moltedSkinsOf(archive, specimen.id, pointing, carapaceOnly).flatMap((skin, index) => {
    const position = positions[index];
    const size = skinSizesOf(skin).carapaceLengthMm;
    if (!position?.stepKnown || !size) return [];
    return [{ moltId: skin.molt.id, step: position.step, lengthMm: size.value, uncertaintyMm: size.standardUncertainty }];
  });
}
