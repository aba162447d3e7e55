import type { Ellipse } from '../../measuring/ellipse.ts';
import { type LightPlanes, reducePlanes } from '../light.ts';
import type { Scene } from './consensus.ts';
import { windowOf } from './hue.ts';
import { shifted } from './rim.ts';
import { enlarged } from './search.ts';

/** Outlines are told apart at about this radius: a wall is then some pixels wide, and relief does not drown it. */
const WORKING_RADIUS_PX = 90;
/** What is seen about an outline, beyond its greater radius: a share of that, and px. */
const WINDOW_SHARE = 1.35;
const WINDOW_MARGIN_PX = 16;

/** What lies about an outline, reduced to the size at which outlines are told apart. */
export interface CloseUp {
  readonly scene: Scene;
  /** A length in the scene times this is one of the picture. */
  readonly factor: number;
  /** The outline in the frame of the scene, and one of the scene in that of the picture. */
  readonly inScene: (ellipse: Ellipse) => Ellipse;
  readonly inPicture: (ellipse: Ellipse) => Ellipse;
}

export function closeUpOf(whole: LightPlanes, about: Ellipse): CloseUp {
  const { planes, origin, frame } = windowOf(whole, about.centre, WINDOW_SHARE * about.semiMajorPx + WINDOW_MARGIN_PX);
  const factor = Math.max(1, Math.round(about.semiMinorPx / WORKING_RADIUS_PX));
  const { left, top, right, bottom } = frame;
  return {
    scene: {
      planes: reducePlanes(planes, factor),
      frame: { left: left / factor, top: top / factor, right: right / factor, bottom: bottom / factor },
    },
    factor,
    inScene: (ellipse) => enlarged(shifted(ellipse, -origin.xPx, -origin.yPx), 1 / factor),
    inPicture: (ellipse) => shifted(enlarged(ellipse, factor), origin.xPx, origin.yPx),
  };
}
