import { refuse } from '../../domain/failure.ts';
import { unwrap } from '../../domain/result.ts';
import { scaleCardPdf } from '../../exchange/scaleCard/scaleCardPdf.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { findingEndpoints } from '../contract/finding.ts';
import type { HandlersFor } from '../route.ts';

export function findingHandlers(context: ApiContext): HandlersFor<keyof typeof findingEndpoints> {
  const { archive, scaleFinding } = context;
  return {
    'GET /api/photos/{photoId}/proposals': async ({ path, signal }) => [...unwrap(await scaleFinding.proposals(path.photoId, signal))],
    'POST /api/photos/{photoId}/refinement': async ({ path, body, signal }) =>
      unwrap(await scaleFinding.refine(path.photoId, body, signal)),
    'GET /api/print-checks': () => [...archive.printChecks.list()],
    'POST /api/print-checks': ({ body }) => {
      if (body.checkedOn > todayOf(context)) refuse({ code: 'date-in-future', field: 'checkedOn', date: body.checkedOn });
      return unwrap(archive.printChecks.add(body));
    },
    'DELETE /api/print-checks/{printCheckId}': ({ path }) => unwrap(archive.removals.remove('print-check', path.printCheckId)),
    'GET /api/scale-card.pdf': ({ query }) => ({
      mediaType: 'application/pdf',
      contentHash: null,
      open: async () => {
        const pdf = new Blob([new Uint8Array(await scaleCardPdf(query.sheet))]);
        return { stream: pdf.stream(), byteLength: pdf.size };
      },
    }),
  };
}
