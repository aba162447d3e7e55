import { contribution, covarianceOf, curvature, type Excursion } from '../numerics/propagation.ts';
import type { Calibration } from './calibrate.ts';
import type { Heights } from './heights.ts';
import type { LandmarkName } from './landmarks.ts';
import { carapaceHeights, type MeasuringOptions } from './measure.ts';
import { type Placement, placeLandmarks } from './placements.ts';
import type { BudgetSource } from './quantity.ts';
import { ALL_QUANTITIES, type QuantityDefinition } from './quantityDefinitions.ts';
import type { ReadingDraft } from './reading.ts';
import type { SpacePoint } from './view.ts';

/** One input of a quantity in its uncertainty budget (JCGM 100:2008, 7.2.7). */
export interface BudgetLine {
  readonly source: BudgetSource;
  /** The landmark the input belongs to; null for what all landmarks share. */
  readonly landmark: LandmarkName | null;
  /** Standard uncertainty of the input itself, and in which unit; null where the inputs of a source differ in kind. */
  readonly input: { readonly standardUncertainty: number; readonly unit: 'px' | 'mm' } | null;
  /** |c| = |df/dx|: of both coordinates together for a point. In the unit of the quantity over that of the input. */
  readonly sensitivity: number | null;
  /** |c| u, in the unit of the quantity; with the second order where measuring takes it. */
  readonly contribution: number;
  /** Of the variance of the quantity. */
  readonly share: number;
}

/** A quantity taken apart by inputs, the largest first. */
export type BudgetInDetail = readonly BudgetLine[];

type Reading = Pick<ReadingDraft, 'landmarks' | 'carapaceHeight' | 'pointingPx'>;

/** How one input moves each landmark that it moves. */
interface Input {
  readonly source: BudgetSource;
  readonly landmark: LandmarkName | null;
  readonly input: BudgetLine['input'];
  readonly isSecondOrder: boolean;
  readonly move: (name: LandmarkName) => Excursion<SpacePoint> | null;
}

/** @returns empty when the quantity has no value. */
export function budgetInDetail(name: string, reading: Reading, calibration: Calibration, options: MeasuringOptions = {}): BudgetInDetail {
  const definition = ALL_QUANTITIES.find((candidate) => candidate.name === name);
  const setting = settingOf(reading, calibration, options);
  const points = definition && pointsOf(definition, setting.placements);
  if (!definition || !points) return [];
  const effects = setting.inputs.map((input) => effectOf(definition, points, input));
  const shifts = Map.groupBy(effects, ({ input }) => input.source);
  const lines = [...Map.groupBy(effects, ({ input }) => keyOf(input)).values()].flatMap((own): Omit<BudgetLine, 'share'>[] => {
    const [first] = own;
    if (!first) return [];
    const { source, landmark, input } = first.input;
    const shift = (shifts.get(source) ?? []).reduce((sum, { square }) => sum + square / 2, 0);
    // The mean is shifted by all inputs of a source together; each bears as much of its square as it has of the shift.
    const variance = own.reduce((sum, { linear, square }) => sum + linear ** 2 + square ** 2 / 2 + (square / 2) * shift, 0);
    if (!(variance > 0)) return [];
    const linear = Math.hypot(...own.map((effect) => effect.linear));
    const u = input?.standardUncertainty ?? 0;
    return [{ source, landmark, input, sensitivity: u > 0 ? linear / u : null, contribution: Math.sqrt(variance) }];
  });
  if (calibration.station === null) lines.push(uncorrectedHeight(definition, points));
  const variance = lines.reduce((sum, line) => sum + line.contribution ** 2, 0);
  return lines
    .map((line) => ({ ...line, share: line.contribution ** 2 / variance }))
    .toSorted((one, other) => other.contribution - one.contribution);
}

/**
 * Correlation of two quantities of one reading, -1 to 1, first order (GUM equation 14): what they share of the card, of the
 * camera and of landmarks. The ratio of two lengths on one card profits from it.
 *
 * @returns null when one of them has no value.
 */
export function correlationOf(
  [one, other]: readonly [string, string],
  reading: Reading,
  calibration: Calibration,
  options: MeasuringOptions = {},
): number | null {
  const setting = settingOf(reading, calibration, options);
  const [first, second] = [one, other].map((name) => {
    const definition = ALL_QUANTITIES.find((candidate) => candidate.name === name);
    const points = definition && pointsOf(definition, setting.placements);
    return definition && points ? setting.inputs.map((input) => effectOf(definition, points, input).linear) : null;
  });
  if (!first || !second) return null;
  const scale = Math.sqrt(covarianceOf(first, first) * covarianceOf(second, second));
  return scale > 0 ? covarianceOf(first, second) / scale : null;
}

