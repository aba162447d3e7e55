import { describe, expect, it } from 'vitest';
import { contract, type RouteKey } from '../../src/api/contract/contract.ts';
import type { Handlers } from '../../src/api/route.ts';
import { createRouter } from '../../src/api/router.ts';
import { Refusal } from '../../src/domain/failure.ts';

/** A router whose handlers answer what they received, but for those given. */
function router(own: Partial<Handlers> = {}) {
  const defects: [reference: string, error: unknown][] = [];
  const echo = Object.fromEntries(Object.keys(contract).map((key) => [key, (input: unknown) => input]));
  const handle = createRouter({ ...echo, ...own } as unknown as Handlers, {
    newReference: () => 'reference',
    logDefect: (reference, error) => void defects.push([reference, error]),
  });
  const ask = (key: string, path: string, init: RequestInit & { duplex?: 'half' } = {}) => {
    const method = key.split(' ')[0] ?? '';
    return handle(new Request(`http://127.0.0.1${path}`, { method, ...init }));
  };
  return { ask, defects };
}

const json = (body: unknown, headers: Record<string, string> = {}): RequestInit => ({
  body: typeof body === 'string' ? body : JSON.stringify(body),
  headers: { 'content-type': 'application/json', ...headers },
});
const preferences = { theme: 'dark', inches: true, begunEmpty: false, observer: 'R. Reader' };
const withdraw: RouteKey = 'POST /api/determinations/{determinationId}/withdrawal';

async function failureOf(response: Response) {
  const { failure } = (await response.json()) as { failure: Record<string, unknown> };
  return { status: response.status, ...failure };
}

describe('the router', () => {
  it('hands a handler what the contract makes of the request', async () => {
    const { ask } = router();
    const response = await ask(withdraw, '/api/determinations/a%20b/withdrawal', json({ reason: '  misread ', more: 1 }));
    expect(response.status).toBe(200);
    expect(await response.json()).toEqual({ path: { determinationId: 'a b' }, body: { reason: 'misread' }, signal: {} });
  });
  it('makes a query what the contract says it is', async () => {
    const { ask } = router();
    expect(await (await ask('GET', '/api/photos?unassigned=true')).json()).toMatchObject({ query: { unassigned: true } });
    expect(await (await ask('GET', '/api/photos')).json()).toMatchObject({ query: { unassigned: false } });
    expect(await failureOf(await ask('GET', '/api/photos?unassigned=perhaps'))).toMatchObject({ code: 'input-invalid' });
  });
  it('names every field that is wrong', async () => {
    const { ask } = router();
    const failure = await failureOf(await ask('PUT', '/api/preferences', json({ theme: 'pink', inches: true })));
    expect(failure).toMatchObject({ status: 400, code: 'input-invalid' });
    expect(failure).toHaveProperty('issues', [expect.objectContaining({ field: 'theme' }), expect.objectContaining({ field: 'observer' })]);
  });
  it.each([
    ['broken JSON', '{"theme":'],
    ['nothing', ''],
  ])('refuses %s', async (_, body) => {
    expect(await failureOf(await router().ask('PUT', '/api/preferences', json(body)))).toMatchObject({
      status: 400,
      code: 'input-invalid',
    });
  });
  it('refuses text that is not UTF-8', async () => {
    const body = new Uint8Array([0x22, 0xff, 0x22]);
    const response = await router().ask('PUT', '/api/preferences', { body, headers: { 'content-type': 'application/json' } });
    expect(await failureOf(response)).toMatchObject({ status: 400, issues: [{ problem: expect.stringContaining('UTF-8') }] });
  });
  it.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x'])(
    'takes no body that a form of a foreign page could send: %s',
    async (type) => {
      const response = await router().ask('PUT', '/api/preferences', json(preferences, { 'content-type': type }));
      expect(await failureOf(response)).toMatchObject({ status: 400, issues: [{ field: 'content-type' }] });
    },
  );
});

describe('a change of a versioned record', () => {
  const draft = { recovered: true, grade: null, completeness: null, storagePlace: null, notes: '' };
  it('hands over the version it is based on', async () => {
    const response = await router().ask('PUT', '/api/exuviae/e', json(draft, { 'if-match': '"7"' }));
    expect(await response.json()).toMatchObject({ version: 7 });
  });
  it('without a version is refused (RFC 6585, 3)', async () => {
    expect(await failureOf(await router().ask('PUT', '/api/exuviae/e', json(draft)))).toMatchObject({
      status: 428,
      code: 'version-missing',
    });
  });
  it.each(['7', '*', 'W/"7"', '"seven"', '"7", "8"'])('with something else is refused: %s', async (version) => {
    const response = await router().ask('PUT', '/api/exuviae/e', json(draft, { 'if-match': version }));
    expect(await failureOf(response)).toMatchObject({ status: 400, issues: [{ field: 'if-match' }] });
  });
});

