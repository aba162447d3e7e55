import { PDFDocument } from '@cantoo/pdf-lib';
import sharp from 'sharp';
import { expect } from 'vitest';
import { darkShareIn } from '../../support/darkPixels.ts';
import { type Exchange, fails, type Memory, recall, succeeds } from '../exchange.ts';

const animal = (memory: Memory) => ({ specimenId: recall(memory, 'specimen') });

/** On the animal whose one skin was measured. */
export const galleryStory: readonly Exchange[] = [
  succeeds(
    'GET /api/specimens/{specimenId}/ladder',
    'names the cut that the marks of the skin give',
    (memory) => ({ path: animal(memory) }),
    ({ gallery }, _, memory) => {
      expect(gallery.map(({ cutReady }) => cutReady)).toEqual([false]);
      memory.set('cut', gallery[0]?.cutKey ?? '');
    },
  ),
  succeeds(
    'GET /api/photos/{photoId}/cuts/{cutKey}',
    'lays the skin flat',
    (memory) => ({ path: { photoId: recall(memory, 'photo'), cutKey: recall(memory, 'cut') } }),
    async (_, response) => {
      expect(response.headers.get('content-type')).toBe('image/webp');
      expect(await sharp(await response.arrayBuffer()).metadata()).toMatchObject({ format: 'webp' });
    },
  ),
  fails('GET /api/photos/{photoId}/cuts/{cutKey}', 'gives no cut of marks that are gone', 'not-found', 404, (memory) => ({
    path: { photoId: recall(memory, 'photo'), cutKey: '0-0' },
  })),
  succeeds(
    'GET /api/specimens/{specimenId}/ladder',
    'keeps the cut',
    (memory) => ({ path: animal(memory) }),
    ({ gallery }) => expect(gallery.map(({ cutReady }) => cutReady)).toEqual([true]),
  ),
  succeeds(
    'POST /api/specimens/{specimenId}/cuts',
    'prepares all skins of the animal as a task',
    (memory) => ({ path: animal(memory) }),
    (task) => expect(task).toMatchObject({ kind: 'gallery', total: 1 }),
  ),
  succeeds(
    'GET /api/specimens/{specimenId}/contact-sheet.pdf',
    'prints the skins on letter paper',
    (memory) => ({ path: animal(memory), query: { sheet: 'letter' as const, scale: 'true' as const } }),
    async (_, response) => {
      expect(response.headers.get('content-type')).toBe('application/pdf');
      const [page] = (await PDFDocument.load(await response.arrayBuffer())).getPages();
      expect(page?.getWidth()).toBeCloseTo(612, 6);
      expect(page?.getHeight()).toBeCloseTo(792, 6);
    },
  ),
  succeeds(
    'GET /api/specimens/{specimenId}/contact-sheet.png',
    'draws the same as a picture',
    (memory) => ({ path: animal(memory), query: { sheet: 'a4' as const } }),
    async (_, response) => {
      const sheet = Buffer.from(await response.arrayBuffer());
      const { format, width, height } = await sharp(sheet).metadata();
      expect([format, width, height]).toEqual(['png', 1654, 2339]);
      // The title stands on its baseline 18 mm from the top, 12 mm from the left.
      expect(await darkShareIn(sheet, { left: 94, top: 104, width: 60, height: 40 })).toBeGreaterThan(0.05);
      const middle = await sharp(sheet).extract({ left: 400, top: 300, width: 850, height: 1500 }).greyscale().png().toBuffer();
      expect((await sharp(middle).stats()).channels[0]?.stdev).toBeGreaterThan(3);
    },
  ),
  succeeds(
    'GET /api/specimens/{specimenId}/flip-book.webp',
    'makes a flip-book',
    (memory) => ({ path: animal(memory) }),
    async (_, response) => {
      const book = Buffer.from(await response.arrayBuffer());
      expect((await sharp(book).metadata()).format).toBe('webp');
      expect(await darkShareIn(book, { left: 20, top: 20, width: 50, height: 18 })).toBeGreaterThan(0.05);
      const { height = 0 } = await sharp(book).metadata();
      const below = await sharp(book)
        .extract({ left: 0, top: Math.round(height / 2), width: 300, height: 200 })
        .greyscale()
        .png()
        .toBuffer();
      expect((await sharp(below).stats()).channels[0]?.stdev).toBeGreaterThan(3);
    },
  ),
  fails('GET /api/specimens/{specimenId}/contact-sheet.pdf', 'knows no other paper', 'input-invalid', 400, (memory) => ({
    path: animal(memory),
    query: { sheet: 'a0' as 'a4' },
  })),
];