interface Setting {
  readonly placements: ReadonlyMap<LandmarkName, Placement | null>;
  readonly inputs: readonly Input[];
}

function settingOf(reading: Reading, calibration: Calibration, options: MeasuringOptions): Setting {
  const heights = carapaceHeights(reading, calibration, options);
  const placements = placeLandmarks(reading.landmarks, calibration, heights, options.pointing ?? reading.pointingPx);
  return { placements, inputs: [...viewInputs(calibration, placements), ...landmarkInputs(heights, placements)] };
}

function viewInputs({ excursions }: Calibration, placements: Setting['placements']): Input[] {
  return excursions.map(({ source }, index) => ({
    source,
    landmark: null,
    input: null,
    isSecondOrder: source === 'tilt-unknown',
    move: (name) => placements.get(name)?.byView[index] ?? null,
  }));
}

function landmarkInputs(heights: Heights, placements: Setting['placements']): Input[] {
  const sharedBy = (name: LandmarkName) => heights.of(name).sharedStandardUncertaintyMm;
  const inputs: Input[] = [...new Set([...placements.keys()].map(sharedBy))].map((standardUncertainty) => ({
    source: 'height',
    landmark: null,
    input: { standardUncertainty, unit: 'mm' },
    isSecondOrder: true,
    move: (name) => (sharedBy(name) === standardUncertainty ? (placements.get(name)?.bySharedHeight ?? null) : null),
  }));
  for (const [name, placement] of placements) {
    if (!placement) continue;
    for (const excursion of placement.byPointing) {
      inputs.push({
        source: 'pointing',
        landmark: name,
        input: { standardUncertainty: placement.pointing.pointingPx, unit: 'px' },
        isSecondOrder: false,
        move: (moved) => (moved === name ? excursion : null),
      });
    }
    const { byOwnHeight } = placement;
    if (!byOwnHeight) continue;
    inputs.push({
      source: 'height',
      landmark: name,
      input: { standardUncertainty: heights.of(name).ownStandardUncertaintyMm, unit: 'mm' },
      isSecondOrder: true,
      move: (moved) => (moved === name ? byOwnHeight : null),
    });
  }
  return inputs;
}

/** Inputs told in one line: both coordinates of a point, all that a source does to the whole view. */
function keyOf({ source, landmark, input }: Input): string {
  return `${source} ${landmark ?? ''} ${input?.standardUncertainty ?? ''}`;
}

/** A height that cannot be corrected stays in the value; its likely size is as good as an uncertainty. */
function uncorrectedHeight({ evaluate }: QuantityDefinition, points: readonly Placement[]): Omit<BudgetLine, 'share'> {
  const offBy = evaluate(points.map(({ raised }) => raised)) - evaluate(points.map(({ point }) => point));
  return { source: 'height', landmark: null, input: null, sensitivity: null, contribution: Math.abs(offBy) };
}

/** What one input does to a quantity. */
interface Effect {
  readonly input: Input;
  /** c u, signed. */
  readonly linear: number;
  /** f'' u^2, signed; 0 where measuring leaves the second order out. */
  readonly square: number;
}

function effectOf({ landmarks, evaluate }: QuantityDefinition, found: readonly Placement[], input: Input): Effect {
  const { move, source, isSecondOrder } = input;
  const estimate = found.map(({ point, raised }) => (source === 'height' ? raised : point));
  const excursions = landmarks.map(move);
  if (excursions.every((excursion) => excursion === null)) return { input, linear: 0, square: 0 };
  const at = (side: 'below' | 'above') => estimate.map((point, index) => excursions[index]?.[side] ?? point);
  const moved = { below: at('below'), above: at('above') };
  const square = isSecondOrder ? curvature(evaluate, evaluate(estimate), moved) : 0;
  return { input, linear: contribution(evaluate, moved), square };
}

function pointsOf({ landmarks }: QuantityDefinition, placements: Setting['placements']): readonly Placement[] | null {
  const found = landmarks.flatMap((name) => placements.get(name) ?? []);
  return found.length === landmarks.length ? found : null;
}
