import { unwrap } from '../../domain/result.ts';
import type { ApiContext } from '../context.ts';
import type { removalEndpoints } from '../contract/removals.ts';
import type { HandlersFor } from '../route.ts';

export function removalHandlers({ archive }: ApiContext): HandlersFor<keyof typeof removalEndpoints> {
  return {
    'GET /api/removals': () => [...archive.removals.pending()],
    'GET /api/removals/preview': ({ query }) => unwrap(archive.removals.preview(query.kind, query.id)),
    'POST /api/removals/{removalId}/restoration': ({ path }) => unwrap(archive.removals.restore(path.removalId)),
  };
}
