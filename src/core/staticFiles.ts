import { readdir, readFile } from 'node:fs/promises';
import { extname, join, relative, sep } from 'node:path';
import { contentSecurityPolicy } from './policy.ts';

const MEDIA_TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.txt': 'text/plain; charset=utf-8',
};

/** Answers a request for a file of the page, or null when there is no file of that name. */
export type StaticFiles = (request: Request) => Promise<Response | null>;

/**
 * Serves the files that lie in `folder` now, by a list made once: a request can only name an entry of that list, so there is
 * no path to escape from. Files under `assets/` carry a hash of their content in their name and may be kept for ever.
 *
 * @throws the error of the file system when the folder or its index.html cannot be read.
 */
export async function listStaticFiles(folder: string): Promise<StaticFiles> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = new Map(
    entries
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .map((path) => [`/${relative(folder, path).split(sep).join('/')}`, path]),
  );
  const index = join(folder, 'index.html');
  await readFile(index);
  files.set('/', index);
  return async (request) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') return null;
    const { pathname } = new URL(request.url);
    const path = files.get(pathname);
    return path === undefined ? null : fileResponse(path, pathname, request.method === 'HEAD');
  };
}

async function fileResponse(path: string, pathname: string, headOnly: boolean): Promise<Response> {
  const bytes = await readFile(path);
  const extension = extname(path);
  const headers = new Headers({
    'content-type': MEDIA_TYPES[extension] ?? 'application/octet-stream',
    'content-length': String(bytes.byteLength),
    'cache-control': pathname.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
  });
  if (extension === '.html') headers.set('content-security-policy', contentSecurityPolicy());
  return new Response(headOnly ? null : new Uint8Array(bytes), { headers });
}
