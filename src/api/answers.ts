import type { Failure } from '../domain/failure.ts';
import { STATUS_OF } from './failures.ts';
import type { BytesAnswer } from './route.ts';

export function failureResponse(failure: Failure): Response {
  return jsonResponse({ failure }, STATUS_OF[failure.code]);
}

export function jsonResponse(value: unknown, status: number): Response {
  return new Response(JSON.stringify(value), {
    status,
    headers: { 'content-type': 'application/json; charset=utf-8', 'cache-control': 'no-store' },
  });
}

/** A file's bytes; 304 when the page holds them already (RFC 9110, 13.1.2). */
export async function bytesResponse(answer: BytesAnswer, request: Request): Promise<Response> {
  const headers = new Headers({ 'content-type': answer.mediaType });
  if (answer.contentHash === null) headers.set('cache-control', 'no-store');
  else {
    headers.set('etag', `"${answer.contentHash}"`);
    headers.set('cache-control', 'private, max-age=31536000, immutable');
    if (holds(request.headers.get('if-none-match'), answer.contentHash)) return new Response(null, { status: 304, headers });
  }
  const { stream, byteLength } = await answer.open();
  headers.set('content-length', String(byteLength));
  return new Response(stream, { headers });
}

function holds(ifNoneMatch: string | null, contentHash: string): boolean {
  const tags = ifNoneMatch?.split(',').map((tag) => tag.trim().replace(/^W\//, '')) ?? [];
  return tags.includes('*') || tags.includes(`"${contentHash}"`);
}
