import { factorTo, type LightImage, reduceLight } from '../domain/finding/light.ts';
import type { FoundMarker, SeenMarkers } from '../domain/finding/markers/found.ts';
import { encodeSrgb } from '../domain/numerics/srgb.ts';
import { openThread } from './askedThread.ts';
import type { DetectingQuestion } from './fiducialDetecting.ts';

/** Finds printed markers; its thread and its library are loaded with the first picture and stay until it is closed. */
export interface FiducialDetector {
  /** Markers of the dictionary in a picture, corners in its frame, to about a pixel of the reduced picture. */
  find(image: LightImage): Promise<SeenMarkers>;
  close(): Promise<void>;
}

/** Markers keep more than their six cells' worth of pixels at this size, and detection takes a tenth of a second. */
const DETECTING_LONGEST_PX = 2048;

export function openFiducialDetector(): FiducialDetector {
  const thread = openThread<DetectingQuestion, SeenMarkers>('fiducialDetecting', 'marker detector');
  return {
    async find(image) {
      const factor = factorTo(image, DETECTING_LONGEST_PX);
      const small = reduceLight(image, factor);
      const gray = encodedGray(small);
      const markers = await thread.ask({ widthPx: small.widthPx, heightPx: small.heightPx, gray }, [gray.buffer]);
      // Columns that fill no block fell away on the right: turned over, they are missing on the left.
      const missingPx = image.widthPx - factor * small.widthPx;
      return {
        upright: markers.upright.map((marker) => enlarged(marker, factor, 0)),
        mirrored: markers.mirrored.map((marker) => enlarged(marker, factor, missingPx)),
      };
    },
    close: thread.close,
  };
}

function enlarged({ markerId, corners }: FoundMarker, factor: number, fromLeftPx: number): FoundMarker {
  const [a, b, c, d] = corners;
  const at = ({ xPx, yPx }: (typeof corners)[number]) => ({ xPx: fromLeftPx + factor * xPx, yPx: factor * yPx });
  return { markerId, corners: [at(a), at(b), at(c), at(d)] };
}

const TABLE_SIZE = 4096;

/** Encoded as sRGB: the detector's thresholds are made for encoded gray, in which shadows are not as deep. */
function encodedGray({ light }: LightImage): Uint8Array<ArrayBuffer> {
  const table = Uint8Array.from({ length: TABLE_SIZE + 1 }, (_, index) => {
    const linear = index / TABLE_SIZE;
    return Math.round(255 * encodeSrgb(linear));
  });
  const gray = new Uint8Array(light.length);
  for (let index = 0; index < gray.length; index += 1) {
    gray[index] = table[Math.round(TABLE_SIZE * Math.min(1, Math.max(0, light[index] ?? 0)))] ?? 0;
  }
  return gray;
}
