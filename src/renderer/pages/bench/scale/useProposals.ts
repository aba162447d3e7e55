import { type QueryObserverResult, useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { ScaleProposal } from '../../../../domain/finding/foundScale.ts';
import { calibrate } from '../../../../domain/measuring/calibrate.ts';
import type { ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import type { PictureFacts } from '../../../../domain/measuring/camera.ts';
import { nearEdgeBySecondObject } from '../../../../domain/measuring/coinSide.ts';
import type { ScaledObject } from '../../../../domain/measuring/contradiction.ts';
import { type Disagreement, disagreementsAmong } from '../../../../domain/measuring/disagreements.ts';
import { areOfOneObject } from '../../../../domain/measuring/sameObject.ts';
import { placedScaleOf } from '../../../bench/document.ts';
import { ask } from '../../../client/ask.ts';
import { answerKey } from '../../../client/queries.ts';
import type { OpenPicture } from '../picture/picture.ts';
import { useSettledDocument, useWork } from '../useWork.ts';

const NOTHING: readonly ScaleProposal[] = [];
const NONE: readonly Disagreement[] = [];

const KEY = 'GET /api/photos/{photoId}/proposals';

/** Scale objects seen in the photo that is open. Looked for once: a photo never changes. */
export function useProposals(isWanted: boolean): QueryObserverResult<readonly ScaleProposal[], Error> {
  const { photo } = useWork().sheet;
  return useQuery({
    queryKey: answerKey(KEY, { path: { photoId: photo.id } }),
    queryFn: ({ signal }) => ask(KEY, { path: { photoId: photo.id }, signal }),
    enabled: isWanted,
    staleTime: Number.POSITIVE_INFINITY,
    retry: false,
    refetchOnWindowFocus: false,
    refetchOnReconnect: false,
  });
}

/**
 * A coin beside another object of which nothing was assumed: which of its edges was nearer to the camera follows from the plane they
 * share, where that object knows its tilt well enough.
 */
export function sideFromOthers(
  marks: ScaleMarks,
  proposals: readonly ScaleProposal[],
  picture: PictureFacts,
): { readonly marks: ScaleMarks; readonly by: ScaleMarks } | null {
  if (marks.kind !== 'coin' || marks.nearEdgeRad !== null) return null;
  for (const proposal of proposals) {
    const { marks: other } = proposal;
    const calibration = other.kind === 'coin' || isAssumed(proposal) ? null : calibrate(other, picture);
    const nearEdgeRad = calibration?.ok ? nearEdgeBySecondObject(marks, picture, calibration.value) : null;
    if (nearEdgeRad !== null) return { marks: { ...marks, nearEdgeRad }, by: other };
  }
  return null;
}

/**
 * What contradicts the scale of the photo, looked for in the picture once its own pixels are there: marks that were stored long
 * ago may still be contradicted by what lies beside them.
 */
export function useDisagreements(picture: OpenPicture): readonly Disagreement[] {
  const document = useSettledDocument();
  const scale = placedScaleOf(document);
  const isDecoded = useStore(picture.store, ({ complete }) => complete);
  const { data } = useProposals(isDecoded && scale !== undefined);
  const disagreements = useContradictions(scale, data ?? NOTHING, document.check);
  return scale === undefined ? NONE : disagreements;
}

/**
 * Objects in one picture that contradict each other, each pair of them: the present scale, the keeper's second object and those
 * seen. A coin or a rule of which a size was only assumed contradicts nothing yet.
 */
export function useContradictions(
  present: ScaleMarks | undefined,
  proposals: readonly ScaleProposal[],
  check?: ScaleMarks,
): readonly Disagreement[] {
  const { photo } = useWork().sheet;
  return useMemo(() => {
    const scaled = (marks: ScaleMarks): ScaledObject[] => {
      const calibration = calibrate(marks, photo);
      return calibration.ok ? [{ marks, calibration: calibration.value }] : [];
    };
    const isSecond = (marks: ScaleMarks) => check !== undefined && areOfOneObject(check, marks);
    const stated = proposals.filter((proposal) => !isAssumed(proposal) && !isSecond(proposal.marks)).flatMap(({ marks }) => scaled(marks));
    const second = present === undefined || check === undefined ? [] : scaled(check);
    const [first] = present === undefined ? [] : scaled(present);
    return disagreementsAmong(first ?? null, [...second, ...stated]);
  }, [present, proposals, check, photo]);
}

/** Whether the object tells a size only by what was assumed of it. */
export function isAssumed({ evidence }: ScaleProposal): boolean {
  if (evidence.kind === 'rim') return evidence.coinAssumed;
  if (evidence.kind === 'ticks') return evidence.graduationAssumed;
  return evidence.kind === 'markers' && evidence.sizeAssumed;
}
