import type { ReactElement } from 'react';
import { capitalized } from '../../../words/labels.ts';
import { showHandle } from '../../bench/deeds/selection.ts';
import { scaleHandlesOf } from '../../bench/handles.ts';
import { handleName } from './benchWords.ts';
import style from './panel.module.css';
import { useBench, useWork } from './useWork.ts';

/** The marks on the scale object, for the keyboard and for reading aloud: choose one, then move it with the arrow keys. */
export function HandleList(): ReactElement | null {
  const { bench } = useWork();
  const marks = useBench((state) => state.edited.document.scale);
  const selected = useBench((state) => state.selected);
  const handles = scaleHandlesOf(marks);
  if (handles.length === 0) return null;
  return (
    <ul className={style['list']} aria-label="Marks on the scale object">
      {handles.map(({ id, at }) => (
        <li key={id}>
          <button
            type="button"
            className={style['item']}
            aria-pressed={selected === id}
            data-takes-keys
            onClick={() => showHandle(bench, id)}
          >
            <span>{capitalized(handleName(id))}</span>
            <span className={`${style['aside']} figures`}>
              {at.xPx.toFixed(1)}, {at.yPx.toFixed(1)}
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}
