import { type Context, Hono } from 'hono';
import { z } from 'zod';
import { Refusal } from '../domain/failure.ts';
import { bytesResponse, failureResponse, jsonResponse } from './answers.ts';
import { bodyOf } from './body.ts';
import { contract, type RouteKey } from './contract/contract.ts';
import { BYTES, type Endpoint, EVENTS, NOTHING } from './contract/endpoint.ts';
import { eventsResponse } from './events.ts';
import { parseWith, versionOf } from './parse.ts';
import type { BytesAnswer, EventsAnswer, Handlers } from './route.ts';

export interface RouterOptions {
  /** Makes the reference under which a defect is logged and shown. */
  readonly newReference: () => string;
  /** Called once for each defect: whatever was thrown that is not a Refusal. */
  readonly logDefect: (reference: string, error: unknown) => void;
}

/** The handlers as the router calls them: the contract has checked the input, the compiler has checked each handler. */
type UncheckedHandler = (input: {
  path: object;
  query: unknown;
  body: unknown;
  version: number | undefined;
  signal: AbortSignal;
}) => unknown;

const PathParameter = z.string().min(1).max(200);

/** Answers every request under /api: a value of the contract, or `{ failure }` with the status of its code. Never throws. */
export function createRouter(handlers: Handlers, options: RouterOptions): (request: Request) => Promise<Response> {
  const app = new Hono();
  for (const [key, endpoint] of Object.entries(contract) as [RouteKey, Endpoint][]) {
    const { method, path } = partsOf(key);
    const handler = handlers[key] as UncheckedHandler;
    app.on(method, path.replace(/\{(\w+)\}/g, ':$1'), async (context) => {
      const response = await answer(key, endpoint, handler, context);
      // A HEAD is answered like the GET but for the body: what stands behind that must be let go.
      if (context.req.raw.method === 'HEAD') await response.body?.cancel();
      return response;
    });
  }
  app.notFound((context) => failureResponse({ code: 'no-such-route', method: context.req.method, path: context.req.path }));
  app.onError((error) => {
    if (error instanceof Refusal) return failureResponse(error.failure);
    const reference = options.newReference();
    options.logDefect(reference, error);
    return failureResponse({ code: 'defect', reference });
  });
  return async (request) => app.fetch(request);
}

export function partsOf(key: RouteKey): { method: string; path: string } {
  const space = key.indexOf(' ');
  return { method: key.slice(0, space), path: key.slice(space + 1) };
}

async function answer(key: RouteKey, endpoint: Endpoint, handler: UncheckedHandler, context: Context): Promise<Response> {
  const request = context.req.raw;
  const value = await handler({
    path: parseWith(z.record(z.string(), PathParameter), context.req.param(), 'path'),
    query: endpoint.query === undefined ? undefined : parseWith(endpoint.query, context.req.query(), 'query'),
    version: endpoint.versioned ? versionOf(request, key) : undefined,
    body: await bodyOf(endpoint, request),
    signal: request.signal,
  });
  if (endpoint.answer === NOTHING) return new Response(null, { status: 204 });
  if (endpoint.answer === BYTES) return bytesResponse(value as BytesAnswer, request);
  if (endpoint.answer === EVENTS) return eventsResponse(value as EventsAnswer, request);
  return jsonResponse(value, endpoint.status ?? 200);
}
