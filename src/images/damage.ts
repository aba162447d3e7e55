import type { Failure } from '../domain/failure.ts';
import type { MediaType } from '../domain/photo/photo.ts';
import { endsEarly } from './containers.ts';
import type { PictureFile } from './pictureFile.ts';

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
