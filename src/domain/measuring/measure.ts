import { coverageFactor, effectiveDegreesOfFreedom } from '../numerics/coverageFactor.ts';
import { contribution, covarianceOf, curvature, type Excursion, meanSquareDeviation } from '../numerics/propagation.ts';
import type { Calibration } from './calibrate.ts';
import { type Heights, heightsOf, type KnownHeights, type Shown } from './heights.ts';
import { type CarapaceLandmark, type LandmarkName, type Landmarks, pointOf, statedHeights } from './landmarks.ts';
import { toPlane } from './onPlane.ts';
import { type Placement, placeLandmarks } from './placements.ts';
import type { GivenPointing, PointingError } from './pointingError.ts';
import {
  type AbsentQuantity,
  type BudgetSource,
  COVERAGE_LEVEL,
  estimateFrom,
  type Measurement,
  type Quantity,
  type QuantityFlag,
} from './quantity.ts';
import { DORSAL_SKIN_QUANTITIES, FREE_QUANTITIES, type QuantityDefinition } from './quantityDefinitions.ts';
import type { ReadingDraft } from './reading.ts';
import type { SpacePoint, ViewExcursion } from './view.ts';

export interface MeasuringOptions {
  /** The error of one click, when repeats tell more than the reading. */
  readonly pointing?: GivenPointing;
  /** Heights known better than the defaults, for checks. */
  readonly heightsMm?: KnownHeights;
  /** What the photo shows, for the default heights; a skin unless told otherwise. */
  readonly shown?: Shown;
}

/**
 * Every quantity one reading gives under one calibration, with its uncertainty budget (JCGM 100:2008). Free distances are told
 * of only where one of their ends has an answer.
 *
 * Inputs are independent: each corner coordinate, the object's sides, the focal length, the lens's distortion, each click, the height common to
 * the carapace and each landmark's own height. All landmarks of one quantity move together with a shared input, so what
 * cancels between them (a ratio on one card) cancels here. First order, except for unknown tilt and heights, where the
 * first order vanishes by symmetry and the second is added. Where the pointing error comes from few repeats, the coverage
 * factor is Student's t at the effective degrees of freedom.
 */
export function measure(
  reading: Pick<ReadingDraft, 'landmarks' | 'carapaceHeight' | 'pointingPx'>,
  calibration: Calibration,
  options: MeasuringOptions = {},
): Measurement {
  const heights = carapaceHeights(reading, calibration, options);
  const placements = placeLandmarks(reading.landmarks, calibration, heights, options.pointing ?? reading.pointingPx);
  const quantities: Quantity[] = [];
  const absent: AbsentQuantity[] = [];
  const begun = FREE_QUANTITIES.filter(({ landmarks }) => landmarks.some((name) => reading.landmarks[name] !== undefined));
  for (const definition of [...DORSAL_SKIN_QUANTITIES, ...begun]) {
    const found = definition.landmarks.flatMap((name) => placements.get(name) ?? []);
    if (found.length === definition.landmarks.length) quantities.push(evaluate(definition, found, calibration));
    else absent.push({ name: definition.name, reason: reasonOf(definition.landmarks, reading.landmarks) });
  }
  return { quantities, absent };
}

/** Heights of all landmarks, from what the reading says and the carapace's size on the object's plane. */
export function carapaceHeights(
  { landmarks, carapaceHeight }: Pick<ReadingDraft, 'landmarks' | 'carapaceHeight'>,
  calibration: Calibration,
  { heightsMm, shown }: Pick<MeasuringOptions, 'heightsMm' | 'shown'> = {},
): Heights {
  const distanceMm = (from: CarapaceLandmark, to: CarapaceLandmark): number | null => {
    const [first, second] = [from, to].map((name) => {
      const at = pointOf(landmarks[name]);
      return at && toPlane(calibration, at);
    });
    return first && second ? Math.hypot(second.xMm - first.xMm, second.yMm - first.yMm) : null;
  };
  return heightsOf(
    carapaceHeight,
    {
      widthMm: distanceMm('carapace-left', 'carapace-right'),
      lengthMm: distanceMm('carapace-front', 'carapace-rear'),
      cameraHeightMm: calibration.view.station.heightMm,
      faceHeightMm: calibration.faceHeightMm,
    },
    { ...statedHeights(landmarks), ...heightsMm },
    shown,
  );
}

/** The strongest reason wins: a part that is not there cannot be measured, whatever else was left out. */
function reasonOf(names: readonly LandmarkName[], landmarks: Landmarks): AbsentQuantity['reason'] {
  const states = names.map((name) => landmarks[name]?.state ?? 'not-placed');
  if (states.includes('missing')) return 'missing';
  if (states.includes('not-visible')) return 'not-visible';
  if (states.includes('not-placed')) return 'not-placed';
  return 'no-position';
}

