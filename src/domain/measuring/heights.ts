import { CARAPACE_LANDMARKS, type CarapaceLandmark, isFreeLandmark, type LandmarkName, type PointHeight } from './landmarks.ts';
import type { CarapaceHeight } from './reading.ts';

/** Heights above the table of whatever is known better than the defaults, in mm; a bare number is taken as exact. */
export type KnownHeights = Partial<Record<LandmarkName, number | PointHeight>>;

/** Whose carapace is measured: a shed one, or that of the animal itself. */
export type Shown = 'skin' | 'animal';

/**
 * Default height of the carapace landmarks as a share of the carapace width, with its standard uncertainty. Own assumptions: a
 * skin has sunk onto its legs; an animal stands on them, lower at rest and higher when it is roused.
 */
export const CARAPACE_HEIGHT_SHARES: Readonly<Record<Shown, { readonly share: number; readonly standardUncertainty: number }>> = {
  skin: { share: 0.35, standardUncertainty: 0.12 },
  animal: { share: 0.6, standardUncertainty: 0.25 },
};

/**
 * What a height is taken to be known to where the keeper typed it and said nothing of its uncertainty, mm: read beside a skin that
 * nobody wants to touch. Own judgment.
 */
export const TYPED_HEIGHT_STANDARD_UNCERTAINTY_MM = 0.25;

/** A carapace seldom lies level: each of its landmarks differs from the common height by this share of the width. Own assumption. */
const CARAPACE_UNEVENNESS_SHARE = 0.05;

/**
 * Leg joints are taken to lie on the table, each within this standard uncertainty, as a share of the carapace width. Skins are
 * rarely pressed quite flat: wide enough for segments of arched legs, knees up to half a carapace width high (root mean square)
 * and the joints before and after them lower. Own assumption, checked on rendered skins.
 */
const LEG_HEIGHT_SHARE_UNCERTAINTY: Readonly<Record<Shown, number>> = {
  skin: 0.2,
  // An animal stands with its knees above its carapace: nothing near flat, so that segments seen from above tell little.
  animal: 0.45,
};

/** The width that the legs go by when the carapace is not measured, mm; own assumption. */
const WIDTH_WITHOUT_CARAPACE_MM = 10;

/** Carapace width over length of theraphosids: 0.86 to 0.96 in Hamilton et al. 2016 (ZooKeys 560:1), 0.86 in Yamamoto et al. 2012 (Zootaxa 3172:1). */
const TYPICAL_WIDTH_TO_LENGTH = 0.9;

/**
 * The opened skin of an abdomen lies on the table in shallow folds: about this high, as a whole and from place to place. Own
 * assumption, checked on three rendered skins.
 */
const ON_ABDOMEN: LandmarkHeight = {
  heightMm: 1,
  ownStandardUncertaintyMm: 0.3,
  sharedStandardUncertaintyMm: 0.8,
  assumed: true,
  waitsForWidth: false,
};

export interface LandmarkHeight {
  readonly heightMm: number;
  /** Of this landmark alone. */
  readonly ownStandardUncertaintyMm: number;
  /** Of what it shares with its fellows, on the carapace or on the skin of the abdomen: they rise and fall together. */
  readonly sharedStandardUncertaintyMm: number;
  /** A default was used, nothing the keeper or the caller stated. */
  readonly assumed: boolean;
  /** Nothing is known of it yet: it is a share of the width of a carapace of which too little is placed. Its figures say nothing. */
  readonly waitsForWidth: boolean;
}

export interface Heights {
  readonly of: (name: LandmarkName) => LandmarkHeight;
}

/** Carapace size on the object's plane, not yet corrected for height, as far as it was placed. */
export interface CarapaceOnPlane {
  readonly widthMm: number | null;
  readonly lengthMm: number | null;
  /** Distance of the camera from the plane and of the plane from the table, mm. */
  readonly cameraHeightMm: number;
  readonly faceHeightMm: number;
}

/**
 * Heights above the table of all landmarks: what was stated for one of them, else the carapace as entered or by its default
 * share, legs on the table, the skin of an abdomen a little above it. The share refers to the true width, which itself depends on the height; the two are solved together.
 */
export function heightsOf(entered: CarapaceHeight, carapace: CarapaceOnPlane, known: KnownHeights = {}, shown: Shown = 'skin'): Heights {
  const { share, standardUncertainty } = CARAPACE_HEIGHT_SHARES[shown];
  const widthMm = trueWidthMm(entered, carapace, share);
  const common =
    entered.kind === 'entered'
      ? { heightMm: entered.heightMm, uncertaintyMm: entered.standardUncertaintyMm }
      : { heightMm: share * (widthMm ?? 0), uncertaintyMm: standardUncertainty * (widthMm ?? 0) };
  const onCarapace: LandmarkHeight = {
    heightMm: common.heightMm,
    ownStandardUncertaintyMm: CARAPACE_UNEVENNESS_SHARE * (widthMm ?? 0),
    sharedStandardUncertaintyMm: common.uncertaintyMm,
    assumed: entered.kind === 'assumed',
    waitsForWidth: entered.kind === 'assumed' && widthMm === null,
  };
  const onLegs: LandmarkHeight = {
    heightMm: 0,
    ownStandardUncertaintyMm: LEG_HEIGHT_SHARE_UNCERTAINTY[shown] * (widthMm ?? WIDTH_WITHOUT_CARAPACE_MM),
    sharedStandardUncertaintyMm: 0,
    assumed: true,
    waitsForWidth: false,
  };
  return {
    of: (name) => {
      const stated = known[name];
      if (stated !== undefined) {
        const { heightMm, standardUncertaintyMm } = typeof stated === 'number' ? { heightMm: stated, standardUncertaintyMm: 0 } : stated;
        return {
          heightMm,
          ownStandardUncertaintyMm: standardUncertaintyMm,
          sharedStandardUncertaintyMm: 0,
          assumed: false,
          waitsForWidth: false,
        };
      }
      if (isFreeLandmark(name)) return ON_ABDOMEN;
      return isCarapaceLandmark(name) ? onCarapace : onLegs;
    },
  };
}

/** The width W seen as `planeWidth` on the plane: W = planeWidth (camera - (h - face)) / camera, with h fixed or a share of W. */
function trueWidthMm(entered: CarapaceHeight, carapace: CarapaceOnPlane, share: number): number | null {
  const planeWidthMm = carapace.widthMm ?? (carapace.lengthMm === null ? null : TYPICAL_WIDTH_TO_LENGTH * carapace.lengthMm);
  if (planeWidthMm === null) return null;
  const { cameraHeightMm, faceHeightMm } = carapace;
  return entered.kind === 'entered'
    ? planeWidthMm * Math.max(0, 1 - (entered.heightMm - faceHeightMm) / cameraHeightMm)
    : (planeWidthMm * (cameraHeightMm + faceHeightMm)) / (cameraHeightMm + share * planeWidthMm);
}

function isCarapaceLandmark(name: LandmarkName): name is CarapaceLandmark {
  return (CARAPACE_LANDMARKS as readonly string[]).includes(name);
}

/**
 * What the next height typed for one point is taken to be known to: as all that were typed before are, that of the carapace's edge
 * among them, where they agree; else as by default.
 */
export function typedStandardUncertaintyMm(entered: CarapaceHeight, stated: readonly PointHeight[]): number {
  const [first, ...others] = [...(entered.kind === 'entered' ? [entered] : []), ...stated].map((height) => height.standardUncertaintyMm);
  return first !== undefined && others.every((other) => other === first) ? first : TYPED_HEIGHT_STANDARD_UNCERTAINTY_MM;
}
