import { z } from 'zod';
import type { TaskSnapshot } from '../../domain/intake/task.ts';
import { unwrap } from '../../domain/result.ts';
import type { ApiContext } from '../context.ts';
import type { intakeEndpoints } from '../contract/intake.ts';
import { parseWith } from '../parse.ts';
import type { EventsAnswer, HandlersFor, ServerEvent } from '../route.ts';

export function intakeHandlers({ tasks, importer }: ApiContext): HandlersFor<keyof typeof intakeEndpoints> {
  const eventsOf = (taskId: string): EventsAnswer => ({
    current: () => {
      const { snapshot, revision } = unwrap(tasks.get(taskId));
      return eventOf(snapshot, revision);
    },
    subscribe: (listen) => tasks.subscribe(taskId, (snapshot, revision) => listen(eventOf(snapshot, revision))),
  });

  return {
    'POST /api/intakes': ({ body }) => ({ intakeId: importer.announce(body.files) }),
    'PUT /api/intakes/{intakeId}/files/{index}': async ({ path, body }) => {
      const index = parseWith(z.coerce.number().int().min(0), path.index, 'path.index');
      unwrap(await importer.receive(path.intakeId, index, body));
    },
    'POST /api/imports': ({ body }) => (body.intakeId === null ? importer.resume() : unwrap(importer.start(body.intakeId))),
    'DELETE /api/imports': async () => ({ files: await importer.giveUp() }),
    'GET /api/tasks': () => [...tasks.list()],
    'GET /api/tasks/{taskId}': ({ path }) => unwrap(tasks.get(path.taskId)).snapshot,
    'GET /api/tasks/{taskId}/events': ({ path }) => eventsOf(path.taskId),
    'DELETE /api/tasks/{taskId}': ({ path }) => unwrap(tasks.stop(path.taskId)),
  };
}

function eventOf(snapshot: TaskSnapshot, revision: number): ServerEvent {
  return { id: String(revision), data: JSON.stringify(snapshot), last: snapshot.state !== 'running' };
}
