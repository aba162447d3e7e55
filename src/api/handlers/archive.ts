import { unwrap } from '../../domain/result.ts';
import { startSampleCabinet } from '../../tasks/sampleCabinet/start.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { archiveEndpoints } from '../contract/archive.ts';
import { openApiDescription } from '../openapi.ts';
import type { EventsAnswer, HandlersFor } from '../route.ts';

/** Says nothing after the first event: that it stays open is all it is for. */
const PRESENCE: EventsAnswer = {
  current: () => ({ id: 'here', data: '{}', last: false }),
  subscribe: () => () => undefined,
};

export function archiveHandlers(context: ApiContext): HandlersFor<keyof typeof archiveEndpoints> {
  const { archive, importer } = context;
  return {
    'GET /api/about': () => {
      const { all, samples } = archive.specimens.count();
      return {
        version: context.version,
        archiveFolder: archive.folder,
        today: todayOf(context),
        specimens: all,
        samples,
        photos: archive.photos.count(),
        unfinishedFiles: importer.unfinishedCount(),
        unreadableRecords: [...archive.damaged()],
      };
    },
    'GET /api/presence': () => PRESENCE,
    'GET /api/preferences': () => archive.preferences.get(),
    'PUT /api/preferences': ({ body }) => archive.preferences.set(body),
    'POST /api/sample-cabinet': async () =>
      unwrap(
        await startSampleCabinet(archive, context.tasks, {
          folder: context.sampleFolder,
          genera: context.genera,
          now: context.ambient.now(),
        }),
      ),
    'DELETE /api/sample-cabinet': () => unwrap(archive.removals.removeSamples()),
    'GET /api/openapi.json': () => ({
      mediaType: 'application/json; charset=utf-8',
      contentHash: null,
      open: async () => {
        const text = new Blob([JSON.stringify(openApiDescription(context.version), null, 2)]);
        return { stream: text.stream(), byteLength: text.size };
      },
    }),
  };
}
