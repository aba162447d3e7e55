import type { Archive } from '../../archive/archive.ts';
import { signsOfAnimal } from '../../domain/sexing/live/animalFacts.ts';
import type { LiveSign } from '../../domain/sexing/live/liveSign.ts';

/** Everything on record of one animal itself that speaks for its sex. */
export function animalSignsOf(archive: Archive, specimenId: string): LiveSign[] {
  return signsOfAnimal(archive.liveSigns.ofSpecimen(specimenId), archive.observations.ofSpecimen(specimenId));
}
