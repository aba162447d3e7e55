import { landmarkName } from '../../../words/landmarks.ts';
import { type HandleId, isLandmarkName } from '../../bench/handles.ts';
import type { ChangeLabel } from '../../bench/history.ts';

/** "leg I left, tarsus tip", "corner 3". */
export function handleName(id: HandleId): string {
  if (isLandmarkName(id)) return landmarkName(id);
  const [kind, number] = id.split('-');
  return kind === 'end' ? `end ${number} of the distance` : `corner ${number}`;
}

/** As it stands after "Undo" and "Redo". */
export const CHANGE_LABELS: Readonly<Record<ChangeLabel, string>> = {
  'place-point': 'place a point',
  'move-point': 'move a point',
  'mark-point': 'mark a point',
  'mark-leg': 'mark a leg',
  'remove-point': 'take a point away',
  'place-scale': 'mark the scale object',
  'find-scale': 'take over what was found',
  'move-scale': 'move a mark of the scale object',
  'change-scale': 'change the scale object',
  'remove-scale': 'remove the scale',
  'place-check': 'mark a second object',
  'swap-scales': 'measure by the other object',
  'remove-check': 'take the second object away',
  'set-height': 'set the carapace height',
  'set-point-height': 'set the height of a point',
  'set-pointing': 'set the pointing uncertainty',
  'name-distance': 'name a distance',
  'put-back': 'put the marks back',
};

/** The keys of the Bench, in the order of use. */
export const KEYS_IN_WORDS: readonly { readonly keys: string; readonly does: string }[] = [
  { keys: 'Arrows', does: 'move the selected point by 1 pixel (Shift 10, Alt 0.1); with none selected, move the photo' },
  { keys: 'Shift and click', does: 'place a point where another one lies' },
  { keys: 'Enter', does: 'place the next point in the middle of the view' },
  { keys: 'Page up, Page down', does: 'select the point before or after' },
  { keys: '+  −  0', does: 'larger, smaller, whole photo' },
  { keys: 'L, Shift L', does: 'the loupe enlarges more, less (4 to 16 times)' },
  { keys: 'E', does: 'let points go to the edge beside them, or not; hold F for a click that stays where it is made' },
  { keys: 'S, M, V', does: 'skip the point asked for, mark it missing, mark it not visible' },
  { keys: 'Delete', does: 'take the selected point away' },
  { keys: 'Escape', does: 'drop what is in hand' },
  { keys: 'Ctrl Z, Ctrl Shift Z', does: 'undo, redo' },
];
