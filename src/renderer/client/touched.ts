import type { RouteKey } from '../../api/contract/contract.ts';

export type ReadKey = Extract<RouteKey, `GET ${string}`>;
export type ChangeKey = Exclude<RouteKey, ReadKey>;

const WATCH = [
  'GET /api/watch',
  'GET /api/watch/pairing',
  'GET /api/specimens/{specimenId}/observations',
] as const satisfies readonly ReadKey[];

const FORECASTS = ['GET /api/forecasts/scores', 'GET /api/specimens/{specimenId}/forecasts'] as const satisfies readonly ReadKey[];

const ANIMALS = [
  'GET /api/about',
  'GET /api/specimens',
  'GET /api/specimens/{specimenId}',
  'GET /api/specimens/{specimenId}/ladder',
  'GET /api/bench',
  'GET /api/agreement',
  'GET /api/exuviae',
  'GET /api/exuviae/{exuviaId}/examination',
  'GET /api/exuviae/{exuviaId}/sizes',
  'GET /api/specimens/{specimenId}/sex-statement',
  'GET /api/outcomes',
  ...WATCH,
  ...FORECASTS,
] as const satisfies readonly ReadKey[];

const LIVE_SIGNS = [...ANIMALS, 'GET /api/specimens/{specimenId}/live-signs'] as const satisfies readonly ReadKey[];

const PHOTOS = ['GET /api/photos', 'GET /api/photos/{photoId}', 'GET /api/photos/{photoId}/bench'] as const satisfies readonly ReadKey[];

const PRINT_CHECKS = ['GET /api/print-checks', 'GET /api/photos/{photoId}/proposals'] as const satisfies readonly ReadKey[];

const EVERYTHING = [...ANIMALS, ...PHOTOS, 'GET /api/removals'] as const;

/**
 * Which answers a change makes stale. The Bench keeps its own sheet while it is open, so saving marks or a reading does
 * not ask for the sheet again under the keeper's hand.
 */
export const READS_TOUCHED_BY: Readonly<Record<ChangeKey, readonly ReadKey[]>> = {
  'PUT /api/preferences': ['GET /api/preferences', 'GET /api/watch'],
  'POST /api/sample-cabinet': ['GET /api/tasks'],
  'DELETE /api/sample-cabinet': EVERYTHING,
  'POST /api/specimens': ANIMALS,
  'PUT /api/specimens/{specimenId}': [...ANIMALS, 'GET /api/photos/{photoId}/bench'],
  // Not its own page, which would only learn that it is gone: whoever removes an animal leaves that page and forgets it.
  'DELETE /api/specimens/{specimenId}': EVERYTHING.filter((read) => read !== 'GET /api/specimens/{specimenId}'),
  'POST /api/specimens/{specimenId}/molts': ANIMALS,
  'PUT /api/molts/{moltId}': [...ANIMALS, 'GET /api/photos/{photoId}/bench'],
  'DELETE /api/molts/{moltId}': EVERYTHING,
  'POST /api/specimens/{specimenId}/cuts': ['GET /api/tasks'],
  'POST /api/specimens/{specimenId}/gaps': [...ANIMALS, 'GET /api/photos/{photoId}/bench'],
  'POST /api/specimens/{specimenId}/closed-gaps': [...ANIMALS, 'GET /api/photos/{photoId}/bench'],
  'POST /api/specimens/{specimenId}/renumberings': [...ANIMALS, 'GET /api/photos/{photoId}/bench'],
  'POST /api/specimens/{specimenId}/forecasts': FORECASTS,
  'POST /api/molts/{moltId}/exuvia': ANIMALS,
  'PUT /api/exuviae/{exuviaId}': ANIMALS,
  'DELETE /api/exuviae/{exuviaId}': EVERYTHING,
  'POST /api/removals/{removalId}/restoration': [...EVERYTHING, ...PRINT_CHECKS],
  'PUT /api/photos/{photoId}': EVERYTHING,
  'DELETE /api/photos/{photoId}': EVERYTHING,
  'POST /api/intakes': [],
  'PUT /api/intakes/{intakeId}/files/{index}': [],
  'POST /api/imports': ['GET /api/about', 'GET /api/tasks'],
  'DELETE /api/imports': ['GET /api/about'],
  'DELETE /api/tasks/{taskId}': ['GET /api/tasks'],
  'PUT /api/photos/{photoId}/calibration': ANIMALS,
  'POST /api/photos/{photoId}/refinement': [],
  'POST /api/print-checks': PRINT_CHECKS,
  'DELETE /api/print-checks/{printCheckId}': [...PRINT_CHECKS, 'GET /api/removals'],
  'POST /api/photos/{photoId}/readings': ANIMALS,
  'PUT /api/readings/{readingId}': ANIMALS,
  'DELETE /api/readings/{readingId}': EVERYTHING,
  'POST /api/exuviae/{exuviaId}/determinations': ANIMALS,
  'POST /api/determinations/{determinationId}/withdrawal': ANIMALS,
  'POST /api/specimens/{specimenId}/observations': [...WATCH, 'GET /api/specimens', 'GET /api/specimens/{specimenId}'],
  'DELETE /api/observations/{observationId}': [...WATCH, 'GET /api/specimens', 'GET /api/specimens/{specimenId}', 'GET /api/removals'],
  // The page that reads a skin keeps its own reading while it is open.
  'PUT /api/exuviae/{exuviaId}/examination': [],
  'POST /api/specimens/{specimenId}/live-signs': LIVE_SIGNS,
  'POST /api/live-signs/{liveSignId}/withdrawal': LIVE_SIGNS,
  'PUT /api/genera/{genus}': ['GET /api/genera', 'GET /api/genera/{genus}', 'GET /api/exuviae/{exuviaId}/examination'],
  'PUT /api/evidence-model': ['GET /api/evidence-model', 'GET /api/exuviae/{exuviaId}/examination'],
};
