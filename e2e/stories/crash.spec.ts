import { createHash } from 'node:crypto';
import { readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from '../support/camera.ts';
import { Keeper } from '../support/keeper.ts';
import { photoTruth } from '../support/photoTruth.ts';
import { writeSeries } from '../support/pictures.ts';

const skin = photoTruth('juniper-07-dorsal', 'specimen-a_instar-07_dorsal');

interface Sheet {
  readonly readings: readonly {
    readonly landmarks: Readonly<Record<string, { readonly at: { readonly xPx: number; readonly yPx: number } }>>;
  }[];
}

test('what was confirmed as saved outlives a program that is killed, and the original is the file that came in', async ({
  open,
  archive,
}) => {
  const first = await open();
  const keeper = new Keeper(first.page);
  await keeper.layOnBench(skin.file, { photo: skin.fileName, to: 'TK-01', instarShed: '7' });
  const address = new URL(first.page.url()).hash;
  await keeper.bench.take('Points');
  await keeper.bench.place('Carapace', 'Front, midline', skin.landmark('carapace_anterior_mid'), skin.size);
  await keeper.bench.saved();
  const front = await keeper.bench.point('Carapace', 'Front, midline').textContent();
  await first.kill();

  const second = new Keeper((await open()).page);
  await expect(second.animal('TK-01')).toContainText('Aphonopelma seemanni');
  await second.goTo('Bench');
  await second.page.getByRole('link', { name: /Nutmeg.*skin of instar 7/ }).click();
  expect(new URL(second.page.url()).hash).toBe(address);
  await second.bench.shown();
  await second.bench.take('Points');
  await expect(second.bench.point('Carapace', 'Front, midline')).toHaveText(front ?? '');
  await expect(second.bench.panel().getByText('1 of 52 points answered')).toBeVisible();
  const sheet = await second.asks<Sheet>(`/api/photos/${address.split('/').at(-1)}/bench`);
  const at = sheet.readings[0]?.landmarks['carapace-front']?.at;
  const truth = skin.landmark('carapace_anterior_mid');
  expect(Math.hypot((at?.xPx ?? 0) - truth.x, (at?.yPx ?? 0) - truth.y)).toBeLessThan(0.15);

  const source = createHash('sha256')
    .update(await readFile(skin.file))
    .digest('hex');
  const originals = join(archive, 'originals');
  const kept = await filesIn(originals);
  expect(kept).toEqual([join(originals, source.slice(0, 2), source.slice(2))]);
  for (const file of kept) {
    expect(
      createHash('sha256')
        .update(await readFile(file))
        .digest('hex'),
    ).toBe(source);
    expect((await stat(file)).mode & 0o777).toBe(0o444);
  }
  expect(await filesIn(join(archive, 'incoming'))).toEqual([]);
});

test('an import that is killed goes on with the files it had not reached', async ({ open, archive, camera }) => {
  const first = await open();
  const keeper = new Keeper(first.page);
  await keeper.goTo('Intake');
  // So many that the import still runs, on any machine, when its first count has been read.
  const photos = await writeSeries(camera, 40);
  await keeper.choosePhotos(photos);
  await expect(first.page.getByRole('region', { name: 'Importing' }).getByRole('status')).toHaveText(/^([1-9]|[1-3]\d) of 40$/);
  await first.kill();

  const second = new Keeper((await open()).page);
  const before = await second.asks<readonly { readonly id: string }[]>('/api/photos');
  await second.goTo('Intake');
  await expect(second.page.getByText('An earlier import was cut short')).toBeVisible();
  await second.page.getByRole('button', { name: 'Go on with the rest' }).click();
  await expect(second.page.getByText('40 waiting, 0 chosen')).toBeVisible({ timeout: 60_000 });
  const after = await second.asks<readonly { readonly id: string }[]>('/api/photos');
  expect(after).toHaveLength(40);
  expect(after.map(({ id }) => id)).toEqual(expect.arrayContaining(before.map(({ id }) => id)));
  const kept = await filesIn(join(archive, 'originals'));
  const sources = await Promise.all(
    photos.map(async (file) =>
      createHash('sha256')
        .update(await readFile(file))
        .digest('hex'),
    ),
  );
  expect(kept.map((file) => file.split('/').slice(-2).join('')).toSorted()).toEqual(sources.toSorted());
});

async function filesIn(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
}
