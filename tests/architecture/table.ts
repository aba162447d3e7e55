/** What a layer may stand on. A layer may always import itself. */
export interface Layer {
  /** Layers whose values it may import. */
  readonly values: readonly string[];
  /** Layers whose types it may import besides. */
  readonly types: readonly string[];
  /** Packages it may import; `node:` is all of Node's own modules, a name that ends in `*` is all names that begin so. */
  readonly packages: readonly string[];
}

function layer(values: readonly string[], packages: readonly string[], types: readonly string[] = []): Layer {
  return { values, types, packages };
}

/** Every folder of src, in the order of the dependencies. The path of a file names its layer: the longest one that fits. */
export const LAYERS: Readonly<Record<string, Layer>> = {
  domain: layer([], ['zod', 'ml-matrix']),
  words: layer(['domain'], []),
  archive: layer(['domain'], ['better-sqlite3', 'node:']),
  images: layer(['domain'], ['sharp', 'exifr', 'libheif-js', 'node:']),
  exchange: layer(['domain', 'words'], ['@cantoo/fontkit', '@cantoo/pdf-lib', 'ical-generator', 'node:']),
  tasks: layer(['domain', 'archive', 'images'], ['zod', 'node:']),
  'api/contract': layer(['domain'], ['zod']),
  api: layer(['domain', 'words', 'archive', 'exchange', 'tasks', 'api/contract'], ['hono', 'zod', 'node:']),
  core: layer(['domain', 'archive', 'tasks', 'api'], ['node:']),
  loopback: layer(['domain', 'words', 'core'], ['@hono/node-server', 'node:']),
  desktop: layer(['domain', 'words', 'core'], ['electron', 'node:'], ['api/contract']),
  launch: layer([], ['node:', 'vite', '@vitejs/plugin-react']),
  renderer: layer(
    ['domain', 'words'],
    ['react', 'react-dom', 'wouter', 'zustand', '@tanstack/react-query', 'd3-scale', 'd3-shape', '@fontsource*'],
    ['api/contract'],
  ),
};

/** One door per danger: what only the named files, or files under the named folders, may contain. */
export interface Door {
  readonly danger: string;
  readonly pattern: RegExp;
  /** A line that the pattern must catch, so that the check can fail. */
  readonly example: string;
  readonly under: string;
  readonly doors: readonly string[];
}

export const DOORS: readonly Door[] = [
  {
    danger: 'asks over the network',
    example: 'await fetch(address)',
    pattern: /(?<![.\w])fetch\(/,
    under: 'src',
    doors: ['src/renderer/client/ask.ts'],
  },
  {
    danger: 'opens something outside',
    example: 'shell.openExternal(url)',
    pattern: /\bopenExternal\b/,
    under: 'src',
    doors: ['src/desktop/openOutside.ts'],
  },
  {
    danger: 'talks between processes',
    example: 'ipcRenderer.invoke(channel)',
    pattern: /\bipc(Main|Renderer)\b/,
    under: 'src',
    doors: ['src/desktop/takeFiles.ts', 'src/desktop/bridge.ts'],
  },
  {
    danger: 'bundles',
    example: "import { createServer } from 'vite';",
    pattern: /from 'vite'/,
    under: 'src',
    doors: ['src/launch/development.ts'],
  },
  {
    danger: 'loads a hundred megabytes',
    example: "createRequire(import.meta.url)('@techstark/opencv-js')",
    pattern: /'@techstark\/opencv-js'/,
    under: 'src',
    doors: ['src/images/fiducialDetecting.ts'],
  },
  {
    danger: 'starts programs',
    example: "import { spawn } from 'node:child_process';",
    pattern: /'node:child_process'/,
    under: 'src',
    doors: ['src/launch/', 'src/images/scaleFinder.ts'],
  },
  {
    danger: 'reads the environment',
    example: 'const folder = process.env.HOME;',
    pattern: /\bprocess\.env\b|\benv\b.*= process\b/,
    under: 'src',
    doors: ['src/core/archiveFolder.ts', 'src/launch/'],
  },
  {
    danger: 'puts text into the page as HTML',
    example: 'element.innerHTML = text;',
    pattern: /\b(dangerouslySetInnerHTML|innerHTML|insertAdjacentHTML)\b/,
    under: 'src',
    doors: [],
  },
  { danger: 'makes code from text', example: "new Function('return 1')", pattern: /\beval\(|\bnew Function\(/, under: 'src', doors: [] },
  {
    danger: 'reads the clock',
    example: 'const now = Date.now();',
    pattern: /\bDate\.now\(|\bnew Date\(\)|\bperformance\.now\(/,
    under: 'src/domain',
    doors: [],
  },
  {
    danger: 'draws at random',
    example: 'const x = Math.random();',
    pattern: /\bMath\.random\(|\brandomUUID\b|\bgetRandomValues\b/,
    under: 'src/domain',
    doors: [],
  },
];
