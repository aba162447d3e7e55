import type { MediaType } from '../domain/photo/photo.ts';

/** What the first bytes say a file is: a kind that is kept, another picture by its kind, something else by its kind, or nothing known. */
export type FileKind =
  | { readonly known: 'kept'; readonly mediaType: MediaType }
  | { readonly known: 'not-kept'; readonly name: string }
  | { readonly known: 'not-a-picture'; readonly name: string }
  | { readonly known: 'no' };

/** As much of a file as `kindOf` looks at. */
export const HEAD_BYTES = 512;

interface Signature {
  readonly at: number;
  readonly bytes: readonly number[];
  readonly kind: MediaType | { readonly name: string; readonly picture: boolean };
}

function text(value: string): readonly number[] {
  return [...value].map((character) => character.charCodeAt(0));
}

/**
 * Sources: ISO/IEC 10918-1 (JPEG), ISO/IEC 15948 (PNG), RFC 9649 (WebP), TIFF 6.0, BigTIFF (libtiff), ISO/IEC 18181-2 (JPEG XL),
 * ISO/IEC 15444-1 (JPEG 2000), GIF89a, ISO 32000-1 (PDF), APPNOTE.TXT 4.3.7 (ZIP); the rest from memory.
 */
const SIGNATURES: readonly Signature[] = [
  { at: 0, bytes: [0x49, 0x49, 0x2a, 0x00, 0x10, 0, 0, 0, ...text('CR')], kind: { name: 'Camera raw', picture: true } },
  { at: 0, bytes: [0xff, 0xd8, 0xff], kind: 'image/jpeg' },
  { at: 0, bytes: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a], kind: 'image/png' },
  { at: 8, bytes: text('WEBP'), kind: 'image/webp' },
  { at: 0, bytes: [0x49, 0x49, 0x2a, 0x00], kind: 'image/tiff' },
  { at: 0, bytes: [0x4d, 0x4d, 0x00, 0x2a], kind: 'image/tiff' },
  { at: 0, bytes: [0x49, 0x49, 0x2b, 0x00], kind: 'image/tiff' },
  { at: 0, bytes: [0x4d, 0x4d, 0x00, 0x2b], kind: 'image/tiff' },
  { at: 0, bytes: text('GIF8'), kind: { name: 'GIF', picture: true } },
  { at: 0, bytes: [0xff, 0x0a], kind: { name: 'JPEG XL', picture: true } },
  { at: 0, bytes: [0, 0, 0, 0x0c, ...text('JXL ')], kind: { name: 'JPEG XL', picture: true } },
  { at: 0, bytes: [0, 0, 0, 0x0c, ...text('jP  ')], kind: { name: 'JPEG 2000', picture: true } },
  { at: 0, bytes: [0xff, 0x4f, 0xff, 0x51], kind: { name: 'JPEG 2000', picture: true } },
  { at: 0, bytes: text('8BPS'), kind: { name: 'PSD', picture: true } },
  { at: 0, bytes: text('IIRO'), kind: { name: 'Camera raw', picture: true } },
  { at: 0, bytes: text('IIU\0'), kind: { name: 'Camera raw', picture: true } },
  { at: 0, bytes: text('FUJIFILMCCD-RAW'), kind: { name: 'Camera raw', picture: true } },
  { at: 0, bytes: text('%PDF-'), kind: { name: 'PDF', picture: false } },
  { at: 0, bytes: text('PK\x03\x04'), kind: { name: 'ZIP file or office document', picture: false } },
  { at: 0, bytes: text('<svg'), kind: { name: 'SVG', picture: true } },
];

/** Brands of still pictures coded with HEVC (ISO/IEC 23008-12, annex B). */
const HEIC_BRANDS = new Set(['heic', 'heix', 'heim', 'heis']);

function matches(head: Uint8Array, { at, bytes }: Signature): boolean {
  return bytes.every((byte, index) => head[at + index] === byte);
}

function latin(head: Uint8Array, start: number, end: number): string {
  return String.fromCharCode(...head.subarray(start, end));
}

/** Files of the ISO base media family name their brands in a first box `ftyp` (ISO/IEC 14496-12, 4.3). */
function kindByBrands(head: Uint8Array): FileKind {
  const boxBytes = new DataView(head.buffer, head.byteOffset, head.byteLength).getUint32(0);
  const end = Math.min(boxBytes, head.byteLength);
  const major = latin(head, 8, 12);
  const brands = [major];
  for (let at = 16; at + 4 <= end; at += 4) brands.push(latin(head, at, at + 4));
  if (major === 'avif' || major === 'avis') return { known: 'not-kept', name: 'AVIF' };
  if (brands.some((brand) => HEIC_BRANDS.has(brand))) return { known: 'kept', mediaType: 'image/heic' };
  if (brands.includes('avif')) return { known: 'not-kept', name: 'AVIF' };
  if (major === 'crx ') return { known: 'not-kept', name: 'Camera raw' };
  if (major === 'mif1' || major === 'msf1' || major === 'hevc') return { known: 'not-kept', name: `HEIF (${major})` };
  return { known: 'not-a-picture', name: `video (${major.trim()})` };
}

/** Decides by magic bytes alone; a file's name and its extension have no say. */
export function kindOf(head: Uint8Array): FileKind {
  if (head.byteLength >= 12 && latin(head, 4, 8) === 'ftyp') return kindByBrands(head);
  const found = SIGNATURES.find((signature) => matches(head, signature));
  // "BM" alone is too little: plain text may begin so. A bitmap's reserved bytes are zero.
  const bitmap = latin(head, 0, 2) === 'BM' && head.byteLength >= 14 && head.subarray(6, 10).every((byte) => byte === 0);
  if (bitmap) return { known: 'not-kept', name: 'BMP' };
  if (!found) return { known: 'no' };
  if (typeof found.kind === 'string') return { known: 'kept', mediaType: found.kind };
  return { known: found.kind.picture ? 'not-kept' : 'not-a-picture', name: found.kind.name };
}
