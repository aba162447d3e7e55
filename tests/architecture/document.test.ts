import { describe, expect, test } from 'vitest';
import { filesUnder, textOf } from './sources.ts';
import { LAYERS, type Layer } from './table.ts';

const document = textOf('DEVELOPERS.md');

function rowOf(name: string, { values, types, packages }: Layer): string {
  const cell = (names: readonly string[]) => names.join(', ') || '–';
  return `| ${name} | ${cell(values)} | ${cell(types)} | ${cell(packages)} |`;
}

describe('DEVELOPERS.md', () => {
  test.each(Object.entries(LAYERS))('tells of %s what is enforced', (name, layer) => {
    expect(document.split('\n')).toContain(rowOf(name, layer));
  });

  test('knows no other layers', () => {
    const table = document.slice(document.indexOf('| Layer |'), document.indexOf('Kept true three times'));
    const named = [...table.matchAll(/^\| ([\w/]+) \|/gm)].map(([, name]) => name).filter((name) => name !== 'Layer');
    expect(named.toSorted()).toEqual(Object.keys(LAYERS).toSorted());
  });

  test("has a row for each of the twenty items of Electron's checklist", () => {
    const items = [...document.matchAll(/^\| (\d+) \|/gm)].map(([, item]) => Number(item));
    expect(items).toEqual(Array.from({ length: 20 }, (_, index) => index + 1));
  });

  test('names only files that exist', () => {
    const paths = new Set([...filesUnder('src', ['']), ...filesUnder('tests', ['.ts'])].map(({ path }) => path));
    const named = [...document.matchAll(/`((?:src|tests)\/[\w./-]+\.\w+)`/g)].map(([, path = '']) => path);
    expect(named.length).toBeGreaterThan(20);
    expect(named.filter((path) => !paths.has(path))).toEqual([]);
  });
});
