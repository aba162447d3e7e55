import { type Import, importsIn, packageOf, targetOf } from './imports.ts';
import type { SourceFile } from './sources.ts';
import type { Layer } from './table.ts';

type Layers = Readonly<Record<string, Layer>>;

/** The layer of a path such as `src/api/contract/photos.ts`: the longest name in the table that fits; null if none does. */
export function layerOf(path: string, layers: Layers): string | null {
  const fitting = Object.keys(layers).filter((name) => path.startsWith(`src/${name}/`));
  return fitting.toSorted((one, other) => other.length - one.length)[0] ?? null;
}

/** What a file imports although its layer may not; empty for a file that keeps to its layer. */
export function trespassesOf(file: SourceFile, layers: Layers): readonly string[] {
  const name = layerOf(file.path, layers);
  const layer = name === null ? undefined : layers[name];
  if (name === null || layer === undefined) return [`${file.path} belongs to no layer`];
  return importsIn(file.text)
    .map((imported) => trespassOf(file, imported, name, layer, layers))
    .filter((sentence) => sentence !== null);
}

/** What the table grants a layer and none of its files makes use of. */
export function unusedGrantsOf(name: string, files: readonly SourceFile[], layers: Layers): readonly string[] {
  const used = files
    .filter((file) => layerOf(file.path, layers) === name)
    .flatMap((file) =>
      importsIn(file.text).map((imported) => {
        const target = targetOf(file, imported);
        return target === null ? packageOf(imported) : layerOf(target, layers);
      }),
    );
  const { values = [], types = [], packages = [] } = layers[name] ?? {};
  return [...values, ...types, ...packages].filter((grant) => !used.some((one) => one !== null && fits(one, grant)));
}

function trespassOf(file: SourceFile, imported: Import, name: string, layer: Layer, layers: Layers): string | null {
  const target = targetOf(file, imported);
  if (target === null) {
    const wanted = packageOf(imported);
    return layer.packages.some((pattern) => fits(wanted, pattern)) ? null : `${name} may not import the package ${wanted}`;
  }
  const other = layerOf(target, layers);
  if (other === name) return null;
  if (other === null) return `${name} may not import ${target}, which is in no layer`;
  if (layer.values.includes(other)) return null;
  if (!layer.types.includes(other)) return `${name} may not import ${other} (${target})`;
  return imported.typeOnly ? null : `${name} may import types only from ${other} (${target})`;
}

function fits(name: string, pattern: string): boolean {
  return pattern.endsWith('*') ? name.startsWith(pattern.slice(0, -1)) : name === pattern;
}

/** The files that are evaluated when any of the starting ones is: those reached by imports that are not type-only. */
export function evaluatedFrom(starts: readonly SourceFile[], all: readonly SourceFile[]): readonly SourceFile[] {
  const byPath = new Map(all.map((file) => [file.path, file]));
  const reached = new Set(starts);
  for (const file of reached) {
    for (const imported of importsIn(file.text)) {
      const target = imported.typeOnly ? null : targetOf(file, imported);
      const next = target === null ? undefined : byPath.get(target);
      if (next !== undefined) reached.add(next);
    }
  }
  return [...reached];
}
