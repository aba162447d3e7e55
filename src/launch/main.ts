import { homedir } from 'node:os';
import { resolve } from 'node:path';
import process from 'node:process';
import { findBrowser } from './browsers.ts';
import { build } from './build.ts';
import type { Situation } from './choose.ts';
import { fetchElectron, findElectron } from './electron.ts';
import { launch } from './launch.ts';
import { type LaunchOptions, parseLaunchOptions, USAGE } from './options.ts';

const root = resolve(import.meta.dirname, '../..');

/** The options, or a sentence for the person at the terminal. */
function optionsOrComplaint(): LaunchOptions | string {
  try {
    return parseLaunchOptions(process.argv.slice(2), process.cwd());
  } catch (error) {
    if (error instanceof TypeError) return error.message;
    throw error;
  }
}

async function openWith(options: LaunchOptions): Promise<number> {
  const stop = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => stop.abort());
  const built = await build(root);
  if (stop.signal.aborted) return 0;
  if (built !== 0) return built;
  return await launch(situationFor(options), {
    root,
    host: { executable: process.execPath, arguments: [resolve(root, 'out/main/loopback.js')] },
    passedOn: options.passedOn,
    fetchElectron: () => fetchElectron(root, stop.signal),
    print: (line) => console.log(line),
    stopping: stop.signal,
  });
}

function situationFor(options: LaunchOptions): Situation {
  const { platform, env } = process;
  return {
    wanted: options.shell ?? (options.browser === null ? null : 'browser'),
    hasDisplay: platform !== 'linux' || Boolean(env['DISPLAY'] || env['WAYLAND_DISPLAY']),
    asRoot: platform === 'linux' && process.getuid?.() === 0,
    electron: findElectron(root),
    browser:
      options.browser === null
        ? findBrowser({ platform, home: homedir(), environment: env })
        : { state: 'present', executable: options.browser },
  };
}

const options = optionsOrComplaint();
if (typeof options === 'string') {
  console.error(`${options}.\n\n${USAGE}`);
  process.exitCode = 1;
} else if (options.help) console.log(USAGE);
else process.exitCode = await openWith(options);
