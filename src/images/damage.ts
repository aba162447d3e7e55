import { open } from 'node:fs/promises';
import type { Failure } from '../domain/failure.ts';
import type { MediaType } from '../domain/photo/photo.ts';
import type { PictureFile } from './picture.ts';

/** What decoders say when the data ends too early: libjpeg, libspng, libtiff, libwebp, in this order. */
const ENDED_EARLY = /premature end|truncat|end of file|end of stream|read error|not enough data|unexpected end|fread/i;

/** Turns a decoder's complaint into what a person can use: the file was cut short, or can't be read for the reason given. */
export async function decodingFailure(file: PictureFile, mediaType: MediaType, error: unknown): Promise<Failure> {
  const reason = error instanceof Error ? error.message : String(error);
  const cutShort = ENDED_EARLY.test(reason) || (await endsEarly(file.path, mediaType));
  return cutShort ? { code: 'file-truncated', file: file.name } : { code: 'file-unreadable', file: file.name, reason: firstLine(reason) };
}

function firstLine(reason: string): string {
  return (reason.split('\n')[0] ?? '').slice(0, 200);
}

/** Whether the container itself announces more bytes than there are. False where it doesn't say. */
export async function endsEarly(path: string, mediaType: MediaType): Promise<boolean> {
  const handle = await open(path, 'r');
  try {
    const { size } = await handle.stat();
    const bytesAt = async (at: number, count: number): Promise<Buffer> => {
      const { buffer, bytesRead } = await handle.read(Buffer.alloc(count), 0, count, at);
      return buffer.subarray(0, bytesRead);
    };
    switch (mediaType) {
      case 'image/webp':
        return size < 12 || (await bytesAt(4, 4)).readUInt32LE() + 8 > size;
      case 'image/png':
        return await chainEndsEarly(size, 8, bytesAt, pngChunk);
      case 'image/heic':
        return await chainEndsEarly(size, 0, bytesAt, isoBox);
      case 'image/jpeg':
      case 'image/tiff':
        return false;
    }
  } finally {
    await handle.close();
  }
}

interface Piece {
  readonly byteLength: number;
  readonly last: boolean;
}

type PieceReader = (head: Buffer, remaining: number) => Piece | null;

/** Length, type, data, checksum; IEND ends the file (ISO/IEC 15948, 5.3). */
function pngChunk(head: Buffer): Piece | null {
  if (head.byteLength < 8) return null;
  return { byteLength: 12 + head.readUInt32BE(), last: head.toString('latin1', 4, 8) === 'IEND' };
}

/** Length and type; 0 means to the end of the file, 1 that a 64-bit length follows (ISO/IEC 14496-12, 4.2). */
function isoBox(head: Buffer, remaining: number): Piece | null {
  if (head.byteLength < 8) return null;
  const short = head.readUInt32BE();
  if (short === 0) return { byteLength: remaining, last: true };
  if (short === 1) return head.byteLength < 16 ? null : { byteLength: Number(head.readBigUInt64BE(8)), last: false };
  return short < 8 ? null : { byteLength: short, last: false };
}

async function chainEndsEarly(
  size: number,
  start: number,
  bytesAt: (at: number, count: number) => Promise<Buffer>,
  readPiece: PieceReader,
): Promise<boolean> {
  const endsWithMark = readPiece === pngChunk;
  let at = start;
  while (at < size) {
    const piece = readPiece(await bytesAt(at, 16), size - at);
    if (!piece || at + piece.byteLength > size) return true;
    if (piece.last) return false;
    at += piece.byteLength;
  }
  return endsWithMark;
}
