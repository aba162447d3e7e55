import { type MouseEvent, type ReactElement, useRef } from 'react';
import { DORSAL_SKIN_PROTOCOL, type LandmarkName, type Landmarks } from '../../../../domain/measuring/landmarks.ts';
import { PLATE_SIZE, type PlatePoint, platePointOf } from '../../../bench/plate.ts';
import style from './GuidePlate.module.css';
import { SkinDrawing } from './SkinDrawing.tsx';

interface Props {
  landmarks: Landmarks;
  asked: LandmarkName | null;
  selected: LandmarkName | null;
  onChoose: (name: LandmarkName) => void;
}

/**
 * The line drawing of a skin from above with its points: the one asked for pulses. A click takes the nearest point. The
 * list below the drawing offers the same to the keyboard and to screen readers.
 */
export function GuidePlate({ landmarks, asked, selected, onChoose }: Props): ReactElement {
  const plate = useRef<SVGSVGElement>(null);
  const choose = (event: MouseEvent) => {
    const box = plate.current?.getBoundingClientRect();
    if (box === undefined) return;
    const unitsPerCss = PLATE_SIZE.width / box.width;
    onChoose(nearestTo({ x: (event.clientX - box.left) * unitsPerCss, y: (event.clientY - box.top) * unitsPerCss }));
  };
  return (
    <button type="button" className={style['frame']} tabIndex={-1} aria-hidden="true" onClick={choose}>
      <svg ref={plate} viewBox={`0 0 ${PLATE_SIZE.width} ${PLATE_SIZE.height}`} className={style['plate']} role="presentation">
        <SkinDrawing />
        {DORSAL_SKIN_PROTOCOL.map((name) => (
          <PlateMark key={name} at={platePointOf(name)} state={landmarks[name]?.state ?? 'open'} isSelected={name === selected} />
        ))}
        {asked !== null && <Pulse at={platePointOf(asked)} />}
      </svg>
    </button>
  );
}

function PlateMark({ at, state, isSelected }: { at: PlatePoint; state: string; isSelected: boolean }): ReactElement {
  if (state === 'missing' || state === 'not-visible') {
    return <path className={style['absent']} d={`M${at.x - 2.5} ${at.y - 2.5}l5 5m0-5l-5 5`} />;
  }
  return <circle className={style[state]} cx={at.x} cy={at.y} r={isSelected ? 5 : 3} data-selected={isSelected || undefined} />;
}

function Pulse({ at }: { at: PlatePoint }): ReactElement {
  return (
    <g>
      <circle className={style['pulse']} cx={at.x} cy={at.y} r="9" />
      <circle className={style['asked']} cx={at.x} cy={at.y} r="5" />
    </g>
  );
}

function nearestTo(place: PlatePoint): LandmarkName {
  const away = (name: LandmarkName) => Math.hypot(platePointOf(name).x - place.x, platePointOf(name).y - place.y);
  return DORSAL_SKIN_PROTOCOL.reduce((nearest, name) => (away(name) < away(nearest) ? name : nearest));
}
