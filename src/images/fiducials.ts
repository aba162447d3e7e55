import { extname } from 'node:path';
import { Worker } from 'node:worker_threads';
import { factorTo, type LightImage, reduceLight } from '../domain/finding/light.ts';
import type { FoundMarker, SeenMarkers } from '../domain/finding/markers/found.ts';
import { encodeSrgb } from '../domain/numerics/srgb.ts';
import type { DetectingAnswer, DetectingQuestion } from './fiducialDetecting.ts';

/** Finds printed markers; its thread and its library are loaded with the first picture and stay until it is closed. */
export interface FiducialDetector {
  /** Markers of the dictionary in a picture, corners in its frame, to about a pixel of the reduced picture. */
  find(image: LightImage): Promise<SeenMarkers>;
  close(): Promise<void>;
}

/** The same folder holds the thread's program both as source and as built, each under its own ending. */
const DETECTING = new URL(`./fiducialDetecting${extname(import.meta.filename)}`, import.meta.url);

/** Markers keep more than their six cells' worth of pixels at this size, and detection takes a tenth of a second. */
const DETECTING_LONGEST_PX = 2048;

interface Waiting {
  readonly resolve: (markers: SeenMarkers) => void;
  readonly reject: (error: Error) => void;
}

export function openFiducialDetector(): FiducialDetector {
  const waiting = new Map<number, Waiting>();
  let worker: Worker | null = null;
  let nextTicket = 1;

  const failAll = (ended: Worker, error: Error): void => {
    // A thread that failed also ends; by then another may have taken its place.
    if (worker !== ended) return;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
    worker = null;
  };
  const started = (): Worker => {
    if (worker) return worker;
    const fresh = new Worker(DETECTING);
    fresh.on('message', (answer: DetectingAnswer) => {
      const asked = waiting.get(answer.ticket);
      waiting.delete(answer.ticket);
      // A thread with nothing to do must not keep the program from ending.
      if (waiting.size === 0) fresh.unref();
      if ('markers' in answer) asked?.resolve(answer.markers);
      else asked?.reject(new Error(`The marker detector failed: ${answer.reason}`));
    });
    fresh.on('error', (error) => failAll(fresh, error));
    fresh.on('exit', (code) => failAll(fresh, new Error(`Expected markers from the detector but it ended with ${code}`)));
    worker = fresh;
    return fresh;
  };

  return {
    async find(image) {
      const factor = factorTo(image, DETECTING_LONGEST_PX);
      const small = reduceLight(image, factor);
      const question: DetectingQuestion = {
        ticket: nextTicket,
        widthPx: small.widthPx,
        heightPx: small.heightPx,
        gray: encodedGray(small),
      };
      nextTicket += 1;
      const markers = await new Promise<SeenMarkers>((resolve, reject) => {
        waiting.set(question.ticket, { resolve, reject });
        const thread = started();
        thread.ref();
        thread.postMessage(question, [question.gray.buffer]);
      });
      // Columns that fill no block fell away on the right: turned over, they are missing on the left.
      const missingPx = image.widthPx - factor * small.widthPx;
      return {
        upright: markers.upright.map((marker) => enlarged(marker, factor, 0)),
        mirrored: markers.mirrored.map((marker) => enlarged(marker, factor, missingPx)),
      };
    },
    async close() {
      await worker?.terminate();
    },
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
