import type { ReactElement } from 'react';
import { type HeightCorrection, heightCorrectionOf } from '../../../../domain/measuring/heightCorrections.ts';
import {
  CARAPACE_HEIGHT_SHARES,
  TYPED_HEIGHT_STANDARD_UNCERTAINTY_MM,
  typedStandardUncertaintyMm,
} from '../../../../domain/measuring/heights.ts';
import { type LandmarkName, type PointHeight, statedHeights } from '../../../../domain/measuring/landmarks.ts';
import { COVERAGE_FACTOR } from '../../../../domain/measuring/quantity.ts';
import { shownOn } from '../../../../domain/photo/photo.ts';
import { setHeightUncertainty, setPointHeights } from '../../../bench/deeds/points.ts';
import { landmarksOf, readingDraftOf } from '../../../bench/document.ts';
import { groupOf, isDistance, type LandmarkGroup, namesIn } from '../../../bench/steps.ts';
import { Button } from '../../../parts/Button.tsx';
import { NumberField } from '../NumberField.tsx';
import { PlusMinusField } from '../PlusMinusField.tsx';
import style from '../panel.module.css';
import { useCalibration, useSettledDocument, useWork } from '../useWork.ts';
import { HeightDoubt } from './HeightDoubt.tsx';

const TYPED_HEIGHT_IN_WORDS = `A height you type is taken to be known as those typed before it are, where these agree, else to ± ${COVERAGE_FACTOR * TYPED_HEIGHT_STANDARD_UNCERTAINTY_MM} mm. `;

/** How high the selected point lies above the table: its default until the keeper knows better, and what that changes. */
export function PointHeightFields({ name }: { name: LandmarkName }): ReactElement | null {
  const { bench, pass, sheet } = useWork();
  const document = useSettledDocument();
  const calibration = useCalibration(document);
  const landmark = document[name];
  if (landmark === undefined || !('at' in landmark)) return null;
  if (calibration === null || !calibration.ok) return null;
  const shown = shownOn(sheet.photo);
  const draft = readingDraftOf(document, pass);
  const correction = heightCorrectionOf(name, draft, calibration.value, shown);
  const { heightMm, standardUncertaintyMm, waitsForWidth, shiftMm } = correction;
  const group = groupOf(name);
  const fellows = namesIn(group).filter((other) => other !== name && isPlaced(document[other]));
  const stated = statedHeights(landmarksOf(document));
  const areOthersKnownOtherwise = Object.values(stated).some(
    (height) => height.standardUncertaintyMm !== landmark.height?.standardUncertaintyMm,
  );
  const change = (part: Partial<PointHeight>) => setPointHeights(bench, [name], { heightMm, standardUncertaintyMm, ...part });
  // What a default is uncertain by, or one point beside the height of the whole edge, says nothing of how well a height that was read is known.
  const enter = (typed: number) =>
    change(
      landmark.height === undefined
        ? { heightMm: typed, standardUncertaintyMm: typedStandardUncertaintyMm(draft.carapaceHeight, Object.values(stated)) }
        : { heightMm: typed },
    );
  return (
    <fieldset>
      <legend className={style['legend']}>Height of this point above the table</legend>
      <div className={style['pair']}>
        <NumberField label="This point, mm" value={waitsForWidth ? null : heightMm} figures={3} most={100} onChange={enter} />
        {!waitsForWidth && (
          <PlusMinusField
            label="Known to ± mm (k = 2)"
            standardUncertainty={standardUncertaintyMm}
            most={100}
            onChange={(typed) => change({ standardUncertaintyMm: typed })}
          />
        )}
      </div>
      {landmark.height !== undefined && <HeightDoubt heightMm={landmark.height.heightMm} />}
      <p className={style['soft']}>
        {landmark.height === undefined
          ? defaultInWords(group, correction, CARAPACE_HEIGHT_SHARES[shown].share)
          : 'Entered for this point. '}
        {landmark.height === undefined && TYPED_HEIGHT_IN_WORDS}
        {!waitsForWidth && shiftInWords(shiftMm, calibration.value.faceHeightMm)}
      </p>
      <div className={style['row']}>
        {landmark.height !== undefined && (
          <Button kind="quiet" onClick={() => setPointHeights(bench, [name], null)}>
            Back to the default
          </Button>
        )}
        {landmark.height !== undefined && fellows.length > 0 && (
          <Button kind="quiet" onClick={() => setPointHeights(bench, fellows, landmark.height ?? null)}>
            {sameForAll(group)}
          </Button>
        )}
        {landmark.height !== undefined && areOthersKnownOtherwise && (
          <Button kind="quiet" onClick={() => setHeightUncertainty(bench, standardUncertaintyMm)}>
            ± {Number((COVERAGE_FACTOR * standardUncertaintyMm).toPrecision(2))} mm for all typed heights
          </Button>
        )}
      </div>
    </fieldset>
  );
}

function defaultInWords(group: LandmarkGroup, { assumed, waitsForWidth }: HeightCorrection, share: number): string {
  if (waitsForWidth)
    return `Not known yet: it follows from the carapace’s width, ${share} of it, once its left and right, or its front and rear, are placed. `;
  if (!assumed) return 'As entered for the carapace. ';
  if (isDistance(group)) return 'Assumed of the opened skin of an abdomen. ';
  return group === 'carapace' ? `Assumed: ${share} of the carapace’s width. ` : 'Assumed: it lies on the table. ';
}

function sameForAll(group: LandmarkGroup): string {
  if (isDistance(group)) return 'The same for its other end';
  return group === 'carapace' ? 'The same for the whole carapace' : 'The same for the whole leg';
}

function isPlaced(landmark: { readonly state: string } | undefined): boolean {
  return landmark !== undefined && 'at' in landmark;
}

function shiftInWords(shiftMm: number | null, faceHeightMm: number): string {
  if (shiftMm === null) return 'The distance of the camera is not known, so nothing is corrected; the uncertainty is wider instead.';
  const face = faceHeightMm > 0 ? ` The face of the scale object lies ${faceHeightMm} mm above the table; that is allowed for.` : '';
  return `It moves the point by ${shiftMm.toFixed(2)} mm on the plane of the scale.${face}`;
}
