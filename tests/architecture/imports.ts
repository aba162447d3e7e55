import { posix } from 'node:path';
import type { SourceFile } from './sources.ts';

/** One import of a file. */
export interface Import {
  /** As written: './points.ts', 'zod', 'node:fs'. */
  readonly specifier: string;
  /** Whether it vanishes when types are stripped; `verbatimModuleSyntax` makes the word `type` in the text reliable. */
  readonly typeOnly: boolean;
}

const STATIC = /^\s*(?:import|export)\s+(type\s(?!from\b))?(?:[^'";]*?\sfrom\s*)?['"]([^'"]+)['"]/gm;
const DYNAMIC = /\b(?:import|require)\(\s*['"]([^'"]+)['"]/g;
const COMMENTS = /\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm;

/** The imports in the text of a module: import and export statements, `import()` and `require()`. */
export function importsIn(text: string): readonly Import[] {
  const code = text.replace(COMMENTS, '');
  const statements = [...code.matchAll(STATIC)].map(([, type, specifier = '']) => ({ specifier, typeOnly: type !== undefined }));
  const calls = [...code.matchAll(DYNAMIC)].map(([, specifier = '']) => ({ specifier, typeOnly: false }));
  return [...statements, ...calls];
}

/** Where a relative import leads, as a path from the folder of package.json, without any `?url`; null for a package. */
export function targetOf(file: SourceFile, { specifier }: Import): string | null {
  if (!specifier.startsWith('.')) return null;
  return posix.normalize(posix.join(posix.dirname(file.path), specifier.replace(/\?.*$/, '')));
}

/** The package of a bare import: 'hono/cors' is 'hono', '@scope/name/file' is '@scope/name', 'node:fs' is 'node:'. */
export function packageOf({ specifier }: Import): string {
  if (specifier.startsWith('node:')) return 'node:';
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
}