function evaluate(
  { name, unit, evaluate: model, posture }: QuantityDefinition,
  found: readonly Placement[],
  calibration: Calibration,
): Quantity {
  const points = found.map((placement) => placement.point);
  const value = model(points);
  const raisedValue = model(found.map((placement) => placement.raised));
  const corrected = calibration.station !== null;

  const variances = viewVariances(model, value, found, calibration.excursions);
  const pointing = pointingVariances(model, points, found);
  for (const part of pointing.values()) add(variances, 'pointing', part);
  add(variances, 'height', heightVariance(model, raisedValue, found));
  // A correction that cannot be made stays in the value, so its likely size stands in the uncertainty.
  if (!corrected) add(variances, 'height', (raisedValue - value) ** 2);

  const variance = [...variances.values()].reduce((sum, part) => sum + part, 0);
  return {
    name,
    unit,
    estimate: estimateFrom(value, Math.sqrt(variance), factorOf(variance, pointing)),
    flags: flagsOf(found, calibration, posture),
    budget: [...variances]
      .filter(([, part]) => part > 0)
      .map(([source, part]) => ({ source, standardUncertainty: Math.sqrt(part), share: part / variance })),
    heightCorrection: corrected ? value - model(found.map((placement) => placement.onPlane)) : null,
  };
}

type Model = QuantityDefinition['evaluate'];

function add(variances: Map<BudgetSource, number>, source: BudgetSource, variance: number): void {
  variances.set(source, (variances.get(source) ?? 0) + variance);
}

/** Everything that moves the view moves all points of the quantity at once. */
function viewVariances(
  model: Model,
  value: number,
  found: readonly Placement[],
  excursions: readonly ViewExcursion[],
): Map<BudgetSource, number> {
  const variances = new Map<BudgetSource, number>();
  const tilts: Excursion<readonly SpacePoint[]>[] = [];
  excursions.forEach(({ source }, index) => {
    const moved = jointly(found, (placement) => placement.byView[index] ?? { below: placement.point, above: placement.point });
    if (source === 'tilt-unknown') tilts.push(moved);
    else add(variances, source, contribution(model, moved) ** 2);
  });
  if (tilts.length > 0) add(variances, 'tilt-unknown', secondOrder(model, value, tilts));
  return variances;
}

/** By estimate of the error: points that share one are uncertain together about how well they are placed. */
function pointingVariances(model: Model, points: readonly SpacePoint[], found: readonly Placement[]): Map<PointingError, number> {
  const variances = new Map<PointingError, number>();
  found.forEach(({ byPointing, pointing }, index) => {
    const contributions = byPointing.map((excursion) => contribution(model, alone(points, index, excursion)));
    variances.set(pointing, (variances.get(pointing) ?? 0) + covarianceOf(contributions, contributions));
  });
  return variances;
}

/** What is not from repeats is taken as known: each such source is an upper bound or an assumption, chosen on the safe side. */
function factorOf(variance: number, pointing: ReadonlyMap<PointingError, number>): number | undefined {
  const contributions = [...pointing].map(([{ degreesOfFreedom }, part]) => ({ standardUncertainty: Math.sqrt(part), degreesOfFreedom }));
  const fromRepeats = [...pointing.values()].reduce((sum, part) => sum + part, 0);
  const known = { standardUncertainty: Math.sqrt(Math.max(0, variance - fromRepeats)), degreesOfFreedom: Number.POSITIVE_INFINITY };
  const degrees = effectiveDegreesOfFreedom([...contributions, known]);
  return Number.isFinite(degrees) ? coverageFactor(degrees, COVERAGE_LEVEL) : undefined;
}

function heightVariance(model: Model, raisedValue: number, found: readonly Placement[]): number {
  const raised = found.map((placement) => placement.raised);
  const excursions = found.flatMap(({ byOwnHeight }, index) => (byOwnHeight ? [alone(raised, index, byOwnHeight)] : []));
  return secondOrder(model, raisedValue, [...excursions, jointly(found, (placement) => placement.bySharedHeight)]);
}

function secondOrder(model: Model, value: number, excursions: readonly Excursion<readonly SpacePoint[]>[]): number {
  return meanSquareDeviation(
    excursions.map((excursion) => contribution(model, excursion)),
    excursions.map((excursion) => curvature(model, value, excursion)),
  );
}

function jointly(found: readonly Placement[], of: (placement: Placement) => Excursion<SpacePoint>): Excursion<readonly SpacePoint[]> {
  return { below: found.map((placement) => of(placement).below), above: found.map((placement) => of(placement).above) };
}

function alone(points: readonly SpacePoint[], index: number, { below, above }: Excursion<SpacePoint>): Excursion<readonly SpacePoint[]> {
  return { below: points.with(index, below), above: points.with(index, above) };
}

function flagsOf(found: readonly Placement[], calibration: Calibration, posture: QuantityDefinition['posture']): QuantityFlag[] {
  const flags: QuantityFlag[] = [];
  if (posture === 'layout') flags.push('posture-dependent');
  // Joints taken to lie on the table hide the rise and fall between them.
  if (posture === 'arch' && found.some((placement) => placement.heightAssumed)) flags.push('flat-projection');
  if (found.some((placement) => placement.regenerated)) flags.push('regenerated');
  if (found.some((placement) => placement.heightAssumed)) flags.push('height-assumed');
  if (calibration.station === null) flags.push('height-not-corrected');
  if (calibration.excursions.some(({ source }) => source === 'tilt-unknown')) flags.push('tilt-unknown');
  if (found.some((placement) => placement.farFromScale)) flags.push('far-from-scale');
  return flags;
}
