import exifr from 'exifr';

const NEW_SUBFILE_TYPE = 254;
const REDUCED_RESOLUTION = 1;
const DNG_VERSION = 50_706;

const OPTIONS = {
  tiff: true,
  ifd0: { pick: [NEW_SUBFILE_TYPE, DNG_VERSION] },
  translateKeys: false,
  translateValues: false,
  exif: false,
  gps: false,
};

/**
 * Raw files of many cameras are TIFF files whose first picture is a small preview (TIFF 6.0, NewSubfileType; DNG 1.7,
 * DNGVersion). Taken for a TIFF, the preview would be measured.
 */
export async function isCameraRaw(path: string): Promise<boolean> {
  try {
    const tags: unknown = await exifr.parse(path, OPTIONS);
    if (typeof tags !== 'object' || tags === null) return false;
    const found = new Map(Object.entries(tags));
    return found.has(String(DNG_VERSION)) || Number(found.get(String(NEW_SUBFILE_TYPE)) ?? 0) % 2 === REDUCED_RESOLUTION;
  } catch {
    // exifr knows no BigTIFF and gives up on damaged directories; the decoder has the last word on those.
    return false;
  }
}
