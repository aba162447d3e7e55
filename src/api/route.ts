import type { z } from 'zod';
import type { Contract, ParsedBodyOf, ParsedQueryOf, PathParameters, RouteKey } from './contract/contract.ts';

type PathOf<Key extends RouteKey> = Key extends `${string} ${infer Path}` ? Path : never;

/** What a handler receives: every part already checked against the contract. */
export interface RouteInput<Key extends RouteKey> {
  readonly path: PathParameters<PathOf<Key>>;
  readonly query: ParsedQueryOf<Key>;
  readonly body: ParsedBodyOf<Key>;
  /** From If-Match, on versioned routes. */
  readonly version: Contract[Key] extends { versioned: true } ? number : undefined;
  /** Aborted when the asker has gone, as far as the shell can tell: a custom scheme never does. */
  readonly signal: AbortSignal;
}

/** The bytes of one file, opened only when they are wanted. */
export interface BytesAnswer {
  readonly mediaType: string;
  /** Names the content; with it the answer may be kept for ever. */
  readonly contentHash: string | null;
  open(): Promise<{ readonly stream: ReadableStream<Uint8Array>; readonly byteLength: number }>;
}

export interface ServerEvent {
  readonly id: string;
  readonly data: string;
  /** Nothing follows this one. */
  readonly last: boolean;
}

/** A source of server-sent events. Each carries the whole present state, so a reader may miss any but the last. */
export interface EventsAnswer {
  current(): ServerEvent;
  /** Calls `listen` at each change from now on; returns what ends that. */
  subscribe(listen: (event: ServerEvent) => void): () => void;
}

export type RouteAnswer<Key extends RouteKey> = Contract[Key]['answer'] extends infer Answer
  ? Answer extends z.ZodType
    ? z.output<Answer>
    : Answer extends 'bytes'
      ? BytesAnswer
      : Answer extends 'events'
        ? EventsAnswer
        : undefined
  : never;

export type Handler<Key extends RouteKey> = (input: RouteInput<Key>) => RouteAnswer<Key> | Promise<RouteAnswer<Key>>;

/** A handler for each of some keys: leaving one out does not compile. */
export type HandlersFor<Key extends RouteKey> = { readonly [K in Key]: Handler<K> };
export type Handlers = HandlersFor<RouteKey>;
