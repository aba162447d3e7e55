import { calibrate } from '../../domain/measuring/calibrate.ts';
import { checkLandmarksWithinPicture, checkMarksWithinPicture } from '../../domain/measuring/withinPicture.ts';
import { unwrap } from '../../domain/result.ts';
import type { ApiContext } from '../context.ts';
import type { benchEndpoints } from '../contract/bench.ts';
import type { HandlersFor } from '../route.ts';
import { benchCandidatesOf } from '../views/benchCandidates.ts';
import { benchSheetOf } from '../views/benchSheet.ts';
import { agreementIn } from '../views/pointing.ts';
import { sizesOfSkin } from '../views/skins.ts';

export function benchHandlers({ archive }: ApiContext): HandlersFor<keyof typeof benchEndpoints> {
  return {
    'GET /api/bench': () => benchCandidatesOf(archive),
    'GET /api/exuviae/{exuviaId}/sizes': ({ path }) => sizesOfSkin(archive, path.exuviaId),
    'GET /api/photos/{photoId}/bench': ({ path }) => benchSheetOf(archive, path.photoId),
    'GET /api/agreement': () => agreementIn(archive),
    'PUT /api/photos/{photoId}/calibration': ({ path, body, version }) => {
      const photo = unwrap(archive.photos.get(path.photoId));
      // Marks that give no scale are refused with the reason; what they give is computed when it is wanted.
      for (const marks of [body.marks, body.check]) {
        if (!marks) continue;
        unwrap(checkMarksWithinPicture(marks, photo));
        unwrap(calibrate(marks, photo));
      }
      return unwrap(archive.calibrations.put(photo.id, version, body.marks, body.check));
    },
    'POST /api/photos/{photoId}/readings': ({ path, body }) => {
      unwrap(checkLandmarksWithinPicture(body.landmarks, unwrap(archive.photos.get(path.photoId))));
      return unwrap(archive.readings.create(path.photoId, body));
    },
    'PUT /api/readings/{readingId}': ({ path, body, version }) => {
      const { photoId } = unwrap(archive.readings.get(path.readingId));
      unwrap(checkLandmarksWithinPicture(body.landmarks, unwrap(archive.photos.get(photoId))));
      return unwrap(archive.readings.update(path.readingId, version, body));
    },
    'DELETE /api/readings/{readingId}': ({ path }) => unwrap(archive.removals.remove('reading', path.readingId)),
  };
}
