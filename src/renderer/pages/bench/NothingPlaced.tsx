import type { ReactElement } from 'react';
import { landmarkName } from '../../../words/landmarks.ts';
import { handlePosition } from '../../bench/handles.ts';
import { type BenchState, placingLandmark } from '../../bench/store.ts';
import { distance, toView, type ViewPoint } from '../../bench/view.ts';
import style from './PhotoCanvas.module.css';
import { useBench } from './useWork.ts';

const WIDTH = 'min(17rem, 100% - 1.5rem)';
const MARGIN = '0.75rem';
/** A pointer this far from the mark has gone on. */
const GONE_ON_CSS = 28;
/** So far that the mark and its ring stay in sight. */
const AWAY = '2rem';

/** Why the last click placed nothing, beside the place where it fell, where the eyes are: so that nobody clicks on unaware. */
export function NothingPlaced(): ReactElement {
  const words = useBench(wordsOf);
  const leftCss = useBench((state) => placeOf(state)?.xCss ?? 0);
  const topCss = useBench((state) => placeOf(state)?.yCss ?? 0);
  const isLow = useBench((state) => (placeOf(state)?.yCss ?? 0) > state.canvas.height / 2);
  return (
    <p
      role="status"
      className={style['instead']}
      style={{
        left: `clamp(${MARGIN}, ${leftCss}px - ${WIDTH} / 2, 100% - ${WIDTH} - ${MARGIN})`,
        width: WIDTH,
        ...(isLow ? { bottom: `calc(100% - ${topCss}px + ${AWAY})` } : { top: `calc(${topCss}px + ${AWAY})` }),
      }}
    >
      {words}
    </p>
  );
}

function wordsOf(state: BenchState): string {
  const { chosenInstead, besidePicture, hover, view } = state;
  const at = placeOf(state);
  // A hand that has gone on must see what it goes to.
  if (at !== null && hover !== null && distance(toView(view, hover), at) > GONE_ON_CSS) return '';
  if (besidePicture !== null) return `Nothing placed: this lies ${farness(state)} the picture. ${instead(state)}`;
  const name = placingLandmark(state);
  if (name === null || chosenInstead === null || chosenInstead !== state.selected || chosenInstead === name) return '';
  return `Nothing placed: this click chose the point that lies here, ${landmarkName(chosenInstead)}. Click again to place here: ${landmarkName(name)}.`;
}

function instead({ placing }: BenchState): string {
  if (placing === null) return 'Click on the picture; a point that it does not show is marked “Not visible”.';
  return placing.kind === 'placingCorners'
    ? 'A corner may lie beside it by a quarter of its longer side: of this card too little is to be seen. Use another object.'
    : 'Click on the picture; of what is cut off, take a part that it shows.';
}

function farness({ placing }: BenchState): string {
  return placing?.kind === 'placingCorners' ? 'too far outside' : 'outside';
}

function placeOf({ besidePicture, chosenInstead, edited, view }: BenchState): ViewPoint | null {
  const at = besidePicture ?? (chosenInstead === null ? null : handlePosition(edited.document, chosenInstead));
  return at === null ? null : toView(view, at);
}
