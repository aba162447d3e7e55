import { createRequire } from 'node:module';
import type { FoundMarker, SeenMarkers } from '../domain/finding/markers/found.ts';
import { answerQuestions } from './answeringThread.ts';
import type { OpenCv } from './opencv.ts';

/** Gray picture, sRGB-encoded, one byte a pixel. */
export interface DetectingQuestion {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly gray: Uint8Array<ArrayBuffer>;
}

/** OpenCV counts from the center of the top-left pixel, we from its corner. */
const TO_OUR_FRAME_PX = 0.5;

/**
 * Runs in a thread of its own as long as its detector is open: loading takes most of a second and a hundred megabytes.
 * Compiled by Emscripten: what is made in it must be deleted by hand.
 */
const loading: Promise<OpenCv> = createRequire(import.meta.url)('@techstark/opencv-js');

function detect(cv: OpenCv, { widthPx, heightPx, gray }: DetectingQuestion): readonly FoundMarker[] {
  const picture = new cv.Mat(heightPx, widthPx, cv.CV_8UC1);
  const dictionary = cv.getPredefinedDictionary(cv.DICT_4X4_50);
  const parameters = new cv.aruco_DetectorParameters();
  const refining = new cv.aruco_RefineParameters(10, 3, true);
  const detector = new cv.aruco_ArucoDetector(dictionary, parameters, refining);
  const corners = new cv.MatVector();
  const ids = new cv.Mat();
  try {
    picture.data.set(gray);
    detector.detectMarkers(picture, corners, ids);
    return Array.from({ length: corners.size() }, (_, index) => {
      const quad = corners.get(index);
      const at = (corner: number) => ({
        xPx: (quad.data32F[2 * corner] ?? Number.NaN) + TO_OUR_FRAME_PX,
        yPx: (quad.data32F[2 * corner + 1] ?? Number.NaN) + TO_OUR_FRAME_PX,
      });
      const marker: FoundMarker = { markerId: ids.data32S[index] ?? -1, corners: [at(0), at(1), at(2), at(3)] };
      quad.delete();
      return marker;
    });
  } finally {
    for (const made of [ids, corners, detector, refining, parameters, dictionary, picture]) made.delete();
  }
}

function detectBothWays(cv: OpenCv, question: DetectingQuestion): SeenMarkers {
  const upright = detect(cv, question);
  const { widthPx, heightPx, gray } = question;
  for (let row = 0; row < heightPx; row += 1) gray.subarray(row * widthPx, (row + 1) * widthPx).reverse();
  return { upright, mirrored: detect(cv, question) };
}

answerQuestions<DetectingQuestion, SeenMarkers>(async (question) => detectBothWays(await loading, question));
