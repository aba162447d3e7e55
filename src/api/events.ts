import type { EventsAnswer, ServerEvent } from './route.ts';

/** Comment lines this often, so that a reader that went away is noticed. */
export const COMMENT_EVERY_MS = 15_000;

/**
 * Server-sent events (WHATWG HTML, 9.2). A slow reader gets the newest state when it is ready, not every state in between.
 * A reader that comes back having seen the last event gets 204, which tells it not to come back again.
 */
export function eventsResponse(answer: EventsAnswer, request: Request): Response {
  const present = answer.current();
  if (present.last && present.id === request.headers.get('last-event-id')) return new Response(null, { status: 204 });
  return new Response(eventStream(answer, present), {
    headers: { 'content-type': 'text/event-stream; charset=utf-8', 'cache-control': 'no-store' },
  });
}

/** Ends by itself after the last event; a reader that leaves cancels it. Never relies on the request's abort signal: a custom scheme has none. */
function eventStream(answer: EventsAnswer, present: ServerEvent): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  let waiting: ServerEvent | null = present;
  let release = (): void => undefined;

  const deliver = (controller: ReadableStreamDefaultController<Uint8Array>): void => {
    if (waiting === null || (controller.desiredSize ?? 0) <= 0) return;
    const event = waiting;
    waiting = null;
    controller.enqueue(encoder.encode(textOf(event)));
    if (!event.last) return;
    release();
    controller.close();
  };

  return new ReadableStream<Uint8Array>({
    start(controller) {
      const unsubscribe = answer.subscribe((event) => {
        waiting = event;
        deliver(controller);
      });
      const comment = (): void => {
        if ((controller.desiredSize ?? 0) > 0) controller.enqueue(encoder.encode(': still here\n\n'));
      };
      const commenting = setInterval(comment, COMMENT_EVERY_MS);
      release = () => {
        clearInterval(commenting);
        unsubscribe();
      };
      deliver(controller);
    },
    pull: deliver,
    cancel: () => release(),
  });
}

function textOf(event: ServerEvent): string {
  const lines = event.data.split('\n').map((line) => `data: ${line}\n`);
  return `id: ${event.id}\n${lines.join('')}\n`;
}
