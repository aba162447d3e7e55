import { checkObservation } from '../../domain/care/appending.ts';
import type { Moment } from '../../domain/dates.ts';
import { unwrap } from '../../domain/result.ts';
import { checkLiveSign } from '../../domain/sexing/live/checkLiveSign.ts';
import type { LiveFinding } from '../../domain/sexing/live/liveSign.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import { keepersMoment, momentOnWall } from '../localTime.ts';
import type { SampleLiveSign, SampleMoment, SampleSpecimen } from './data.ts';
import type { Filling } from './filling.ts';

/** Signs of the animal itself, in order; those that came with its last molt name the last one on record so far. */
export function fillLiveSigns({ archive, dayOf }: Filling, specimen: Specimen, signs: readonly SampleLiveSign[]): void {
  for (const { cameWithLastMolt, finding, seenOn, ...known } of signs) {
    const molts = archive.molts.ofSpecimen(specimen.id);
    const named: LiveFinding =
      finding.kind === 'palpal-bulbs' && cameWithLastMolt ? { ...finding, ultimateMoltId: molts.at(-1)?.id ?? null } : finding;
    const draft = { ...known, finding: named, seenOn: dayOf(seenOn), photoIds: [] };
    const animalPhotoIds = new Set(archive.photos.ofAnimal(specimen.id).map(({ id }) => id));
    const checked = unwrap(checkLiveSign(draft, { today: dayOf(0), hatchedOn: specimen.hatchedOn, molts, animalPhotoIds }));
    unwrap(archive.liveSigns.sign(specimen.id, checked));
  }
}

export function fillObservations(filling: Filling, specimen: Specimen, observations: SampleSpecimen['observations']): void {
  const { archive, now, keeper } = filling;
  const molts = archive.molts.ofSpecimen(specimen.id);
  for (const { moment, ...known } of observations) {
    const draft = { ...known, moment: momentOf(moment, filling), observer: keeper, source: { kind: 'hand' } } as const;
    const before = archive.observations.ofSpecimen(specimen.id);
    unwrap(archive.observations.append(specimen.id, unwrap(checkObservation(draft, { specimen, observations: before, molts, now }))));
  }
}

const MS_PER_MINUTE = 60_000;

function momentOf(moment: SampleMoment, { now, dayOf }: Filling): Moment {
  if ('day' in moment) return momentOnWall(dayOf(moment.day), moment.clock);
  return keepersMoment(new Date(Date.parse(now) - moment.minutesBefore * MS_PER_MINUTE).toISOString());
}
