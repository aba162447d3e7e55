import { medianOf } from '../numerics/median.ts';
import { encodeSrgb } from '../numerics/srgb.ts';
import { type EdgeProfile, fitEdge, gaussianForm } from './edgeModel.ts';
import type { LightPlanes } from './light.ts';
import { blurOf, fitScene, formsIn, type Scene, type SceneFit, type SideOnFoot, type Trial } from './lightFit.ts';
import { type FoundSide, fitSide, type Stretch, stretchesOf } from './sideFit.ts';
import type { ExpectedSide } from './sideSearch.ts';

type Four<Value> = readonly [Value, Value, Value, Value];

const LONGEST_SHADOW = 2.5;
const PIXEL_BLUR_PX = 0.42;
/** A blur below this is that of the pixels themselves, which gather light. */
const TELLING_BLUR_PX = 0.45;
/** Of the step that tells which stretches belong together. */
const STEP_BLUR_PX = 0.8;
/** A stretch that lies further off the others shows something that covers the side. */
const LARGEST_DEPARTURE_PX = 1;
const LEAST_STRETCHES = 5;

/**
 * The straight sides of a flat object fitted all at once as one light shows them: a lamp of some size from one direction, and
 * light from everywhere. Where a shadow reaches beyond one side, light reaches under the opposite one; and part of the lamp is
 * hidden from the ground right beside the object even on lit sides, which a mere step would take for more of the object.
 *
 * Blurs are symmetric where they arise: of a lens in light, of enlarging, sharpening or removing grain in encoded values. A picture
 * that is not sharp is fitted in both.
 *
 * @param sides where they are, within `reachPx`; null for those that were not found.
 * @param footPx how far outside each side the object's lower rim is seen; negative where its face hides it.
 * @returns each way the light explains the sides, the better explanation first.
 */
export function fitLitSides(
  planes: LightPlanes,
  sides: Four<ExpectedSide | null>,
  footPx: Four<number>,
  thicknessPx: number,
  reachPx: number,
): readonly [Four<FoundSide | null>, ...Four<FoundSide | null>[]] {
  const scale = Math.max(1, thicknessPx / 10);
  const trial: Trial = { thicknessPx, reachPx: reachPx * scale, gridPx: 0.5 * scale, pixelBlurPx: PIXEL_BLUR_PX * scale };
  const insidePx = 6 * scale;
  const outsidePx = insidePx + Math.min(LONGEST_SHADOW * thicknessPx, 8 * scale);
  const seen = sides.map((side, index): SideOnFoot => {
    if (!side) return null;
    const { normal, stretches } = stretchesOf(planes, side, insidePx, outsidePx, trial.gridPx);
    return stretches.length < LEAST_STRETCHES ? null : { normal, stretches, footPx: footPx[index] ?? 0 };
  });
  const inLight = sceneOf(seen, trial);
  if (blurOf(inLight.scene.diskPx, trial.pixelBlurPx) <= TELLING_BLUR_PX * scale) return [fittedIn(inLight, trial)];
  const inEncoded = sceneOf(seen.map(inEncodedValues), trial, inLight.scene);
  const ways = [fittedIn(inLight, trial), fittedIn(inEncoded, trial)] as const;
  return inEncoded.misfit < inLight.misfit ? [ways[1], ways[0]] : ways;
}

interface Lit {
  readonly sides: readonly SideOnFoot[];
  readonly scene: Scene;
  readonly misfit: number;
}

function sceneOf(sides: readonly SideOnFoot[], trial: Trial, like: Scene | null = null): Lit {
  const fit = fitScene(agreeing(sides, trial), trial, like);
  return { sides, scene: fit.scene, misfit: misfitOf(fit, sides) };
}

function fittedIn({ sides, scene }: Lit, trial: Trial): Four<FoundSide | null> {
  const formOf = formsIn(scene, trial.pixelBlurPx);
  const fitted = (index: 0 | 1 | 2 | 3): FoundSide | null => {
    const side = sides[index];
    return side ? fitSide(side, formOf(index, side.footPx), trial.reachPx, trial.gridPx) : null;
  };
  return [fitted(0), fitted(1), fitted(2), fitted(3)];
}

function inEncodedValues(side: SideOnFoot): SideOnFoot {
  const encode = (profile: EdgeProfile): EdgeProfile => ({ ...profile, planes: profile.planes.map((samples) => samples.map(encodeSrgb)) });
  return side && { ...side, stretches: side.stretches.map(({ profile, middle }): Stretch => ({ profile: encode(profile), middle })) };
}

/** Without the stretches whose steps lie off those of the others. */
function agreeing(sides: readonly SideOnFoot[], trial: Trial): readonly SideOnFoot[] {
  const step = gaussianForm({ sigmaPx: STEP_BLUR_PX, shadow: null });
  return sides.map((side) => {
    if (!side) return null;
    const offsets = side.stretches.map(({ profile }) => fitEdge(profile, -trial.reachPx, trial.reachPx, trial.gridPx, step).offsetPx);
    const middle = medianOf(offsets);
    const stretches = side.stretches.filter((_, index) => Math.abs((offsets[index] ?? 0) - middle) <= LARGEST_DEPARTURE_PX);
    return stretches.length < LEAST_STRETCHES ? side : { ...side, stretches };
  });
}

/** Sum of squares as a share of that of the steps from inside to the ground. */
function misfitOf({ sumOfSquares }: SceneFit, sides: readonly SideOnFoot[]): number {
  let squares = 0;
  for (const side of sides)
    for (const { profile } of side?.stretches ?? [])
      for (const samples of profile.planes) squares += ((samples[0] ?? 0) - (samples.at(-1) ?? 0)) ** 2;
  return sumOfSquares / squares;
}
