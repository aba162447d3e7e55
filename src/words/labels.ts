import type { LegId, LegJoint, LegSegment } from '../domain/measuring/landmarks.ts';
import type { BudgetSource, QuantityFlag } from '../domain/measuring/quantity.ts';
import type { SkinCompleteness, SkinGrade } from '../domain/molting/exuvia.ts';
import type { MoltOutcome, MoltPosition } from '../domain/molting/molt.ts';
import type { PhotoView } from '../domain/photo/photo.ts';
import type { Level, Sex } from '../domain/sexing/determination.ts';
import type { Habit, SpecimenStatus } from '../domain/specimen/specimen.ts';

/** What each value of an enumeration is called on screen. */
type Labels<Value extends string> = Readonly<Record<Value, string>>;

export const STATUS_LABELS: Labels<SpecimenStatus> = { living: 'living', dead: 'dead', sold: 'sold', 'on-loan': 'on loan' };
export const HABIT_LABELS: Labels<Habit> = { terrestrial: 'terrestrial', arboreal: 'arboreal', fossorial: 'fossorial' };
export const SEX_LABELS: Labels<Sex> = { female: 'female', male: 'male', unsexed: 'unsexed', anomalous: 'anomalous' };
export const LEVEL_LABELS: Labels<Level> = { leaning: 'leaning', probable: 'probable', strong: 'strong', established: 'established' };

export const POSITION_LABELS: Labels<MoltPosition> = {
  'on-back': 'on the back',
  'on-side': 'on the side',
  upright: 'upright',
  'not-seen': 'not seen',
};

export const OUTCOME_LABELS: Labels<MoltOutcome> = {
  clean: 'clean',
  slow: 'slow',
  stuck: 'stuck in the skin',
  wet: 'wet molt',
  'limb-lost': 'lost a limb',
  'limb-regenerated': 'limb regenerated',
  deformed: 'deformed',
  died: 'died',
  'skin-not-recovered': 'skin not recovered',
  presumed: 'presumed, nobody saw it',
  'none-missed-before': 'surely none missed before it',
};

export const GRADE_LABELS: Labels<SkinGrade> = {
  A: 'A: flat and complete',
  B: 'B: folded or cloudy',
  C: 'C: torn, or readable in one light only',
  D: 'D: missing or eaten',
};

/** What each grade means for what may be read. */
export const GRADE_MEANINGS: Labels<SkinGrade> = {
  A: 'Flat and complete, both front book lungs intact, photographed in two lights. Everything may be read.',
  B: 'Complete, but folded or cloudy. What is seen counts; emptiness counts less.',
  C: 'Partly torn, or only one light or angle. What is seen still speaks; emptiness hardly.',
  D: 'Missing, torn through or eaten. Nothing of the strip may be entered, neither seen nor absent.',
};

export const COMPLETENESS_LABELS: Labels<SkinCompleteness> = {
  complete: 'complete',
  'abdomen-missing': 'abdomen missing',
  'legs-missing': 'legs missing',
  'carapace-only': 'carapace only',
  fragments: 'fragments',
};

export const VIEW_LABELS: Labels<PhotoView> = {
  dorsal: 'from above (dorsal)',
  ventral: 'from below (ventral)',
  'abdomen-inside': 'abdomen, inner side',
  'abdomen-outside': 'abdomen, outer side',
  detail: 'detail',
  other: 'other',
};

export const LEG_LABELS: Labels<LegId> = {
  L1: 'leg I left',
  L2: 'leg II left',
  L3: 'leg III left',
  L4: 'leg IV left',
  R1: 'leg I right',
  R2: 'leg II right',
  R3: 'leg III right',
  R4: 'leg IV right',
};

export const SEGMENT_LABELS: Labels<LegSegment> = {
  femur: 'femur',
  patella: 'patella',
  tibia: 'tibia',
  metatarsus: 'metatarsus',
  tarsus: 'tarsus',
};

export const JOINT_LABELS: Labels<LegJoint> = {
  'trochanter-femur': 'trochanter to femur',
  'femur-patella': 'femur to patella',
  'patella-tibia': 'patella to tibia',
  'tibia-metatarsus': 'tibia to metatarsus',
  'metatarsus-tarsus': 'metatarsus to tarsus',
  'tarsus-tip': 'tip of the tarsus',
};

export const BUDGET_LABELS: Labels<BudgetSource> = {
  pointing: 'placing the points',
  calibration: 'placing the scale marks',
  'scale-object': 'size of the scale object',
  'tilt-unknown': 'tilt of the camera, unknown',
  height: 'height above the plane',
  'camera-distance': 'distance of the camera',
  distortion: 'distortion of the lens, as far as not corrected',
};

export const FLAG_LABELS: Labels<QuantityFlag> = {
  'posture-dependent': 'depends on how the skin was laid out',
  'flat-projection': 'as it lies in the picture: an arched leg is longer than this',
  regenerated: 'regenerated part',
  'height-assumed': 'height assumed',
  'height-not-corrected': 'not corrected for height: how far away the camera was is not known, and ± is wider for it',
  'tilt-unknown': 'tilt unknown',
  'far-from-scale': 'far from the scale object',
};

/** Choices for a Select, in the order of the labels. */
export function choicesOf<Value extends string>(labels: Labels<Value>): { value: Value; label: string }[] {
  return (Object.keys(labels) as Value[]).map((value) => ({ value, label: capitalized(labels[value]) }));
}

export function capitalized(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export function uncapitalized(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
