import { placeAt } from './deeds/placing.ts';
import { changeLoupe, setSnaps } from './deeds/pointing.ts';
import { markAsked, skipAsked } from './deeds/points.ts';
import { nudgeSelected, removeSelected, selectNeighbor } from './deeds/selection.ts';
import { redoChange, stepBack, undoChange } from './deeds/travel.ts';
import { pan, showAll, zoomBy } from './gestures.ts';
import type { BenchStore } from './store.ts';
import { toImage } from './view.ts';

/** One press of a zoom key or button. */
export const ZOOM_STEP = 1.4;
/** One arrow key when no point is selected. */
const PAN_CSS = 60;

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** What the keys of the Bench need to know of a key press. */
export interface KeyPress {
  readonly key: string;
  readonly shift: boolean;
  readonly alt: boolean;
  readonly command: boolean;
  readonly atMs: number;
  /** Where the focus is: on the photo or on a point in a list arrows and letters belong to the Bench, Enter only on the photo. */
  readonly focus: 'photo' | 'point' | 'elsewhere';
}

/** Does what a key means anywhere on the Bench; answers whether it meant anything. */
export function pressKey(store: BenchStore, press: KeyPress): boolean {
  const key = press.key.length === 1 ? press.key.toLowerCase() : press.key;
  if (press.command) return pressCommand(store, key, press.shift);
  if (key === 'Escape') return does(() => stepBack(store));
  if (key === 'e' && !press.alt) return does(() => setSnaps(store, !store.getState().snaps));
  return press.focus !== 'elsewhere' && pressOnPhoto(store, key, press);
}

function pressCommand(store: BenchStore, key: string, shift: boolean): boolean {
  if (key === 'z') return does(() => (shift ? redoChange(store) : undoChange(store)));
  if (key === 'y') return does(() => redoChange(store));
  return false;
}

function pressOnPhoto(store: BenchStore, key: string, press: KeyPress): boolean {
  const arrow = ARROWS[key];
  if (arrow !== undefined) {
    const [right, down] = arrow;
    const stepPx = press.alt ? 0.1 : press.shift ? 10 : 1;
    if (!nudgeSelected(store, right * stepPx, down * stepPx, press.atMs)) pan(store, -right * PAN_CSS, -down * PAN_CSS);
    return true;
  }
  switch (key) {
    case '+':
    case '=':
      return does(() => zoomBy(store, ZOOM_STEP));
    case '-':
      return does(() => zoomBy(store, 1 / ZOOM_STEP));
    case '0':
      return does(() => showAll(store));
    case 'Enter':
      return press.focus === 'photo' && does(() => placeAtMiddle(store));
    case 'Delete':
    case 'Backspace':
      return does(() => removeSelected(store));
    case 'PageDown':
      return does(() => selectNeighbor(store, 1));
    case 'PageUp':
      return does(() => selectNeighbor(store, -1));
    case 'l':
      return does(() => changeLoupe(store, press.shift ? -1 : 1));
    case 's':
      return does(() => skipAsked(store));
    case 'm':
      return does(() => markAsked(store, 'missing'));
    case 'v':
      return does(() => markAsked(store, 'not-visible'));
    default:
      return false;
  }
}

function placeAtMiddle(store: BenchStore): void {
  const { view, canvas } = store.getState();
  placeAt(store, toImage(view, { xCss: canvas.width / 2, yCss: canvas.height / 2 }));
}

function does(deed: () => void): true {
  deed();
  return true;
}
