import type { ImagePoint } from '../../../domain/measuring/points.ts';
import { type Handle, type HandleId, movingLabel } from '../handles.ts';
import type { ChangeLabel } from '../history.ts';
import { distance, toImage, toView, type View, type ViewPoint } from '../view.ts';

/** What the pointers are doing. A press on empty ground is a click or a pan: which, only its next movement tells. */
export type Pointing =
  | { readonly kind: 'resting' }
  | { readonly kind: 'pressing'; readonly pointer: number; readonly from: ViewPoint }
  | { readonly kind: 'panning'; readonly pointer: number; readonly last: ViewPoint }
  | { readonly kind: 'pinching'; readonly fingers: readonly [Finger, Finger] }
  | {
      readonly kind: 'draggingHandle';
      readonly pointer: number;
      readonly id: HandleId;
      readonly grip: ViewPoint;
      readonly from: ViewPoint;
      readonly last: ViewPoint;
      /** The press fell beside the mark: unless it becomes a drag it is a click there. */
      readonly beside: boolean;
      /** Whether it has wandered far enough to be a drag. */
      readonly moved: boolean;
    };

interface Finger {
  readonly pointer: number;
  readonly at: ViewPoint;
}

export type PointerHappening =
  | {
      readonly kind: 'press';
      readonly pointer: number;
      readonly at: ViewPoint;
      /** The handle under the pointer. */
      readonly on: Handle | null;
      /** Whether a press on it that moves nothing means the ground beside its mark. */
      readonly beside: boolean;
      /** The space bar or the middle button: pan, whatever is underneath. */
      readonly pans: boolean;
    }
  | { readonly kind: 'move'; readonly pointer: number; readonly at: ViewPoint }
  | { readonly kind: 'release'; readonly pointer: number; readonly at: ViewPoint }
  | { readonly kind: 'abandon' };

/** What should follow, for the store to carry out. */
export type PointerAct =
  | { readonly kind: 'pan'; readonly byXCss: number; readonly byYCss: number }
  | { readonly kind: 'pinch'; readonly from: readonly [ViewPoint, ViewPoint]; readonly to: readonly [ViewPoint, ViewPoint] }
  | { readonly kind: 'click'; readonly at: ImagePoint }
  /** A press on a handle that moved nothing; it began at the image point `at`. */
  | { readonly kind: 'tap'; readonly id: HandleId; readonly at: ImagePoint }
  | { readonly kind: 'begin'; readonly id: HandleId; readonly label: ChangeLabel }
  | { readonly kind: 'drag'; readonly id: HandleId; readonly to: ImagePoint }
  | { readonly kind: 'settle' }
  | { readonly kind: 'abandon' };

export interface PointerOutcome {
  readonly pointing: Pointing;
  readonly acts: readonly PointerAct[];
}

/** A press that wanders no further than this many CSS pixels is a click, on a handle as beside it. */
export const CLICK_SLACK_CSS = 4;

export const RESTING: Pointing = { kind: 'resting' };

export function point(pointing: Pointing, happening: PointerHappening, view: View): PointerOutcome {
  switch (happening.kind) {
    case 'press':
      return press(pointing, happening, view);
    case 'move':
      return move(pointing, happening.pointer, happening.at, view);
    case 'release':
      return release(pointing, happening.pointer, view);
    case 'abandon':
      return { pointing: RESTING, acts: pointing.kind === 'draggingHandle' ? [{ kind: 'abandon' }] : [] };
  }
}

