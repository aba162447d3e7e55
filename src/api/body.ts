import { refuse } from '../domain/failure.ts';
import { BYTES, DEFAULT_JSON_LIMIT_BYTES, type Endpoint, FILE_LIMIT_BYTES } from './contract/endpoint.ts';
import { parseWith } from './parse.ts';

/**
 * The body of a request as its endpoint wants it: a parsed value, a stream of bytes that stops at the limit, or undefined.
 * Only the two media types of the contract are taken: neither can be sent by a form of a foreign page.
 */
export async function bodyOf(endpoint: Endpoint, request: Request): Promise<unknown> {
  if (endpoint.body === undefined) return undefined;
  if (endpoint.body === BYTES) {
    expectMediaType(request, 'application/octet-stream');
    return limited(request, endpoint.bodyLimitBytes ?? FILE_LIMIT_BYTES);
  }
  expectMediaType(request, 'application/json');
  const text = await textOf(limited(request, endpoint.bodyLimitBytes ?? DEFAULT_JSON_LIMIT_BYTES));
  return parseWith(endpoint.body, jsonOf(text), '');
}

function expectMediaType(request: Request, expected: string): void {
  const received = request.headers.get('content-type')?.split(';')[0]?.trim().toLowerCase() ?? 'none';
  if (received === expected) return;
  refuse({ code: 'input-invalid', issues: [{ field: 'content-type', problem: `Expected ${expected} but received ${received}` }] });
}

function limited(request: Request, limitBytes: number): ReadableStream<Uint8Array> {
  const tooLarge = { code: 'body-too-large', limitBytes } as const;
  if (Number(request.headers.get('content-length') ?? 0) > limitBytes) refuse(tooLarge);
  if (request.body === null) return new Blob([]).stream();
  let receivedBytes = 0;
  const counter = new TransformStream<Uint8Array, Uint8Array>({
    transform(chunk, controller) {
      receivedBytes += chunk.byteLength;
      if (receivedBytes > limitBytes) refuse(tooLarge);
      controller.enqueue(chunk);
    },
  });
  return request.body.pipeThrough(counter);
}

async function textOf(bytes: ReadableStream<Uint8Array>): Promise<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let text = '';
  for await (const chunk of bytes) text += decodeOrRefuse(() => decoder.decode(chunk, { stream: true }));
  return text + decodeOrRefuse(() => decoder.decode());
}

function decodeOrRefuse(decode: () => string): string {
  try {
    return decode();
  } catch {
    return refuse({ code: 'input-invalid', issues: [{ field: '', problem: 'Expected text in UTF-8 (RFC 8259, 8.1)' }] });
  }
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const problem = error instanceof SyntaxError ? error.message : 'Expected JSON';
    return refuse({ code: 'input-invalid', issues: [{ field: '', problem }] });
  }
}
