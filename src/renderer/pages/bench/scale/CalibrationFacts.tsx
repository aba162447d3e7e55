import { type ReactElement, useMemo } from 'react';
import type { Calibration } from '../../../../domain/measuring/calibrate.ts';
import { howWellKnown } from '../../../../domain/measuring/howWellKnown.ts';
import { type Estimate, estimateFrom } from '../../../../domain/measuring/quantity.ts';
import type { Result } from '../../../../domain/result.ts';
import { inOrderOfGravity, warningInWords } from '../../../../words/calibration.ts';
import { estimateInWords } from '../../../../words/estimates.ts';
import { wordsFor } from '../../../../words/failures.ts';
import { Notice } from '../../../parts/Notice.tsx';
import style from '../panel.module.css';
import { useWork } from '../useWork.ts';

/** Where there are marks enough to disagree. */
const RESIDUAL_LABELS: Partial<Record<Calibration['kind'], string>> = {
  rectangle: 'Corners off a true rectangle by',
  'rule-ticks': 'Ticks off their places by',
  points: 'Points off their places by',
};

/** What the marks say about the picture, or why they say nothing. */
export function CalibrationFacts({ calibration }: { calibration: Result<Calibration> }): ReactElement {
  if (!calibration.ok) {
    const { happened, advice } = wordsFor(calibration.failure);
    return (
      <Notice tone="warning" title={happened}>
        {advice}
      </Notice>
    );
  }
  return <Facts calibration={calibration.value} />;
}

function Facts({ calibration }: { calibration: Calibration }): ReactElement {
  const { photo } = useWork().sheet;
  const { kind, ruleTilt, residualPx, warnings } = calibration;
  const known = useMemo(() => howWellKnown(calibration, photo), [calibration, photo]);
  return (
    <>
      <dl className={style['facts']}>
        <dt>One pixel, at the middle</dt>
        <dd className="figures">{known.mmPerPxAtCenter === null ? 'beyond the plane' : pixelInWords(known.mmPerPxAtCenter)}</dd>
        <dt>Tilt of the camera</dt>
        <dd className="figures">{known.tiltDeg === null ? 'unknown' : tiltInWords(known.tiltDeg)}</dd>
        {ruleTilt !== undefined && (
          <>
            <dt>Along the rule</dt>
            <dd className="figures">{partInWords(ruleTilt.along)}</dd>
            <dt>Across the rule</dt>
            <dd className="figures">{partInWords(ruleTilt.across)}</dd>
          </>
        )}
        {RESIDUAL_LABELS[kind] !== undefined && (
          <>
            <dt>{RESIDUAL_LABELS[kind]}</dt>
            <dd className="figures">{residualPx === null ? 'cannot be told' : `${residualPx.toFixed(2)} px`}</dd>
          </>
        )}
        <dt>Camera above the scale</dt>
        <dd className="figures">{known.cameraHeightMm === null ? 'unknown' : heightInWords(known.cameraHeightMm)}</dd>
      </dl>
      {inOrderOfGravity(warnings).map((warning) => (
        <Notice key={warning.code} tone="warning">
          {warningInWords(warning)}
        </Notice>
      ))}
    </>
  );
}

const MM_PER_CM = 10;

/** "0.12451 ± 0.00034 mm (0.27 %)". */
function pixelInWords(estimate: Estimate): string {
  const { value, expandedUncertainty } = estimateInWords(estimate, 'mm');
  return `${value} ± ${expandedUncertainty} mm (${((100 * estimate.expandedUncertainty) / estimate.value).toPrecision(2)}\u00A0%)`;
}

/** "11.52° ± 0.31°". */
function tiltInWords(estimate: Estimate): string {
  const { value, expandedUncertainty } = estimateInWords(estimate, '1');
  return `${value}° ± ${expandedUncertainty}°`;
}

/** "−3.2° ± 1.1°". */
function partInWords({ tiltDeg, uncertaintyDeg }: NonNullable<Calibration['ruleTilt']>['along']): string {
  const { value, expandedUncertainty } = estimateInWords(estimateFrom(Math.abs(tiltDeg), uncertaintyDeg), '1');
  return `${tiltDeg < 0 ? '−' : ''}${value}° ± ${expandedUncertainty}°`;
}

/** "31.2 ± 0.8 cm". */
function heightInWords({ value, standardUncertainty }: Estimate): string {
  const centimeters = estimateInWords(estimateFrom(value / MM_PER_CM, standardUncertainty / MM_PER_CM), '1');
  return `${centimeters.value} ± ${centimeters.expandedUncertainty} cm`;
}
