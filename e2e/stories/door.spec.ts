import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Page } from '@playwright/test';
import { expect, test } from '../support/hosts.ts';

/** A page of another program on this machine. To a browser its site is ours: SameSite=Strict does not keep our cookie from it. */
async function openNeighbor(page: Page): Promise<{ neighbor: Page; close(): Promise<void> }> {
  const server = createServer((_, answer) => answer.setHeader('content-type', 'text/html').end('<!doctype html><title>Neighbor</title>'));
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const neighbor = await page.context().newPage();
  await neighbor.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
  return {
    neighbor,
    close: async () => {
      await neighbor.close();
      server.closeAllConnections();
      server.close();
      await once(server, 'close');
    },
  };
}

interface OnTheWire {
  /** How the last request for an address was answered, and whether it carried a cookie of ours. */
  answerTo(address: string): { status: number; withCookie: boolean } | undefined;
}

/** What really went over the wire: the page itself is not even told of answers that are kept from it. */
async function watchWire(page: Page): Promise<OnTheWire> {
  const addresses = new Map<string, string>();
  const cookies = new Map<string, boolean>();
  const answers = new Map<string, number>();
  const devtools = await page.context().newCDPSession(page);
  devtools.on('Network.requestWillBeSent', ({ requestId, request }) => addresses.set(request.url, requestId));
  devtools.on('Network.requestWillBeSentExtraInfo', ({ requestId, headers }) =>
    cookies.set(requestId, /__Host-session-/.test(headers['Cookie'] ?? '')),
  );
  devtools.on('Network.responseReceivedExtraInfo', ({ requestId, statusCode }) => answers.set(requestId, statusCode));
  await devtools.send('Network.enable');
  return {
    answerTo(address) {
      const requestId = addresses.get(address) ?? '';
      const status = answers.get(requestId);
      return status === undefined ? undefined : { status, withCookie: cookies.get(requestId) ?? false };
    },
  };
}

test.describe('the door of the loopback shell', { tag: '@loopback' }, () => {
  test('opens once for the first address and leaves a session that no script can read', async ({ page }) => {
    const [cookie, ...others] = await page.context().cookies();
    expect(others).toEqual([]);
    expect(cookie).toMatchObject({ httpOnly: true, secure: true, sameSite: 'Strict', path: '/', expires: -1 });
    expect(cookie?.name).toBe(`__Host-session-${new URL(page.url()).port}`);
    expect(await page.evaluate(() => document.cookie)).toBe('');
    expect(new URL(page.url()).search).toBe('');
  });

  test("stays shut for another program's page, though its requests carry our cookie", async ({ page }) => {
    const ours = new URL(page.url()).origin;
    const { neighbor, close } = await openNeighbor(page);
    const wire = await watchWire(neighbor);
    const refused = { status: 403, withCookie: true };
    const send = (address: string, method: string): Promise<unknown> =>
      neighbor.evaluate(
        ([to = '', by = '']) => fetch(to, { method: by, mode: 'no-cors', credentials: 'include' }).catch(() => null),
        [address, method],
      );

    // The policy on our resources keeps even the refusal from the neighbor's script.
    expect(await send(`${ours}/api/about`, 'GET')).toBeNull();
    await expect.poll(() => wire.answerTo(`${ours}/api/about`)).toEqual(refused);
    expect(await send(`${ours}/api/sample-cabinet`, 'POST')).toBeNull();
    await expect.poll(() => wire.answerTo(`${ours}/api/sample-cabinet`)).toEqual(refused);
    await neighbor.evaluate((address) => {
      document.body.append(Object.assign(new Image(), { src: address }));
    }, `${ours}/api/photos/any/original`);
    await expect.poll(() => wire.answerTo(`${ours}/api/photos/any/original`)).toEqual(refused);
    await neighbor.evaluate((address) => {
      location.href = address;
    }, `${ours}/`);
    await expect.poll(() => wire.answerTo(`${ours}/`)).toEqual(refused);
    await close();

    const held = await page.evaluate(() => fetch('/api/about').then((answer) => answer.json() as Promise<{ samples: number }>));
    expect(held.samples).toBe(0);
  });

  test('does not answer to another name', async ({ page }) => {
    const { port } = new URL(page.url());
    const other = await page.context().newPage();
    const address = `http://localhost:${port}/`;
    // Chromium shows a page of its own for an empty answer with an error status, and says so by failing the navigation.
    const refusal = other.waitForResponse((answer) => answer.url() === address);
    await expect(other.goto(address)).rejects.toThrow('ERR_HTTP_RESPONSE_CODE_FAILURE');
    expect((await refusal).status()).toBe(421);
    await other.close();
  });

  test('holds the page to its own scripts', async ({ page }) => {
    const complaints: string[] = [];
    page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
    const ran = await page.evaluate(() => {
      const script = document.createElement('script');
      try {
        script.textContent = 'window.strange = true;';
      } catch {
        // Trusted Types refuse the text before the policy refuses the script.
      }
      document.body.append(script);
      return 'strange' in window;
    });
    expect(ran).toBe(false);
    await expect(async () => expect(complaints.join('\n')).toMatch(/Content Security Policy|TrustedScript/)).toPass();
  });
});
