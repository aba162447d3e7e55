import type { ApiContext } from './context.ts';
import { archiveHandlers } from './handlers/archive.ts';
import { benchHandlers } from './handlers/bench.ts';
import { evidenceHandlers } from './handlers/evidence.ts';
import { findingHandlers } from './handlers/finding.ts';
import { forecastHandlers } from './handlers/forecasts.ts';
import { galleryHandlers } from './handlers/gallery.ts';
import { growthHandlers } from './handlers/growth.ts';
import { intakeHandlers } from './handlers/intake.ts';
import { photoHandlers } from './handlers/photos.ts';
import { removalHandlers } from './handlers/removals.ts';
import { sexingHandlers } from './handlers/sexing.ts';
import { specimenHandlers } from './handlers/specimens.ts';
import { statementHandlers } from './handlers/statements.ts';
import { watchHandlers } from './handlers/watch.ts';
import type { Handlers } from './route.ts';
import { createRouter, type RouterOptions } from './router.ts';

/** Answers every request under /api. */
export function createApi(context: ApiContext, options: RouterOptions): (request: Request) => Promise<Response> {
  const handlers: Handlers = {
    ...archiveHandlers(context),
    ...specimenHandlers(context),
    ...removalHandlers(context),
    ...photoHandlers(context),
    ...intakeHandlers(context),
    ...benchHandlers(context),
    ...findingHandlers(context),
    ...growthHandlers(context),
    ...forecastHandlers(context),
    ...galleryHandlers(context),
    ...sexingHandlers(context),
    ...watchHandlers(context),
    ...evidenceHandlers(context),
    ...statementHandlers(context),
  };
  return createRouter(handlers, options);
}
