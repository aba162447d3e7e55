import { isOurAddress } from './address.ts';
import { washHeaders } from './headers.ts';

type Handle = (request: Request) => Promise<Response>;

/** Answers one request under our scheme: nothing for a foreign host, else what the core answers with its headers washed. */
export async function answerUnderScheme(request: Request, handle: Handle): Promise<Response> {
  if (!isOurAddress(request.url)) return new Response(null, { status: 404 });
  const { body, status, statusText, headers } = await handle(request);
  return new Response(body, { status, statusText, headers: washHeaders(headers) });
}
