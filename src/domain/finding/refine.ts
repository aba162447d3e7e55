import { calibrate } from '../measuring/calibrate.ts';
import type { PictureFacts } from '../measuring/camera.ts';
import { checkCorners } from '../measuring/corners.ts';
import { KNOWN_RECTANGLES } from '../measuring/knownRectangles.ts';
import type { ImagePoint } from '../measuring/points.ts';
import { checkCornersWithinPicture, checkWithinPicture } from '../measuring/withinPicture.ts';
import { assertNever, type Result, succeed } from '../result.ts';
import { refineRectangle, workingFactor } from './card.ts';
import { diskMarks } from './coin/coinMarks.ts';
import { rimAbout, rimThrough } from './coin/findCoin.ts';
import type { FoundScale } from './foundScale.ts';
import type { LightImage, LightPlanes } from './light.ts';
import { GRADUATION_MM, type RoughScale } from './refinement.ts';
import { findTicks } from './rule.ts';
import { enlargedEvidence, enlargedMarks, rectangleMarks, ruleMarks, sidesEvidence, ticksEvidence } from './scaleMarks.ts';

/**
 * What is wrong with the rough marks before anybody looks at the picture. Fails with `points-outside-picture` or as `checkCorners` does.
 */
export function checkRough(rough: RoughScale, picture: Pick<PictureFacts, 'widthPx' | 'heightPx'>): Result<RoughScale> {
  if (rough.kind !== 'rectangle') {
    const within = checkWithinPicture(rough.kind === 'rule' ? rough.ends : rough.at, picture);
    return within.ok ? succeed(rough) : within;
  }
  const { corners } = rough.marks;
  const within = checkCornersWithinPicture(corners, picture);
  if (!within.ok) return within;
  const checked = checkCorners(corners);
  return checked.ok ? succeed(rough) : checked;
}

/** By which whole factor the picture may be reduced without the refined marks becoming any worse. */
export function factorFor(rough: RoughScale): number {
  return rough.kind === 'rectangle' ? workingFactor(rough.marks.corners) : 1;
}

export interface LightOfPicture {
  readonly image: LightImage;
  readonly colors: LightPlanes;
  /** A point (x, y) of these is (factor x, factor y) of the whole picture. */
  readonly factor: number;
}

/**
 * Marks from where a keeper has pointed roughly, refined on the edges of the picture.
 *
 * @param rough in pixels of the whole picture, which `picture` describes; so are the marks.
 * @returns the failures of `refineRectangle`, `findTicks`, `rimAbout`, `rimThrough`, and of `calibrate` when what was found
 * gives no scale.
 */
export function refineScale(light: LightOfPicture, rough: RoughScale, picture: PictureFacts): Result<FoundScale> {
  const found = refineIn(light, rough, picture);
  if (!found.ok) return found;
  const calibrated = calibrate(found.value.marks, picture);
  return calibrated.ok ? found : calibrated;
}

function refineIn({ image, colors, factor }: LightOfPicture, rough: RoughScale, picture: PictureFacts): Result<FoundScale> {
  const small = ({ xPx, yPx }: ImagePoint): ImagePoint => ({ xPx: xPx / factor, yPx: yPx / factor });
  switch (rough.kind) {
    case 'rectangle': {
      const { marks } = rough;
      const [a, b, c, d] = marks.corners;
      const cornerRadiusMm = marks.object === 'own' ? rough.cornerRadiusMm : KNOWN_RECTANGLES[marks.object].cornerRadiusMm;
      const facts = { ...picture, widthPx: picture.widthPx / factor, heightPx: picture.heightPx / factor };
      const found = refineRectangle(colors, [small(a), small(b), small(c), small(d)], { ...marks, cornerRadiusMm }, facts);
      if (!found.ok) return found;
      return succeed({
        marks: enlargedMarks(rectangleMarks(marks, found.value), factor),
        evidence: enlargedEvidence(sidesEvidence(found.value), factor),
      });
    }
    case 'rule': {
      const ends = [small(rough.ends[0]), small(rough.ends[1])] as const;
      const found = findTicks(image, ...ends);
      if (!found.ok) return found;
      const rule = {
        graduationMm: GRADUATION_MM[rough.graduation],
        heightMm: rough.heightMm,
        faceHeightStandardUncertaintyMm: rough.faceHeightStandardUncertaintyMm,
      };
      const marks = enlargedMarks(ruleMarks(found.value, ends, rule), factor);
      return succeed({ marks, evidence: enlargedEvidence(ticksEvidence(found.value, false), factor) });
    }
    case 'coin': {
      const [first, second, third] = rough.at;
      const rim = second && third ? rimThrough(colors, [small(first), small(second), small(third)]) : rimAbout(colors, small(first));
      if (!rim.ok) return rim;
      const { coverage, agreement, residualPx, settled, visible } = rim.value;
      return succeed({
        marks: enlargedMarks(diskMarks(rim.value, rough.disk), factor),
        evidence: { kind: 'rim', coverage, agreement, residualPx: factor * residualPx, settled, visible, coinAssumed: false, coins: [] },
      });
    }
    default:
      return assertNever(rough);
  }
}
