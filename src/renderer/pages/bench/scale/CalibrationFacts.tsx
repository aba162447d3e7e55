import type { ReactElement } from 'react';
import type { Calibration } from '../../../../domain/measuring/calibrate.ts';
import type { Result } from '../../../../domain/result.ts';
import { wordsFor } from '../../../../words/failures.ts';
import { tiltPartInWords, warningInWords } from '../../../../words/measuring.ts';
import { Notice } from '../../../parts/Notice.tsx';
import style from '../panel.module.css';

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
  const { kind, mmPerPxAtCenter, tiltDeg, ruleTilt, residualPx, station, warnings } = calibration.value;
  return (
    <>
      <dl className={style['facts']}>
        <dt>One pixel, at the middle</dt>
        <dd className="figures">{mmPerPxAtCenter === null ? 'beyond the plane' : `${mmPerPxAtCenter.toPrecision(4)} mm`}</dd>
        <dt>Tilt of the camera</dt>
        <dd className="figures">{tiltDeg === null ? 'unknown' : `${tiltDeg.toFixed(1)}°`}</dd>
        {ruleTilt !== undefined && (
          <>
            <dt>Along the rule</dt>
            <dd className="figures">{tiltPartInWords(ruleTilt.along)}</dd>
            <dt>Across the rule</dt>
            <dd className="figures">{tiltPartInWords(ruleTilt.across)}</dd>
          </>
        )}
        {RESIDUAL_LABELS[kind] !== undefined && (
          <>
            <dt>{RESIDUAL_LABELS[kind]}</dt>
            <dd className="figures">{residualPx === null ? 'cannot be told' : `${residualPx.toFixed(2)} px`}</dd>
          </>
        )}
        <dt>Camera above the scale</dt>
        <dd className="figures">{station === null ? 'unknown' : `${(station.heightMm / 10).toFixed(1)} cm`}</dd>
      </dl>
      {warnings.map((warning) => (
        <Notice key={warning.code} tone="warning">
          {warningInWords(warning)}
        </Notice>
      ))}
    </>
  );
}
