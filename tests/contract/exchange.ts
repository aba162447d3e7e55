import { expect } from 'vitest';
import { z } from 'zod';
import { type AnswerOf, type BodyOf, contract, type PathParameters, type QueryOf, type RouteKey } from '../../src/api/contract/contract.ts';
import type { Endpoint } from '../../src/api/contract/endpoint.ts';
import { Failure, type FailureCode } from '../../src/domain/failure.ts';
import type { Asked, Road } from './roads.ts';

type PathOf<Key extends RouteKey> = Key extends `${string} ${infer Path}` ? Path : never;

/** What earlier exchanges have learned: identifiers and versions, by a name of the test's own. */
export type Memory = Map<string, string>;

export interface Question<Key extends RouteKey> {
  readonly path?: PathParameters<PathOf<Key>>;
  readonly query?: QueryOf<Key>;
  readonly body?: BodyOf<Key> extends Blob ? Uint8Array<ArrayBuffer> : BodyOf<Key>;
  readonly version?: number;
  readonly headers?: Readonly<Record<string, string>>;
}

/** A question put on a road, and what must come back. */
export interface Exchange {
  readonly key: RouteKey;
  readonly title: string;
  /** The code of the failure that must come back instead of an answer. */
  readonly fails: FailureCode | null;
  run(road: Road, memory: Memory): Promise<void>;
}

/** Looks at the value of a JSON answer, or at the response itself. */
type Check = (answer: never, response: Response, memory: Memory) => void | Promise<void>;

/** An exchange that succeeds: the status is the contract's, the answer fits its schema exactly, and `check` looks at it. */
export function succeeds<Key extends RouteKey>(
  key: Key,
  title: string,
  question: (memory: Memory) => Question<Key>,
  check: (answer: AnswerOf<Key>, response: Response, memory: Memory) => void | Promise<void> = () => undefined,
): Exchange {
  return {
    key,
    title,
    fails: null,
    async run(road, memory) {
      const response = await road.ask(askedFrom(key, question(memory)));
      await expectAnswer(contract[key], response, check, memory);
    },
  };
}

/** An exchange that is refused: with the failure's status, as data, the same on every road. */
export function fails<Key extends RouteKey>(
  key: Key,
  title: string,
  fails: FailureCode,
  status: number,
  question: (memory: Memory) => Question<Key>,
): Exchange {
  return {
    key,
    title,
    fails,
    async run(road, memory) {
      const response = await road.ask(askedFrom(key, question(memory)));
      const body = z.strictObject({ failure: Failure }).parse(await response.json());
      expect([body.failure.code, response.status]).toEqual([fails, status]);
    },
  };
}

async function expectAnswer(endpoint: Endpoint, response: Response, check: Check, memory: Memory): Promise<void> {
  const { answer } = endpoint;
  if (answer instanceof z.ZodType) {
    const text = await response.text();
    expect([response.status, response.status < 300 ? '' : text]).toEqual([endpoint.status ?? 200, '']);
    const value: unknown = JSON.parse(text);
    expect(response.headers.get('content-type')).toBe('application/json; charset=utf-8');
    // Equal to itself after parsing: the schema dropped nothing, so nothing came that the contract does not name.
    expect(answer.parse(value)).toEqual(value);
    return check(value as never, response, memory);
  }
  expect(response.status).toBe(answer === 'nothing' ? 204 : 200);
  return check(null as never, response, memory);
}

export function askedFrom<Key extends RouteKey>(key: Key, question: Question<Key>): Asked {
  const [method = '', template = ''] = key.split(' ');
  const parameters: Record<string, string> = question.path ?? {};
  const path = template.replace(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(parameters[name] ?? ''));
  const query = new URLSearchParams(Object.entries(question.query ?? {}).map(([name, value]) => [name, String(value)]));
  const { body } = question;
  const raw = body instanceof Uint8Array;
  return {
    method,
    path: query.size === 0 ? path : `${path}?${query}`,
    headers: {
      ...(body === undefined ? {} : { 'content-type': raw ? 'application/octet-stream' : 'application/json' }),
      ...(question.version === undefined ? {} : { 'if-match': `"${question.version}"` }),
      ...question.headers,
    },
    ...(body === undefined ? {} : { body: raw ? body : JSON.stringify(body) }),
  };
}

export function recall(memory: Memory, name: string): string {
  const value = memory.get(name);
  if (value === undefined) throw new Error(`Expected an earlier exchange to have learned ${name}`);
  return value;
}
