import type { ReactElement } from 'react';
import style from '../panel.module.css';
import { useWork } from '../useWork.ts';

/** Orientations of EXIF 2.32 (CIPA DC-008) that exchange left and right, besides turning. */
const MIRRORING: readonly number[] = [2, 4, 5, 7];

/** A camera notes how it was held, and now and then is wrong. Only where that could change what is recorded it is said unasked. */
export function HowItLies(): ReactElement | null {
  const { orientation } = useWork().sheet.photo.facts;
  if (orientation === 1) return null;
  if (MIRRORING.includes(orientation)) {
    return (
      <p className={style['soft']}>
        The file notes that its picture is a mirror image, so it is shown with left and right exchanged. If writing in it reads backwards,
        the note is wrong: lengths still come out right, but the legs of the left side would be recorded as those of the right. Then save
        the photo anew without that note and import that.
      </p>
    );
  }
  return (
    <details>
      <summary className={style['summary']}>Does the photo lie on its side?</summary>
      <p className={style['soft']}>
        Then the file’s note of how the camera was held is wrong. It does no harm: lengths are the same, and left and right are those of the
        animal however it lies.
      </p>
    </details>
  );
}
