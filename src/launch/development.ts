import { once } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer as createSocket } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import process from 'node:process';
import react from '@vitejs/plugin-react';
import { createServer, type ProxyOptions } from 'vite';
import { start } from './program.ts';

/**
 * `npm run dev`: the page from its source, changed while it runs, on the core from its source, started anew when that changes.
 * The core is asked through Vite's proxy, which shows it the token for programs.
 */
const root = resolve(import.meta.dirname, '../..');

/** Never the keeper's own archive unless that is asked for. */
const DEVELOPMENT_ARCHIVE = resolve(root, 'out/development');

async function freePort(): Promise<number> {
  const socket = createSocket().listen(0, '127.0.0.1');
  await once(socket, 'listening');
  const address = socket.address();
  socket.close();
  await once(socket, 'close');
  if (address === null || typeof address === 'string') throw new TypeError('Expected a socket to have a port');
  return address.port;
}

/** Lets through only what our own page asks: whoever gets through here has the token. */
function proxyTo(port: number, tokenFile: string): ProxyOptions {
  return {
    target: `http://127.0.0.1:${port}`,
    changeOrigin: true,
    bypass: (request) => (request.headers['sec-fetch-site'] === 'same-origin' ? undefined : false),
    configure: (proxy) => {
      proxy.on('proxyReq', (outgoing) => {
        outgoing.removeHeader('origin');
        outgoing.setHeader('authorization', `Bearer ${tokenIn(tokenFile)}`);
      });
    },
  };
}

/** Each core that is started anew has its own token, and between two of them there is none. */
function tokenIn(tokenFile: string): string {
  return existsSync(tokenFile) ? readFileSync(tokenFile, 'utf8').trim() : 'none';
}

const words = process.argv.slice(2);
const secrets = await mkdtemp(join(tmpdir(), 'exuviary-development-'));
const tokenFile = join(secrets, 'token');
const port = await freePort();
const archive = words.some((word) => word.startsWith('--archive')) ? [] : ['--archive', DEVELOPMENT_ARCHIVE];
const shell = ['src/loopback/main.ts', '--renderer', 'src/renderer', '--port', String(port), '--token-file', tokenFile, '--keep'];
const core = start(
  {
    executable: process.execPath,
    arguments: ['--disable-warning=ExperimentalWarning', '--watch', '--watch-preserve-output', ...shell, ...archive, ...words],
    quiet: false,
  },
  (line) => console.log(line),
);
const page = await createServer({
  configFile: false,
  root: resolve(root, 'src/renderer'),
  plugins: [react()],
  server: { host: '127.0.0.1', proxy: { '/api': proxyTo(port, tokenFile) } },
});

for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => void core.stop());
void core.ended.then(async () => {
  await page.close();
  await rm(secrets, { recursive: true, force: true });
});
if ((await core.ready) !== null) {
  await page.listen();
  page.printUrls();
}
