import type { ReactElement } from 'react';
import { capitalized } from '../../../words/labels.ts';
import { landmarkName } from '../../../words/landmarks.ts';
import { type BenchState, placingLandmark } from '../../bench/store.ts';
import type { PlacingScale } from '../../bench/tools/placingScale.ts';
import style from './PhotoCanvas.module.css';
import { useBench } from './useWork.ts';

/** On the photo: what the next click marks. */
export function Asking(): ReactElement {
  const asked = useBench(askedFor);
  return (
    <p className={style['asking']} role="status">
      {asked}
    </p>
  );
}

function askedFor(state: BenchState): string {
  if (state.placing?.kind === 'placingEnds') {
    return state.placing.placed.length === 0 ? 'Click one end of the distance' : 'Click the other end';
  }
  if (state.placing?.kind === 'placingCorners') return `Click a corner, in any order: ${state.placing.placed.length + 1} of 4`;
  if (state.placing?.kind === 'pointingAt') return pointingAtInWords(state.placing);
  if (state.refining?.kind === 'wanted') return 'Looking for it in the picture …';
  const name = placingLandmark(state);
  return name === null ? '' : capitalized(landmarkName(name));
}

function pointingAtInWords({ object, placed }: Extract<PlacingScale, { kind: 'pointingAt' }>): string {
  if (object.kind === 'rule') return placed.length === 0 ? 'Click a tick near one end of the rule' : 'Click a tick near its other end';
  return object.by === 'middle' ? 'Click the middle of the coin' : `Click a point of its rim: ${placed.length + 1} of 3`;
}
