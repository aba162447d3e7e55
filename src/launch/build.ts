import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';

/** Bundles both shells and the page into out/; silent unless something is wrong. Answers the bundler's exit code. */
export async function build(root: string): Promise<number> {
  const bundler = spawn(process.execPath, [join(root, 'node_modules/electron-vite/bin/electron-vite.js'), 'build', '--logLevel', 'error'], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  const [code] = (await once(bundler, 'exit')) as [number | null];
  return code ?? 1;
}
