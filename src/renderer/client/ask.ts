import type { AnswerOf, BodyOf, Contract, PathParameters, QueryOf, RouteKey } from '../../api/contract/contract.ts';
import { Failure, Refusal } from '../../domain/failure.ts';

type PathOf<Key extends RouteKey> = Key extends `${string} ${infer Path}` ? Path : never;
type Needed<Name extends string, Value> = [Value] extends [undefined] ? unknown : Record<Name, Value>;
type NeededPath<Key extends RouteKey> = keyof PathParameters<PathOf<Key>> extends never ? unknown : { path: PathParameters<PathOf<Key>> };

export type Question<Key extends RouteKey> = NeededPath<Key> &
  Needed<'body', BodyOf<Key>> & {
    query?: QueryOf<Key>;
    /** Version the change is based on; sent as If-Match. */
    version?: number;
    signal?: AbortSignal;
  };

interface LooseQuestion {
  path?: Record<string, string>;
  body?: unknown;
  query?: object | undefined;
  version?: number;
  signal?: AbortSignal;
}

/** The address of a route, for `img` sources and event streams. */
export function addressOf<Key extends RouteKey>(key: Key, path: PathParameters<PathOf<Key>>): string {
  const parameters: Record<string, string> = path;
  const template = key.slice(key.indexOf(' ') + 1);
  return template.replace(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(parameters[name] ?? ''));
}

/** Answers the value of the route, or throws a Refusal that carries the failure; trouble on the way is `unreachable`. */
export async function ask<Key extends RouteKey>(key: Key, question: Question<Key>): Promise<AnswerOf<Key>> {
  const loose = question as LooseQuestion;
  const method = key.slice(0, key.indexOf(' '));
  const address = addressOf(key, (loose.path ?? {}) as PathParameters<PathOf<Key>>) + queryString(loose.query);
  const raw = loose.body instanceof Blob;
  const headers: Record<string, string> = {};
  if (loose.body !== undefined) headers['content-type'] = raw ? 'application/octet-stream' : 'application/json';
  if (loose.version !== undefined) headers['if-match'] = `"${loose.version}"`;
  const init: RequestInit = { method, headers };
  if (loose.body !== undefined) init.body = raw ? (loose.body as Blob) : JSON.stringify(loose.body);
  if (loose.signal) init.signal = loose.signal;

  return exchange(address, init, async (response) => (response.status === 204 ? undefined : await response.json()) as AnswerOf<Key>);
}

type BytesKey = Extract<{ [Key in RouteKey]: Contract[Key]['answer'] extends 'bytes' ? Key : never }[RouteKey], `GET ${string}`>;

/**
 * The bytes of a route that answers a file; otherwise as `ask`. They come from this machine: a copy in the browser's own
 * cache would be written in vain and read more slowly (9 MB: 35 ms from the archive, 87 ms from that cache).
 */
export function askBytes<Key extends BytesKey>(key: Key, path: PathParameters<PathOf<Key>>, signal: AbortSignal): Promise<Blob> {
  return exchange(addressOf(key, path), { signal, cache: 'no-store' }, (response) => response.blob());
}

/** The only caller of fetch. An answer that breaks off while it is read has not arrived either. */
async function exchange<Value>(address: string, init: RequestInit, read: (response: Response) => Promise<Value>): Promise<Value> {
  let response: Response;
  try {
    response = await fetch(address, init);
    if (response.ok) return await read(response);
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') throw error;
    throw new Refusal({ code: 'unreachable' });
  }
  throw new Refusal(await failureIn(response));
}

async function failureIn(response: Response): Promise<Failure> {
  const body: unknown = await response.json().catch(() => null);
  const parsed = Failure.safeParse(body !== null && typeof body === 'object' && 'failure' in body ? body.failure : null);
  return parsed.success ? parsed.data : { code: 'unreachable' };
}

function queryString(query: object | undefined): string {
  const pairs = Object.entries(query ?? {}).filter(([, value]) => value !== undefined && value !== null);
  return pairs.length === 0 ? '' : `?${new URLSearchParams(pairs.map(([name, value]) => [name, String(value)]))}`;
}
