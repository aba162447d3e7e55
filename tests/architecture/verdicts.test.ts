import { describe, expect, test } from 'vitest';
import { importsIn } from './imports.ts';
import type { Layer } from './table.ts';
import { evaluatedFrom, layerOf, trespassesOf, unusedGrantsOf } from './verdicts.ts';

const LAYERS: Readonly<Record<string, Layer>> = {
  low: { values: [], types: [], packages: ['zod', '@type*'] },
  high: { values: ['low'], types: ['high/face'], packages: ['node:'] },
  'high/face': { values: ['low'], types: [], packages: [] },
};

function trespasses(path: string, text: string): readonly string[] {
  return trespassesOf({ path, text }, LAYERS);
}

describe('the reading of imports', () => {
  test.each([
    ["import { a } from './a.ts';", [{ specifier: './a.ts', typeOnly: false }]],
    ["import type { A } from './a.ts';", [{ specifier: './a.ts', typeOnly: true }]],
    ["import { type A } from './a.ts';", [{ specifier: './a.ts', typeOnly: false }]],
    ["import type from './type.ts';", [{ specifier: './type.ts', typeOnly: false }]],
    ["export * from './a.ts';", [{ specifier: './a.ts', typeOnly: false }]],
    ["export type { A } from './a.ts';", [{ specifier: './a.ts', typeOnly: true }]],
    ["import './a.css';", [{ specifier: './a.css', typeOnly: false }]],
    ["import {\n  a,\n  b,\n} from './a.ts';", [{ specifier: './a.ts', typeOnly: false }]],
    ["const a = await import('./a.ts');", [{ specifier: './a.ts', typeOnly: false }]],
    ["const a = require('sharp');", [{ specifier: 'sharp', typeOnly: false }]],
    ["// import { a } from './a.ts';\n/* import './b.ts' */", []],
    ["export const text = 'from';", []],
  ])('%j', (text, imports) => {
    expect(importsIn(text)).toEqual(imports);
  });
});

describe('the judgment of a file', () => {
  test('takes the longest layer that fits', () => {
    expect(layerOf('src/high/face/a.ts', LAYERS)).toBe('high/face');
    expect(layerOf('src/high/a.ts', LAYERS)).toBe('high');
    expect(layerOf('src/other/a.ts', LAYERS)).toBeNull();
  });

  test.each([
    ['a lower layer', 'src/high/a.ts', "import { a } from '../low/a.ts';"],
    ['its own layer', 'src/low/deep/a.ts', "import { a } from '../b.ts';"],
    ['a package of its list', 'src/low/a.ts', "import { z } from 'zod/mini';"],
    ['a package by the beginning of its name', 'src/low/a.ts', "import '@typeface/one/style.css';"],
    ["Node's own modules", 'src/high/a.ts', "import { join } from 'node:path';"],
    ['types where only types are allowed', 'src/high/a.ts', "import type { A } from './face/a.ts';"],
  ])('lets it import %s', (_what, path, text) => {
    expect(trespasses(path, text)).toEqual([]);
  });

  test.each([
    ['a higher layer', 'src/low/a.ts', "import type { A } from '../high/a.ts';", 'low may not import high (src/high/a.ts)'],
    [
      'values where only types are allowed',
      'src/high/a.ts',
      "import { a } from './face/a.ts';",
      'high may import types only from high/face (src/high/face/a.ts)',
    ],
    ['a package of another layer', 'src/low/a.ts', "import sharp from 'sharp';", 'low may not import the package sharp'],
    ["Node's own modules without leave", 'src/low/a.ts', "import { join } from 'node:path';", 'low may not import the package node:'],
    ['a file in no layer', 'src/low/a.ts', "import { a } from '../../tests/a.ts';", 'low may not import tests/a.ts, which is in no layer'],
  ])('refuses it %s', (_what, path, text, sentence) => {
    expect(trespasses(path, text)).toEqual([sentence]);
  });

  test('refuses a file in no layer', () => {
    expect(trespasses('src/other/a.ts', '')).toEqual(['src/other/a.ts belongs to no layer']);
  });
});

test('what a layer is granted and does not use is seen', () => {
  const files = [
    { path: 'src/high/a.ts', text: "import { b } from '../low/b.ts';" },
    { path: 'src/low/b.ts', text: "import '@typeface/one/style.css';\nimport { join } from 'node:path';" },
  ];
  expect(unusedGrantsOf('high', files, LAYERS)).toEqual(['high/face', 'node:']);
  expect(unusedGrantsOf('low', files, LAYERS)).toEqual(['zod']);
});

test('what is evaluated follows values, not types', () => {
  const files = [
    { path: 'src/a.ts', text: "import './b.ts';\nimport type { C } from './c.ts';" },
    { path: 'src/b.ts', text: "import './d.ts';" },
    { path: 'src/c.ts', text: '' },
    { path: 'src/d.ts', text: "import './a.ts';" },
  ];
  expect(evaluatedFrom(files.slice(0, 1), files).map(({ path }) => path)).toEqual(['src/a.ts', 'src/b.ts', 'src/d.ts']);
});
