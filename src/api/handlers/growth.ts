import type { ApiContext } from '../context.ts';
import type { growthEndpoints } from '../contract/growth.ts';
import type { HandlersFor } from '../route.ts';
import { ladderPageOf } from '../views/ladderPage.ts';

export function growthHandlers({ archive }: ApiContext): HandlersFor<keyof typeof growthEndpoints> {
  return {
    'GET /api/specimens/{specimenId}/ladder': ({ path }) => ladderPageOf(archive, path.specimenId),
  };
}