describe('a body', () => {
  it('that says it is too large is refused unread', async () => {
    const response = await router().ask('PUT', '/api/preferences', json(preferences, { 'content-length': '99999999' }));
    expect(await failureOf(response)).toEqual({ status: 413, code: 'body-too-large', limitBytes: 1_048_576 });
  });
  it('may name as many files as an intake may hold', async () => {
    const files = Array.from({ length: 10_000 }, (_, index) => ({
      name: `${'folder of shed skins/'.repeat(10)}${index}.jpg`,
      byteLength: 1,
    }));
    expect((await router().ask('POST', '/api/intakes', json({ files }))).status).toBe(201);
  });
  it('that turns out too large is refused, and no more of it is taken than the limit and a little', async () => {
    let taken = 0;
    const endless = new ReadableStream<Uint8Array>({
      pull(controller) {
        taken += 65_536;
        controller.enqueue(new Uint8Array(65_536).fill(0x20));
      },
    });
    const response = await router().ask('PUT', '/api/preferences', {
      body: endless,
      duplex: 'half',
      headers: { 'content-type': 'application/json' },
    });
    expect(await failureOf(response)).toMatchObject({ status: 413, code: 'body-too-large' });
    expect(taken).toBeLessThan(1_048_576 + 10 * 65_536);
  });
  it('of bytes reaches the handler as it arrives', async () => {
    let received = 0;
    const { ask } = router({
      'PUT /api/intakes/{intakeId}/files/{index}': async ({ body }) => {
        for await (const chunk of body) received += chunk.byteLength;
      },
    });
    const init = { body: new Uint8Array(3_000_000), headers: { 'content-type': 'application/octet-stream' } };
    const response = await ask('PUT', '/api/intakes/i/files/0', init);
    expect([response.status, received]).toEqual([204, 3_000_000]);
  });
});

describe('what goes wrong', () => {
  it('in a way a person must know of is told with its status', async () => {
    const { ask, defects } = router({
      'GET /api/photos/{photoId}': ({ path }) => {
        throw new Refusal({ code: 'not-found', what: 'photo', id: path.photoId });
      },
    });
    expect(await failureOf(await ask('GET', '/api/photos/p'))).toEqual({ status: 404, code: 'not-found', what: 'photo', id: 'p' });
    expect(defects).toEqual([]);
  });
  it('by our mistake is logged once and told by its reference alone', async () => {
    const mistake = new TypeError('a secret detail');
    const { ask, defects } = router({
      'GET /api/preferences': () => {
        throw mistake;
      },
    });
    expect(await failureOf(await ask('GET', '/api/preferences'))).toEqual({ status: 500, code: 'defect', reference: 'reference' });
    expect(defects).toEqual([['reference', mistake]]);
  });
  it.each([
    ['GET', '/api/nothing'],
    ['PATCH', '/api/preferences'],
    ['GET', '/nothing'],
    ['OPTIONS', '/api/preferences'],
  ])('is told when there is no such route: %s %s', async (method, path) => {
    expect(await failureOf(await router().ask(method, path))).toEqual({ status: 404, code: 'no-such-route', method, path });
  });
});

describe('an answer of bytes', () => {
  const photo = () => {
    let opened = 0;
    let left = 0;
    const own = router({
      'GET /api/photos/{photoId}/original': () => ({
        mediaType: 'image/png',
        contentHash: 'abc',
        open: async () => {
          opened += 1;
          return { stream: new ReadableStream<Uint8Array>({ cancel: () => void left++ }), byteLength: 5 };
        },
      }),
    });
    const ask = (headers: Record<string, string>, method = 'GET') => own.ask(method, '/api/photos/p/original', { headers });
    return { ask, opened: () => opened, left: () => left };
  };
  it('may be kept for ever under the hash of its content', async () => {
    const { headers } = await photo().ask({});
    expect(Object.fromEntries(headers)).toMatchObject({
      etag: '"abc"',
      'content-type': 'image/png',
      'content-length': '5',
      'cache-control': 'private, max-age=31536000, immutable',
    });
  });
  it.each(['"abc"', '"x", "abc"', 'W/"abc"', '*'])('is not opened for a page that holds it: %s', async (tag) => {
    const { ask, opened } = photo();
    const response = await ask({ 'if-none-match': tag });
    expect([response.status, await response.text(), opened()]).toEqual([304, '', 0]);
  });
  it('is sent when the page holds another', async () => {
    const { ask, opened } = photo();
    expect([(await ask({ 'if-none-match': '"abcd"' })).status, opened()]).toEqual([200, 1]);
  });
  it('lets its file go after a HEAD', async () => {
    const { ask, opened, left } = photo();
    const response = await ask({}, 'HEAD');
    expect([response.status, response.body, opened(), left()]).toEqual([200, null, 1, 1]);
  });
});
