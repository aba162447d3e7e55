import { createContext, useContext, useDeferredValue, useMemo } from 'react';
import { useStore } from 'zustand';
import { type ObserverPointing, pointingFor, pointingFrom, scattersOf } from '../../../domain/agreement/pointing.ts';
import { type Calibration, calibrate } from '../../../domain/measuring/calibrate.ts';
import type { LandmarkName } from '../../../domain/measuring/landmarks.ts';
import { measure } from '../../../domain/measuring/measure.ts';
import type { PointingError } from '../../../domain/measuring/pointingError.ts';
import type { Measurement } from '../../../domain/measuring/quantity.ts';
import { shownOn } from '../../../domain/photo/photo.ts';
import type { Result } from '../../../domain/result.ts';
import { type BenchDocument, placedScaleOf, readingDraftOf } from '../../bench/document.ts';
import { settledDocument } from '../../bench/history.ts';
import type { BenchState } from '../../bench/store.ts';
import { isInHand } from './pass.ts';
import type { Work } from './work.ts';

export const WorkContext = createContext<Work | null>(null);

/** The pass in hand. */
export function useWork(): Work {
  const work = useContext(WorkContext);
  if (work === null) throw new Error('Expected to stand on a Bench but there is none above.');
  return work;
}

export function useBench<Value>(selector: (state: BenchState) => Value): Value {
  return useStore(useWork().bench, selector);
}

/** The document as it stood when nothing was in hand: what it feeds stays as it is during a drag. */
export function useSettledDocument(): BenchDocument {
  return useBench((state) => settledDocument(state.edited));
}

/** The document as it stands, even in the middle of a drag. Follows it as fast as there is time: no frame waits for it. */
export function useLiveDocument(): BenchDocument {
  return useDeferredValue(useBench((state) => state.edited.document));
}

/** Why the archive does not take the marks on a scale object: some are not in their place yet, or together they give no scale, or those of the second object give none. Null where it does. */
export function useScaleTrouble(): 'unfinished' | 'impossible' | 'check' | null {
  const { photo } = useWork().sheet;
  const document = useSettledDocument();
  const calibration = useCalibration(document);
  const { check } = document;
  const isCheckSound = useMemo(() => check === undefined || calibrate(check, photo).ok, [check, photo]);
  if (document.roughScale !== undefined) return 'unfinished';
  if (calibration?.ok === false) return 'impossible';
  return isCheckSound ? null : 'check';
}

/** Null without marks on a scale object, or while some of them are only put down roughly; a failure when the marks are none that could be measured by. */
export function useCalibration(document: BenchDocument): Result<Calibration> | null {
  const { photo } = useWork().sheet;
  const scale = placedScaleOf(document);
  return useMemo(() => (scale === undefined ? null : calibrate(scale, photo)), [scale, photo]);
}

export interface Measured {
  readonly calibration: Result<Calibration> | null;
  readonly measurement: Measurement | null;
  /** How well this observer points, where repeated passes are enough to tell; see `pointingFor` for when that counts. */
  readonly pointing: ObserverPointing | undefined;
  /** Of each landmark: what counts. */
  readonly pointingOf: (name: LandmarkName) => PointingError;
}

/** Everything the marks on the photo say, worked out by the same functions as in the archive. */
export function useMeasured(document: BenchDocument): Measured {
  const { sheet, pass } = useWork();
  const calibration = useCalibration(document);
  return useMemo(() => {
    const draft = readingDraftOf(document, pass);
    const others = sheet.readings.filter((reading) => !isInHand(reading, pass));
    const here = scattersOf([...others, { ...draft, photoId: sheet.photo.id }]);
    const pointing = pointingFrom([...sheet.repeatsElsewhere, ...here]).get(draft.observer);
    const pointingOf = (name: LandmarkName) => pointingFor(name, pointing, draft.pointingPx);
    const measurement = calibration?.ok ? measure(draft, calibration.value, { pointing: pointingOf, shown: shownOn(sheet.photo) }) : null;
    return { calibration, measurement, pointing, pointingOf };
  }, [document, pass, sheet, calibration]);
}
