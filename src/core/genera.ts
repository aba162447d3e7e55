import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type ShippedProfile, ShippedProfiles } from '../domain/sexing/genus/profile.ts';

/** The profiles of genera that come with the program. One that does not fit its schema is a defect, told at the start. */
export async function readGenera(resourcesFolder: string): Promise<readonly ShippedProfile[]> {
  const text = await readFile(join(resourcesFolder, 'genera', 'profiles.json'), 'utf8');
  return ShippedProfiles.parse(JSON.parse(text)).profiles;
}
