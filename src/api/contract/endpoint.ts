import type { z } from 'zod';

/** Marks answers that are not JSON: the bytes of a file, a stream of server-sent events, nothing (204). */
export const BYTES = 'bytes';
export const EVENTS = 'events';
export const NOTHING = 'nothing';

/** What a JSON body may weigh unless its endpoint says otherwise. */
export const DEFAULT_JSON_LIMIT_BYTES = 1_048_576;
/** What a file sent as a body may weigh. */
export const FILE_LIMIT_BYTES = 4_294_967_296;

/**
 * One route, as data. The table of all of them (contract.ts) is read by the router, the OpenAPI description, the contract
 * tests and, as types only, by the renderer's client. Its key is the method and path: `GET /api/photos/{photoId}`.
 */
export interface Endpoint {
  readonly summary: string;
  readonly query?: z.ZodObject;
  /** A JSON body by its schema, or raw bytes. */
  readonly body?: z.ZodType | typeof BYTES;
  /** Largest body taken, in bytes, where the default does not fit. */
  readonly bodyLimitBytes?: number;
  readonly answer: z.ZodType | typeof BYTES | typeof EVENTS | typeof NOTHING;
  /** Changes a versioned record: the request must carry `If-Match: "<version>"`. */
  readonly versioned?: true;
  /** Answered with 201 or 202 instead of 200. */
  readonly status?: 201 | 202;
}
