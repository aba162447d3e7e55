import { describe, expect, test } from 'vitest';
import type { Handle } from '../../../src/renderer/bench/handles.ts';
import { type PointerAct, type PointerHappening, type Pointing, point, RESTING } from '../../../src/renderer/bench/tools/pointing.ts';
import type { View } from '../../../src/renderer/bench/view.ts';

const view: View = { zoom: 2, offset: { xCss: 100, yCss: 50 } };
const handle: Handle = { id: 'carapace-front', at: { xPx: 10, yPx: 10 } };

function play(happenings: PointerHappening[]): { pointing: Pointing; acts: PointerAct[] } {
  return happenings.reduce<{ pointing: Pointing; acts: PointerAct[] }>(
    (so, happening) => {
      const outcome = point(so.pointing, happening, view);
      return { pointing: outcome.pointing, acts: [...so.acts, ...outcome.acts] };
    },
    { pointing: RESTING, acts: [] },
  );
}

const press = (xCss: number, yCss: number, on: Handle | null = null, pointer = 1, pans = false, beside = false): PointerHappening => ({
  kind: 'press',
  pointer,
  at: { xCss, yCss },
  on,
  beside,
  pans,
});
const move = (xCss: number, yCss: number, pointer = 1): PointerHappening => ({ kind: 'move', pointer, at: { xCss, yCss } });
const release = (xCss: number, yCss: number, pointer = 1): PointerHappening => ({ kind: 'release', pointer, at: { xCss, yCss } });

describe('pointers on the photo', () => {
  test('a press and release on empty ground is a click at the sub-pixel place of the press', () => {
    expect(play([press(201, 151), move(203, 151), release(203, 151)]).acts).toEqual([{ kind: 'click', at: { xPx: 50.5, yPx: 50.5 } }]);
  });

  test('a press that wanders off pans and never clicks', () => {
    const { acts, pointing } = play([press(200, 150), move(210, 150), move(215, 140), release(215, 140)]);
    expect(acts).toEqual([
      { kind: 'pan', byXCss: 10, byYCss: 0 },
      { kind: 'pan', byXCss: 5, byYCss: -10 },
    ]);
    expect(pointing).toEqual(RESTING);
  });

  test('a handle taken hold of beside its middle does not jump', () => {
    const { acts } = play([press(123, 68, handle), move(133, 68), move(123, 68), release(123, 68)]);
    expect(acts).toEqual([
      { kind: 'begin', id: 'carapace-front', label: 'move-point' },
      { kind: 'drag', id: 'carapace-front', to: { xPx: 15, yPx: 10 } },
      { kind: 'drag', id: 'carapace-front', to: { xPx: 10, yPx: 10 } },
      { kind: 'settle' },
    ]);
  });

  test('a press on a handle that trembles within the slack moves nothing and is told as a tap where it began', () => {
    expect(play([press(123, 68, handle), move(125, 69), release(125, 69)]).acts).toEqual([
      { kind: 'begin', id: 'carapace-front', label: 'move-point' },
      { kind: 'settle' },
      { kind: 'tap', id: 'carapace-front', at: { xPx: 11.5, yPx: 9 } },
    ]);
  });

  test('beside the mark of a handle a press is a click there, and yet the handle can be dragged from there', () => {
    expect(play([press(128, 68, handle, 1, false, true), move(130, 69), release(130, 69)]).acts.slice(1)).toEqual([
      { kind: 'settle' },
      { kind: 'click', at: { xPx: 14, yPx: 9 } },
    ]);
    const { acts } = play([press(128, 68, handle, 1, false, true), move(138, 68), release(138, 68)]);
    expect(acts.slice(1)).toEqual([{ kind: 'drag', id: 'carapace-front', to: { xPx: 15, yPx: 10 } }, { kind: 'settle' }]);
  });

  test('with the space bar or middle button a press on a handle pans', () => {
    expect(play([press(120, 70, handle, 1, true), move(130, 75), release(130, 75)]).acts).toEqual([{ kind: 'pan', byXCss: 10, byYCss: 5 }]);
  });

  test('a second finger abandons the drag and pinches; lifting it goes on panning without a click', () => {
    const { acts } = play([
      press(120, 70, handle),
      press(300, 70, null, 2),
      move(320, 70, 2),
      release(320, 70, 2),
      move(121, 70),
      release(121, 70),
    ]);
    expect(acts).toEqual([
      { kind: 'begin', id: 'carapace-front', label: 'move-point' },
      { kind: 'abandon' },
      {
        kind: 'pinch',
        from: [
          { xCss: 120, yCss: 70 },
          { xCss: 300, yCss: 70 },
        ],
        to: [
          { xCss: 120, yCss: 70 },
          { xCss: 320, yCss: 70 },
        ],
      },
      { kind: 'pan', byXCss: 1, byYCss: 0 },
    ]);
  });

  test('abandoning in the middle of a drag takes it back; the release that follows does nothing', () => {
    const { acts, pointing } = play([press(120, 70, handle), move(140, 70), { kind: 'abandon' }, release(140, 70)]);
    expect(acts.map((act) => act.kind)).toEqual(['begin', 'drag', 'abandon']);
    expect(pointing).toEqual(RESTING);
  });

  test('moves of a pointer that is not down change nothing', () => {
    expect(play([move(1, 1), press(200, 150), move(400, 400, 7), release(9, 9, 7)])).toEqual({
      pointing: { kind: 'pressing', pointer: 1, from: { xCss: 200, yCss: 150 } },
      acts: [],
    });
  });
});
