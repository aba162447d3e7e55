import { type MouseEvent, type ReactElement, useRef } from 'react';
import {
  DORSAL_SKIN_PROTOCOL,
  isFreeLandmark,
  type LandmarkName,
  type Landmarks,
  pointOf,
} from '../../../../domain/measuring/landmarks.ts';
import { mirrored, PLATE_MIDDLE, PLATE_REACH, type PlatePoint, platePointOf, plateTurnDeg, turned } from '../../../bench/plate.ts';
import style from './GuidePlate.module.css';
import { SkinDrawing } from './SkinDrawing.tsx';

interface Props {
  landmarks: Landmarks;
  asked: LandmarkName | null;
  selected: LandmarkName | null;
  onChoose: (name: LandmarkName) => void;
}

/** Where the drawing says which side is the animal's left. */
const LEFT_SIDE: PlatePoint = { x: 62, y: 172 };
const VIEW_BOX = `${PLATE_MIDDLE.x - PLATE_REACH} ${PLATE_MIDDLE.y - PLATE_REACH} ${2 * PLATE_REACH} ${2 * PLATE_REACH}`;

/**
 * The line drawing of a skin from above, lying as the skin does in the photo, with its points: the one asked for pulses. A click takes the nearest point. The
 * list below the drawing offers the same to the keyboard and to screen readers.
 */
export function GuidePlate({ landmarks, asked, selected, onChoose }: Props): ReactElement {
  const plate = useRef<SVGSVGElement>(null);
  const turnDeg = plateTurnDeg(pointOf(landmarks['carapace-front']), pointOf(landmarks['carapace-rear']));
  const choose = (event: MouseEvent) => {
    const box = plate.current?.getBoundingClientRect();
    if (box === undefined) return;
    const unitsPerCss = (2 * PLATE_REACH) / Math.min(box.width, box.height);
    const fromMiddle = { x: event.clientX - (box.left + box.right) / 2, y: event.clientY - (box.top + box.bottom) / 2 };
    const at = { x: PLATE_MIDDLE.x + unitsPerCss * fromMiddle.x, y: PLATE_MIDDLE.y + unitsPerCss * fromMiddle.y };
    onChoose(nearestTo(turned(at, -turnDeg)));
  };
  return (
    <button type="button" className={style['frame']} tabIndex={-1} aria-hidden="true" onClick={choose}>
      <svg ref={plate} viewBox={VIEW_BOX} className={style['plate']} role="presentation">
        <g transform={`rotate(${turnDeg.toFixed(1)} ${PLATE_MIDDLE.x} ${PLATE_MIDDLE.y})`}>
          <SkinDrawing />
        </g>
        <SideMark side="L" at={turned(LEFT_SIDE, turnDeg)} />
        <SideMark side="R" at={turned(mirrored(LEFT_SIDE), turnDeg)} />
        {DORSAL_SKIN_PROTOCOL.map((name) => (
          <PlateMark
            key={name}
            at={turned(platePointOf(name), turnDeg)}
            state={landmarks[name]?.state ?? 'open'}
            isSelected={name === selected}
          />
        ))}
        {asked !== null && !isFreeLandmark(asked) && <Pulse at={turned(platePointOf(asked), turnDeg)} />}
      </svg>
    </button>
  );
}

function SideMark({ side, at }: { side: 'L' | 'R'; at: PlatePoint }): ReactElement {
  return (
    <text className={style['side']} x={at.x} y={at.y} textAnchor="middle" dominantBaseline="central">
      {side}
    </text>
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
  const away = (name: (typeof DORSAL_SKIN_PROTOCOL)[number]) => Math.hypot(platePointOf(name).x - place.x, platePointOf(name).y - place.y);
  return DORSAL_SKIN_PROTOCOL.reduce((nearest, name) => (away(name) < away(nearest) ? name : nearest));
}