function press(pointing: Pointing, happening: Extract<PointerHappening, { kind: 'press' }>, view: View): PointerOutcome {
  const { pointer, at, on, beside, pans } = happening;
  if (pointing.kind !== 'resting') return secondFinger(pointing, { pointer, at });
  if (pans) return { pointing: { kind: 'panning', pointer, last: at }, acts: [] };
  if (on === null) return { pointing: { kind: 'pressing', pointer, from: at }, acts: [] };
  const handleAt = toView(view, on.at);
  // The point keeps its distance from the pointer: it must not jump when it is taken hold of beside its middle.
  const grip = { xCss: handleAt.xCss - at.xCss, yCss: handleAt.yCss - at.yCss };
  return {
    pointing: { kind: 'draggingHandle', pointer, id: on.id, grip, from: at, last: at, beside, moved: false },
    acts: [{ kind: 'begin', id: on.id, label: movingLabel(on.id) }],
  };
}

function secondFinger(pointing: Exclude<Pointing, { kind: 'resting' }>, second: Finger): PointerOutcome {
  if (pointing.kind === 'pinching' || pointing.pointer === second.pointer) return { pointing, acts: [] };
  const at = pointing.kind === 'pressing' ? pointing.from : pointing.last;
  const acts: PointerAct[] = pointing.kind === 'draggingHandle' ? [{ kind: 'abandon' }] : [];
  return { pointing: { kind: 'pinching', fingers: [{ pointer: pointing.pointer, at }, second] }, acts };
}

function move(pointing: Pointing, pointer: number, at: ViewPoint, view: View): PointerOutcome {
  if (pointing.kind === 'pinching') return pinching(pointing.fingers, pointer, at);
  if (pointing.kind === 'resting' || pointing.pointer !== pointer) return { pointing, acts: [] };
  if (pointing.kind === 'draggingHandle') {
    if (!pointing.moved && distance(pointing.from, at) <= CLICK_SLACK_CSS) return { pointing, acts: [] };
    const to = toImage(view, { xCss: at.xCss + pointing.grip.xCss, yCss: at.yCss + pointing.grip.yCss });
    return { pointing: { ...pointing, last: at, moved: true }, acts: [{ kind: 'drag', id: pointing.id, to }] };
  }
  const last = pointing.kind === 'pressing' ? pointing.from : pointing.last;
  if (pointing.kind === 'pressing' && distance(last, at) <= CLICK_SLACK_CSS) return { pointing, acts: [] };
  return {
    pointing: { kind: 'panning', pointer, last: at },
    acts: [{ kind: 'pan', byXCss: at.xCss - last.xCss, byYCss: at.yCss - last.yCss }],
  };
}

function pinching([one, other]: readonly [Finger, Finger], pointer: number, at: ViewPoint): PointerOutcome {
  const moved: readonly [Finger, Finger] = [
    one.pointer === pointer ? { pointer, at } : one,
    other.pointer === pointer ? { pointer, at } : other,
  ];
  return {
    pointing: { kind: 'pinching', fingers: moved },
    acts: [{ kind: 'pinch', from: [one.at, other.at], to: [moved[0].at, moved[1].at] }],
  };
}

function release(pointing: Pointing, pointer: number, view: View): PointerOutcome {
  if (pointing.kind === 'pinching') {
    const staying = pointing.fingers.find((finger) => finger.pointer !== pointer);
    const lifted = pointing.fingers.some((finger) => finger.pointer === pointer);
    if (!lifted || staying === undefined) return { pointing, acts: [] };
    return { pointing: { kind: 'panning', pointer: staying.pointer, last: staying.at }, acts: [] };
  }
  if (pointing.kind === 'resting' || pointing.pointer !== pointer) return { pointing, acts: [] };
  if (pointing.kind === 'draggingHandle') {
    if (pointing.moved) return { pointing: RESTING, acts: [{ kind: 'settle' }] };
    const at = toImage(view, pointing.from);
    const meant: PointerAct = pointing.beside ? { kind: 'click', at } : { kind: 'tap', id: pointing.id, at };
    return { pointing: RESTING, acts: [{ kind: 'settle' }, meant] };
  }
  if (pointing.kind === 'pressing') return { pointing: RESTING, acts: [{ kind: 'click', at: toImage(view, pointing.from) }] };
  return { pointing: RESTING, acts: [] };
}
