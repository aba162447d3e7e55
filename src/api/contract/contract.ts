import type { z } from 'zod';
import { archiveEndpoints } from './archive.ts';
import { benchEndpoints } from './bench.ts';
import type { Endpoint } from './endpoint.ts';
import { evidenceEndpoints } from './evidence.ts';
import { findingEndpoints } from './finding.ts';
import { forecastEndpoints } from './forecasts.ts';
import { galleryEndpoints } from './gallery.ts';
import { growthEndpoints } from './growth.ts';
import { intakeEndpoints } from './intake.ts';
import { photoEndpoints } from './photos.ts';
import { removalEndpoints } from './removals.ts';
import { sexingEndpoints } from './sexing.ts';
import { specimenEndpoints } from './specimens.ts';
import { statementEndpoints } from './statements.ts';
import { watchEndpoints } from './watch.ts';

/** Every route of Exuviary. */
export const contract = {
  ...archiveEndpoints,
  ...specimenEndpoints,
  ...removalEndpoints,
  ...photoEndpoints,
  ...intakeEndpoints,
  ...benchEndpoints,
  ...findingEndpoints,
  ...growthEndpoints,
  ...forecastEndpoints,
  ...galleryEndpoints,
  ...sexingEndpoints,
  ...watchEndpoints,
  ...evidenceEndpoints,
  ...statementEndpoints,
} as const satisfies Record<string, Endpoint>;

export type Contract = typeof contract;
export type RouteKey = keyof Contract;

/** `{photoId}` in a path becomes a required string parameter. */
export type PathParameters<Path extends string> = Path extends `${string}{${infer Name}}${infer Rest}`
  ? Record<Name, string> & PathParameters<Rest>
  : Record<never, string>;

type Field<E, Name extends string> = E extends Record<Name, infer Value> ? Value : undefined;

/** What a caller sends: the body and query before parsing. */
export type BodyOf<Key extends RouteKey> =
  Field<Contract[Key], 'body'> extends infer B ? (B extends z.ZodType ? z.input<B> : B extends 'bytes' ? Blob : undefined) : never;
export type QueryOf<Key extends RouteKey> =
  Field<Contract[Key], 'query'> extends infer Q ? (Q extends z.ZodType ? z.input<Q> : undefined) : never;
/** What a caller gets back from a JSON route; `undefined` from one that answers nothing. */
export type AnswerOf<Key extends RouteKey> = Contract[Key]['answer'] extends infer A
  ? A extends z.ZodType
    ? z.output<A>
    : A extends 'nothing'
      ? undefined
      : never
  : never;
/** What a handler receives. */
export type ParsedBodyOf<Key extends RouteKey> =
  Field<Contract[Key], 'body'> extends infer B
    ? B extends z.ZodType
      ? z.output<B>
      : B extends 'bytes'
        ? ReadableStream<Uint8Array>
        : undefined
    : never;
export type ParsedQueryOf<Key extends RouteKey> =
  Field<Contract[Key], 'query'> extends infer Q ? (Q extends z.ZodType ? z.output<Q> : undefined) : never;
