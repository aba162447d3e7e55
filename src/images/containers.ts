import { type FileHandle, open } from 'node:fs/promises';
import type { MediaType } from '../domain/photo/photo.ts';

/** A file with a way to look at a few bytes anywhere; fewer come back at its end. */
interface Bytes {
  readonly size: number;
  at(position: number, count: number): Promise<Buffer>;
}

/** Whether the container itself announces more bytes than there are. False where it doesn't say. */
export async function endsEarly(path: string, mediaType: MediaType): Promise<boolean> {
  const handle = await open(path, 'r');
  try {
    return await ENDS_EARLY[mediaType](await bytesOf(handle));
  } finally {
    await handle.close();
  }
}

async function bytesOf(handle: FileHandle): Promise<Bytes> {
  const { size } = await handle.stat();
  return {
    size,
    async at(position, count) {
      const { buffer, bytesRead } = await handle.read(Buffer.alloc(count), 0, count, position);
      return buffer.subarray(0, bytesRead);
    },
  };
}

const ENDS_EARLY: Readonly<Record<MediaType, (bytes: Bytes) => Promise<boolean>>> = {
  'image/jpeg': jpegEndsEarly,
  'image/png': pngEndsEarly,
  'image/webp': webpEndsEarly,
  'image/tiff': tiffEndsEarly,
  'image/heic': boxesEndEarly,
};

const SCAN_CHUNK = 1 << 20;

/**
 * Segments of marker and length up to the first scan, then coded data in which FF D9 is the end of the picture and nothing else
 * (ITU-T T.81, B.1.1). The decoder says so too, but decoders at work side by side share the place where they say it.
 */
async function jpegEndsEarly({ size, at }: Bytes): Promise<boolean> {
  let position = 2;
  for (let isScan = false; !isScan; ) {
    const head = await at(position, 4);
    if (head.byteLength < 4) return true;
    // Not a marker: damaged rather than cut off.
    if (head[0] !== 0xff) return false;
    isScan = head[1] === 0xda;
    position += 2 + head.readUInt16BE(2);
  }
  // One byte over again, for an end that lies across two chunks.
  for (; position < size; position += SCAN_CHUNK - 1) {
    if ((await at(position, SCAN_CHUNK)).includes(END_OF_JPEG)) return false;
  }
  return true;
}

const END_OF_JPEG = Buffer.from([0xff, 0xd9]);

/** A RIFF file's length stands in its header (RFC 9649, 2.4). */
async function webpEndsEarly({ size, at }: Bytes): Promise<boolean> {
  return size < 12 || (await at(4, 4)).readUInt32LE() + 8 > size;
}

/** Chunks of length, type, data and checksum, up to IEND (ISO/IEC 15948, 5.3). */
async function pngEndsEarly({ size, at }: Bytes): Promise<boolean> {
  for (let position = 8; position < size; ) {
    const head = await at(position, 8);
    if (head.byteLength < 8) return true;
    position += 12 + head.readUInt32BE();
    if (position > size) return true;
    if (head.toString('latin1', 4) === 'IEND') return false;
  }
  return true;
}

/** Boxes of length and type; 0 means to the end of the file, 1 that a 64-bit length follows (ISO/IEC 14496-12, 4.2). */
async function boxesEndEarly({ size, at }: Bytes): Promise<boolean> {
  for (let position = 0; position < size; ) {
    const head = await at(position, 16);
    if (head.byteLength < 8) return true;
    const short = head.readUInt32BE();
    if (short === 0) return false;
    if (short === 1 && head.byteLength < 16) return true;
    const length = short === 1 ? Number(head.readBigUInt64BE(8)) : short;
    // A box shorter than its own head is damage of another kind.
    if (length < 8) return false;
    position += length;
    if (position > size) return true;
  }
  return false;
}

/** Bytes of one value by its field type (TIFF 6.0, section 2); 0 for types not known. */
const TIFF_TYPE_BYTES = [0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8];

/** The first directory and the values it points to must lie in the file (TIFF 6.0, section 2). BigTIFF is left to the decoder. */
async function tiffEndsEarly({ size, at }: Bytes): Promise<boolean> {
  const head = await at(0, 8);
  if (head.byteLength < 8) return true;
  const little = head.toString('latin1', 0, 2) === 'II';
  const short = (from: Buffer, position: number) => (little ? from.readUInt16LE(position) : from.readUInt16BE(position));
  const long = (from: Buffer, position: number) => (little ? from.readUInt32LE(position) : from.readUInt32BE(position));
  if (short(head, 2) !== 42) return false;
  const directory = long(head, 4);
  const count = await at(directory, 2);
  if (count.byteLength < 2) return true;
  const entries = await at(directory + 2, 12 * short(count, 0));
  if (entries.byteLength < 12 * short(count, 0)) return true;
  for (let entry = 0; entry < entries.byteLength; entry += 12) {
    const valueBytes = (TIFF_TYPE_BYTES[short(entries, entry + 2)] ?? 0) * long(entries, entry + 4);
    if (valueBytes > 4 && long(entries, entry + 8) + valueBytes > size) return true;
  }
  return false;
}
