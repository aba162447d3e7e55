import { afterEach, describe, expect, test, vi } from 'vitest';
import { Refusal } from '../../../src/domain/failure.ts';
import { hostOf } from '../../../src/renderer/host/hostOf.ts';

afterEach(() => vi.unstubAllGlobals());

interface Call {
  readonly method: string;
  readonly address: string;
  readonly body: unknown;
}

/** A server that takes everything, except where `refuse` says otherwise. */
function serve(refuse: (call: Call) => Response | Error | null = () => null): Call[] {
  const calls: Call[] = [];
  vi.stubGlobal('fetch', async (address: string, init: RequestInit) => {
    const call = { method: init.method ?? 'GET', address, body: init.body };
    init.signal?.throwIfAborted();
    calls.push(call);
    const refused = refuse(call);
    if (refused instanceof Error) throw refused;
    if (refused) return refused;
    return call.method === 'POST' ? Response.json({ intakeId: 'i1' }, { status: 201 }) : new Response(null, { status: 204 });
  });
  return calls;
}

const FILES = [new File(['one'], 'a.jpg'), new File(['three'], 'b.jpg'), new File([], 'c.jpg')];

function watch(controller = new AbortController()): { signal: AbortSignal; onSent: (sent: number) => void; sent: number[] } {
  const sent: number[] = [];
  return { signal: controller.signal, onSent: (count) => sent.push(count), sent };
}

describe('handing files over in a browser', () => {
  test('announces them with name and size, then sends the bytes of each, counting', async () => {
    const calls = serve();
    const watching = watch();
    expect(await hostOf({}).handOver(FILES, watching)).toBe('i1');
    expect(JSON.parse(String(calls[0]?.body))).toEqual({
      files: [
        { name: 'a.jpg', byteLength: 3 },
        { name: 'b.jpg', byteLength: 5 },
        { name: 'c.jpg', byteLength: 0 },
      ],
    });
    expect(
      calls
        .slice(1)
        .map((call) => call.address)
        .sort(),
    ).toEqual(['/api/intakes/i1/files/0', '/api/intakes/i1/files/1', '/api/intakes/i1/files/2']);
    expect(
      calls
        .slice(1)
        .map((call) => call.body)
        .every((body) => FILES.includes(body as File)),
    ).toBe(true);
    expect(watching.sent).toEqual([1, 2, 3]);
  });

  test('goes on when the browser cannot read one of them', async () => {
    const calls = serve((call) => (call.address.endsWith('/files/0') ? new TypeError('file not found') : null));
    expect(await hostOf({}).handOver(FILES, watch())).toBe('i1');
    expect(calls.filter((call) => call.method === 'PUT')).toHaveLength(3);
  });

  test('goes on when one of them is refused: the import reports it', async () => {
    const empty = () => Response.json({ failure: { code: 'file-empty', file: 'c.jpg' } }, { status: 422 });
    const calls = serve((call) => (call.address.endsWith('/files/0') ? empty() : null));
    expect(await hostOf({}).handOver(FILES, watch())).toBe('i1');
    expect(calls.filter((call) => call.method === 'PUT')).toHaveLength(3);
  });

  test('stops at a refusal that concerns all of them', async () => {
    const full = () => Response.json({ failure: { code: 'disk-full' } }, { status: 507 });
    serve((call) => (call.method === 'PUT' ? full() : null));
    const refusal = await hostOf({})
      .handOver(FILES, watch())
      .catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(Refusal);
    expect((refusal as Refusal).failure).toEqual({ code: 'disk-full' });
  });

  test('sends no more files once it is stopped', async () => {
    const controller = new AbortController();
    const calls = serve((call) => {
      if (call.method === 'PUT') controller.abort();
      return null;
    });
    await expect(hostOf({}).handOver(FILES, watch(controller))).rejects.toMatchObject({ name: 'AbortError' });
    expect(calls.filter((call) => call.method === 'PUT').length).toBeLessThan(FILES.length);
  });
});

describe('handing files over in the desktop shell', () => {
  test('lets the shell copy them, without sending a byte', async () => {
    const calls = serve();
    const watching = watch();
    const host = hostOf({ exuviaryBridge: { takeFiles: async () => ({ intakeId: 'desk' }) } });
    expect(await host.handOver(FILES, watching)).toBe('desk');
    expect(calls).toEqual([]);
    expect(watching.sent).toEqual([3]);
  });

  test('sends the bytes of what lies on no disk', async () => {
    serve();
    expect(await hostOf({ exuviaryBridge: { takeFiles: async () => null } }).handOver(FILES, watch())).toBe('i1');
  });

  test('hands on the refusal of the shell', async () => {
    const host = hostOf({ exuviaryBridge: { takeFiles: async () => ({ failure: { code: 'disk-full' } }) } });
    await expect(host.handOver(FILES, watch())).rejects.toMatchObject({ failure: { code: 'disk-full' } });
  });
});
