import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { kindOf } from '../../src/images/kind.ts';

const FIXTURES = join(import.meta.dirname, '../fixtures/images');

const square = sharp({ create: { width: 8, height: 8, channels: 3, background: '#a33' } });

function bytes(...parts: readonly (string | readonly number[])[]): Uint8Array {
  return Buffer.concat(parts.map((part) => (typeof part === 'string' ? Buffer.from(part, 'latin1') : Buffer.from(part))));
}

/** A first box of the ISO base media family with these brands. */
function fileType(major: string, ...compatible: readonly string[]): Uint8Array {
  return bytes([0, 0, 0, 16 + 4 * compatible.length], 'ftyp', major, [0, 0, 0, 0], compatible.join(''), 'mdat.....heic');
}

describe('the kind of a file by its first bytes', () => {
  test.each([
    ['jpeg', 'image/jpeg'],
    ['png', 'image/png'],
    ['webp', 'image/webp'],
    ['tiff', 'image/tiff'],
  ] as const)('what libvips writes as %s is kept as %s', async (format, mediaType) => {
    expect(kindOf(await square.clone().toFormat(format).toBuffer())).toEqual({ known: 'kept', mediaType });
  });

  test('what x265 writes is HEIC', () => {
    expect(kindOf(readFileSync(join(FIXTURES, 'turned-by-container.heic')))).toEqual({ known: 'kept', mediaType: 'image/heic' });
  });

  test('AVIF and GIF from libvips are named and not kept', async () => {
    expect(kindOf(await square.clone().avif().toBuffer())).toEqual({ known: 'not-kept', name: 'AVIF' });
    expect(kindOf(await square.clone().gif().toBuffer())).toEqual({ known: 'not-kept', name: 'GIF' });
  });

  test.each([
    ['heic by a compatible brand', fileType('mif1', 'mif1', 'heic'), { known: 'kept', mediaType: 'image/heic' }],
    ['ten bits deep', fileType('heix', 'mif1'), { known: 'kept', mediaType: 'image/heic' }],
    ['avif by a compatible brand', fileType('mif1', 'avif', 'miaf'), { known: 'not-kept', name: 'AVIF' }],
    ['HEIF of another coding', fileType('mif1', 'miaf'), { known: 'not-kept', name: 'HEIF (mif1)' }],
    ['a movie', fileType('qt  ', 'qt  '), { known: 'not-a-picture', name: 'video (qt)' }],
    ['a raw file in that family', fileType('crx ', 'isom'), { known: 'not-kept', name: 'Camera raw' }],
    ['big-endian TIFF', bytes('MM', [0, 0x2a]), { known: 'kept', mediaType: 'image/tiff' }],
    ['BigTIFF', bytes('II', [0x2b, 0, 8, 0]), { known: 'kept', mediaType: 'image/tiff' }],
    ['a raw file like a TIFF', bytes('II', [0x2a, 0, 16, 0, 0, 0], 'CR'), { known: 'not-kept', name: 'Camera raw' }],
    ['a bitmap', bytes('BM', [9, 9, 9, 9, 0, 0, 0, 0, 54, 0, 0, 0]), { known: 'not-kept', name: 'BMP' }],
    ['a JPEG XL stream', bytes([0xff, 0x0a, 1]), { known: 'not-kept', name: 'JPEG XL' }],
    ['a PDF', bytes('%PDF-1.7'), { known: 'not-a-picture', name: 'PDF' }],
    ['a ZIP', bytes('PK', [3, 4, 20, 0]), { known: 'not-a-picture', name: 'ZIP file or office document' }],
    ['plain text', bytes('BMW, not a bitmap at all'), { known: 'no' }],
    ['two bytes of a JPEG', bytes([0xff, 0xd8]), { known: 'no' }],
    ['nothing', bytes(), { known: 'no' }],
    ['a RIFF sound', bytes('RIFF', [0, 0, 0, 0], 'WAVE'), { known: 'no' }],
  ] as const)('%s', (_, head, kind) => {
    expect(kindOf(head)).toEqual(kind);
  });
});
