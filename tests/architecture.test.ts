import { describe, expect, test } from 'vitest';
import { importsIn, packageOf } from './architecture/imports.ts';
import { filesUnder, foldersIn, textOf } from './architecture/sources.ts';
import { DOORS, LAYERS } from './architecture/table.ts';
import { evaluatedFrom, trespassesOf, unusedGrantsOf } from './architecture/verdicts.ts';

const MOST_LINES = 400;
const CODE = ['.ts', '.tsx', '.mjs'];

const sources = filesUnder('src', CODE);
const everything = [...sources, ...filesUnder('tests', CODE), ...filesUnder('e2e', CODE)];
const readable = [...everything, ...filesUnder('src', ['.css', '.html'])];

describe('the layers', () => {
  test('were seen at all', () => {
    expect(sources.length).toBeGreaterThan(50);
    for (const name of Object.keys(LAYERS)) expect(sources.filter(({ path }) => path.startsWith(`src/${name}/`))).not.toHaveLength(0);
  });

  test('are the folders of src', () => {
    expect(foldersIn('src')).toEqual(
      Object.keys(LAYERS)
        .filter((name) => !name.includes('/'))
        .toSorted(),
    );
  });

  test.each(Object.entries(LAYERS).filter(([name]) => !name.includes('/')))(
    '%s is compiled against what it may import, no more',
    (name, layer) => {
      const { references } = JSON.parse(textOf(`src/${name}/tsconfig.json`)) as { references: { path: string }[] };
      const folders = [...layer.values, ...layer.types].map((other) => other.split('/')[0]).filter((other) => other !== name);
      expect(references.map(({ path }) => path.replace('../', '')).toSorted()).toEqual([...new Set(folders)].toSorted());
    },
  );

  test('are all compiled by the root', () => {
    const { references } = JSON.parse(textOf('tsconfig.json')) as { references: { path: string }[] };
    const folders = references.map(({ path }) => path);
    expect(folders.toSorted()).toEqual([...foldersIn('src').map((name) => `src/${name}`), 'tests', 'e2e'].toSorted());
  });

  test.each(sources)('$path keeps to its layer', (file) => {
    expect(trespassesOf(file, LAYERS)).toEqual([]);
  });

  test.each(Object.keys(LAYERS))('%s is granted nothing that it does not use', (name) => {
    expect(unusedGrantsOf(name, sources, LAYERS)).toEqual([]);
  });

  test('are not imported by the stories, which know the program from outside', () => {
    const stories = everything.filter(({ path }) => path.startsWith('e2e/'));
    expect(stories).not.toHaveLength(0);
    expect(stories.filter(({ text }) => importsIn(text).some(({ specifier }) => /^(\.\.\/)+src\//.test(specifier)))).toEqual([]);
  });
});

describe('the dangers', () => {
  test.each(DOORS)('$danger: would be seen', ({ pattern, example }) => {
    expect(example).toMatch(pattern);
  });

  test.each(DOORS)('$danger: only through its door', ({ pattern, under, doors }) => {
    const through = sources.filter(({ path, text }) => path.startsWith(`${under}/`) && pattern.test(text)).map(({ path }) => path);
    expect(through.filter((path) => !doors.some((door) => path.startsWith(door)))).toEqual([]);
    for (const door of doors) expect(through.filter((path) => path.startsWith(door))).not.toHaveLength(0);
  });

  test('electron is evaluated by nothing that tests or the loopback shell reach, because that starts a download', () => {
    const starts = everything.filter(({ path }) => !path.startsWith('src/') || path.startsWith('src/loopback/'));
    const importing = evaluatedFrom(starts, everything).filter(({ text }) =>
      importsIn(text).some((imported) => packageOf(imported) === 'electron' && !imported.typeOnly),
    );
    expect(importing.map(({ path }) => path)).toEqual([]);
  });
});

test.each(readable)('$path can be read in one sitting', ({ text }) => {
  expect(text.split('\n').length - 1).toBeLessThanOrEqual(MOST_LINES);
});
