import { unwrap } from '../../domain/result.ts';
import { scaleCardPdf } from '../../exchange/scaleCard/scaleCardPdf.ts';
import type { ApiContext } from '../context.ts';
import type { findingEndpoints } from '../contract/finding.ts';
import type { HandlersFor } from '../route.ts';

export function findingHandlers({ scaleFinding }: ApiContext): HandlersFor<keyof typeof findingEndpoints> {
  return {
    'GET /api/photos/{photoId}/proposals': async ({ path, signal }) => [...unwrap(await scaleFinding.proposals(path.photoId, signal))],
    'POST /api/photos/{photoId}/refinement': async ({ path, body, signal }) =>
      unwrap(await scaleFinding.refine(path.photoId, body, signal)),
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
