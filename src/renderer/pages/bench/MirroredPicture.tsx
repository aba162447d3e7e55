import type { ReactElement } from 'react';
import type { ScaleMarks } from '../../../domain/measuring/calibration.ts';
import { warningInWords } from '../../../words/calibration.ts';
import { Notice } from '../../parts/Notice.tsx';

/** Told wherever left and right count: a printed card showed that the picture is a mirror image. */
export function MirroredPicture({ marks }: { marks: ScaleMarks | undefined }): ReactElement | null {
  if (marks?.kind !== 'points' || !marks.mirrored) return null;
  return <Notice tone="warning">{warningInWords({ code: 'picture-mirrored' })}</Notice>;
}
