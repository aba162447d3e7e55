import { join } from 'node:path';
import { unwrap } from '../../src/domain/result.ts';
import { type ReducedLight, readLight } from '../../src/images/light.ts';
import type { PhotoTruth } from './photoTruth.ts';

const PHOTOS = join(import.meta.dirname, '../../resources/sample/photos');

/** The sample cabinet shows the rendered animals under names of its own. */
const ANIMALS = { 'specimen-a': 'juniper', 'specimen-b': 'bramble', 'specimen-c': 'saffron' } as const;

/** Where the sample cabinet keeps a rendered photo; null for one it doesn't show. */
export function samplePhotoOf({ name }: Pick<PhotoTruth, 'name'>): string | null {
  if (name === 'specimen-a_live_2025-04') return join(PHOTOS, 'plaster-live.jpg');
  const parts = /^(specimen-[abc])_instar-(\d\d)_(.+)$/.exec(name);
  const animal = Object.entries(ANIMALS).find(([known]) => known === parts?.[1])?.[1];
  return parts && animal ? join(PHOTOS, `${animal}-${parts[2]}-${parts[3]}.jpg`) : null;
}

/** A rendered photo in linear light; null for one the sample cabinet doesn't show. */
export async function lightOf(truth: Pick<PhotoTruth, 'name'>): Promise<ReducedLight | null> {
  const path = samplePhotoOf(truth);
  return path === null ? null : unwrap(await readLight({ path, name: truth.name }));
}
