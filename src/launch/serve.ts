import { resolve } from 'node:path';
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { build } from './build.ts';

/**
 * `npm run serve`: builds, then is the loopback shell, in this same process, so that whoever ends the one ends the other. It
 * stays when nobody has been there for a while: a script may come back any time.
 */
const root = resolve(import.meta.dirname, '../..');
const built = await build(root);
if (built === 0) {
  process.argv.push('--keep');
  await import(pathToFileURL(resolve(root, 'out/main/loopback.js')).href);
} else process.exitCode = built;
