import { type Ellipse, pointOn } from '../../measuring/ellipse.ts';
import { type LightPlanes, lightAt } from '../light.ts';
import type { Scene } from './consensus.ts';
import { isWithin } from './hue.ts';

/** How a picture changes from inside to outside of an outline. */
export interface Step {
  /** How alike the change is all around, 0 to 1: near 1 for a disk of another material than its ground. */
  readonly coherence: number;
  /** Length of the mean change: natural logarithm for a rim found by color, else light. */
  readonly contrast: number;
}

const STEP_SHARE = 0.06;
const STEP_SECTORS = 36;
const SAMPLES_PER_SECTOR = 8;

/** The mean step from a little inside to a little outside, and its length over the mean length of the steps. */
export function stepAround({ planes, frame }: Scene, ellipse: Ellipse): Step {
  const { centre, semiMajorPx, semiMinorPx } = ellipse;
  const aside = Math.max(1.5, STEP_SHARE * semiMinorPx);
  const around = (byPx: number): Ellipse => ({ ...ellipse, centre, semiMajorPx: semiMajorPx + byPx, semiMinorPx: semiMinorPx + byPx });
  const sum = planes.map(() => 0);
  let lengths = 0;
  let sectors = 0;
  for (let sector = 0; sector < STEP_SECTORS; sector += 1) {
    if (!isWithin(frame, pointOn(around(aside), (2 * Math.PI * (sector + 0.5)) / STEP_SECTORS))) continue;
    sectors += 1;
    const steps = planes.map((plane) => sectorMean(plane, around(aside), sector) - sectorMean(plane, around(-aside), sector));
    steps.forEach((step, index) => {
      sum[index] = (sum[index] ?? 0) + step;
    });
    lengths += Math.hypot(...steps);
  }
  const total = Math.hypot(...sum);
  return { coherence: lengths > 0 ? total / lengths : 0, contrast: sectors > 0 ? total / sectors : 0 };
}

function sectorMean(plane: LightPlanes[number], ellipse: Ellipse, sector: number): number {
  let sum = 0;
  for (let index = 0; index < SAMPLES_PER_SECTOR; index += 1) {
    const { xPx, yPx } = pointOn(ellipse, (2 * Math.PI * (sector + index / SAMPLES_PER_SECTOR)) / STEP_SECTORS);
    sum += lightAt(plane, xPx, yPx);
  }
  return sum / SAMPLES_PER_SECTOR;
}
