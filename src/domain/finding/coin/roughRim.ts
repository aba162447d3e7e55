import type { Ellipse } from '../../measuring/ellipse.ts';
import { seededGenerator } from '../../numerics/generator.ts';
import type { LightPlanes } from '../light.ts';
import { consensusEllipse, LEAST_VISIBLE, type Outline, raysAcross, type Scene } from './consensus.ts';
import { HUE, HUE_DECIDES, LIGHT, type Senses } from './senses.ts';
import { type Step, stepAround } from './stepAround.ts';

/** An outline that was not polished yet: enough to tell which places deserve a closer look. */
export interface RoughRim extends Pick<Step, 'coherence'> {
  readonly ellipse: Ellipse;
  /** 0 to 1 */
  readonly agreement: number;
  /** Share of it that lies in the picture, 0 to 1 */
  readonly visible: number;
}

/** How far from the rough outline the rim may lie, as a share of its lesser radius. */
export const ROUGH_REACH = 0.2;
const ROUGH_RAYS = 96;
/** Coins smaller than this have too few pixels to say anything. */
export const LEAST_RADIUS_PX = 6;
const SEED = 1;

/** The outline that most edges about a rough one agree on, by color where it decides; at a tenth of the cost of `refineRim`. */
export function roughRim(light: LightPlanes, hues: LightPlanes | null, rough: Ellipse): RoughRim | null {
  if (!(rough.semiMinorPx >= LEAST_RADIUS_PX)) return null;
  const [{ widthPx, heightPx }] = light;
  const frame = { left: 0, top: 0, right: widthPx, bottom: heightPx };
  const byHue = hues && agree({ planes: hues, frame }, rough, ROUGH_REACH, HUE);
  if (hues && byHue && byHue.agreement >= HUE_DECIDES)
    return { ...byHue, coherence: stepAround({ planes: hues, frame }, byHue.ellipse).coherence };
  const byLight = agree({ planes: light, frame }, rough, ROUGH_REACH, LIGHT);
  return byLight && { ...byLight, coherence: stepAround({ planes: light, frame }, byLight.ellipse).coherence };
}

/** The same by light alone, also of a coin of which no more than `leastVisible` of its way lies in the picture. */
export function arcOf(light: LightPlanes, rough: Ellipse, leastVisible: number): RoughRim | null {
  const [{ widthPx, heightPx }] = light;
  const scene = { planes: light, frame: { left: 0, top: 0, right: widthPx, bottom: heightPx } };
  const arc = agree(scene, rough, ROUGH_REACH, LIGHT, leastVisible);
  return arc && { ...arc, coherence: stepAround(scene, arc.ellipse).coherence };
}

export function agree(
  scene: Scene,
  rough: Ellipse,
  reach: number,
  { roughSigmaPx, alongShare }: Senses,
  leastVisible: number = LEAST_VISIBLE,
): Outline | null {
  const sigmaPx = Math.max(roughSigmaPx, 0.02 * rough.semiMinorPx);
  const across = { reachPx: reach * rough.semiMinorPx, sigmaPx, alongShare };
  return consensusEllipse(raysAcross(scene, rough, ROUGH_RAYS, across), rough, seededGenerator(SEED), leastVisible);
}
