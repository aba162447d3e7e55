import type { ReactElement } from 'react';
import style from './VentralPlate.module.css';

const WALL =
  'M150 30C114 20 80 32 58 60C30 96 22 146 34 194C47 248 98 298 150 304C202 298 253 248 266 194C278 146 270 96 242 60C220 32 186 20 150 30Z';
/** Setae along the left edge; the right edge mirrors it. */
const SETAE =
  'M126 27v-6M110 28v-6M102 30l-3-6M88 35l-3-5M81 39l-2-8M69 48l-2-8M58 60l-2-5M52 69l-3-6M42 87l-6-6M35 107l-5-4M32 117l-5-3M29 139l-6-4M29 150l-7-2' +
  'M29 161h-6M32 183l-7 1M34 194h-8M38 206h-6M49 230l-7 3M56 242l-5 4M64 252l-5 6M73 262l-7 3M93 280l-6 5M103 287l-4 5M115 293l-6 6';
const FURROW = 'M104 146Q150 160 196 146';
const FOLDS = [
  'M66 84Q88 70 108 72',
  'M234 84Q212 70 192 72',
  'M66 250Q94 264 122 258',
  'M234 250Q206 264 178 258',
  'M150 176V270',
  'M150 44V66',
];
/** The front pair lies at the furrow, the rear pair behind it. */
const LUNGS = [
  { x: 84, y: 124, turnDegrees: -16 },
  { x: 216, y: 124, turnDegrees: 16 },
  { x: 92, y: 212, turnDegrees: -8 },
  { x: 208, y: 212, turnDegrees: 8 },
] as const;
const LEAVES = [-14, -7, 0, 7, 14] as const;

const LEGEND = [
  'Front book lungs',
  'Furrow',
  'Receptacles (spermathecae)',
  'Uterus externus, the upper lip they rise from',
  'Lower lip, the rear margin of the opening',
  'Rear book lungs',
  'Spinnerets',
] as const;

const DESCRIPTION =
  'Two line drawings of the belly wall of a shed abdomen, seen from inside, front end up. In both, two pairs of pale book lungs and, ' +
  'between the front pair, the furrow across the middle; a dashed ring marks the place to read there. In the female two stalked ' +
  'receptacles rise from the upper lip in front of the furrow, and the lower lip lies as a crescent behind it. In the male the same ' +
  'place is flat, without lips.';

/** Where to look: the inner side of the abdomen of both sexes. Drawn for this app; not after any animal. */
export function VentralPlate(): ReactElement {
  return (
    <figure className={style['plate']}>
      <svg viewBox="0 0 640 334" role="img" aria-label={DESCRIPTION} className={style['drawing']}>
        <g transform="translate(24 8)">
          <Wall />
          <path className={style['lip']} d="M120 149Q150 134 180 149Q150 159 120 149Z" />
          <path className={style['lip']} d="M112 155Q150 180 188 155Q150 167 112 155Z" />
          <path className={style['organ']} d="M141 144C137 132 132 126 134 114M159 144C163 132 168 126 166 114" />
          <ellipse className={style['organ']} cx="134" cy="106" rx="7" ry="9" transform="rotate(-10 134 106)" />
          <ellipse className={style['organ']} cx="166" cy="106" rx="7" ry="9" transform="rotate(10 166 106)" />
          <Mark number={1} at={[66, 120]} to={[8, 84]} />
          <Mark number={2} at={[108, 148]} to={[6, 172]} />
          <Mark number={3} at={[170, 100]} to={[262, 24]} />
          <Mark number={4} at={[174, 147]} to={[292, 172]} />
          <Mark number={5} at={[172, 164]} to={[290, 212]} />
          <Mark number={6} at={[222, 222]} to={[284, 256]} />
          <Mark number={7} at={[162, 306]} to={[226, 312]} />
        </g>
        <g transform="translate(322 8)">
          <Wall />
          <Mark number={1} at={[234, 120]} to={[292, 84]} />
          <Mark number={2} at={[192, 148]} to={[294, 172]} />
          <Mark number={6} at={[222, 218]} to={[284, 256]} />
        </g>
      </svg>
      <figcaption className={style['caption']}>
        <div className={style['sexes']}>
          <p>
            <strong>Female.</strong> Receptacles stand before the furrow: read by their presence.
          </p>
          <p>
            <strong>Male.</strong> The same place is flat: read by absence, so only on a large, clear strip.
          </p>
        </div>
        <ol className={style['legend']}>
          {LEGEND.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ol>
        <p className={style['note']}>
          Seen from inside, front end up: left and right are swapped against a picture of the underside. The dashed ring is the place to
          read. Forms differ between genera and change with age.
        </p>
      </figcaption>
    </figure>
  );
}

function Wall(): ReactElement {
  return (
    <>
      <path className={style['fold']} d={SETAE} />
      <path className={style['fold']} d={SETAE} transform="matrix(-1 0 0 1 300 0)" />
      <path className={style['wall']} d={WALL} />
      {FOLDS.map((fold) => (
        <path key={fold} className={style['fold']} d={fold} />
      ))}
      <path className={style['line']} d="M140 29C142 16 158 16 160 29" />
      {LUNGS.map(({ x, y, turnDegrees }) => (
        <g key={`${x} ${y}`} transform={`translate(${x} ${y}) rotate(${turnDegrees})`}>
          <rect className={style['lung']} x="-28" y="-21" width="56" height="42" rx="19" />
          {LEAVES.map((offset) => (
            <path key={offset} className={style['fold']} d={`M${-24 + Math.abs(offset) / 2} ${offset}H${24 - Math.abs(offset) / 2}`} />
          ))}
        </g>
      ))}
      <path className={style['furrow']} d={FURROW} />
      <path className={style['line']} d="M136 302c-4 8-3 14 2 16 5-2 6-8 4-15M164 302c4 8 3 14-2 16-5-2-6-8-4-15" />
      <ellipse className={style['ring']} cx="150" cy="126" rx="42" ry="42" />
    </>
  );
}

function Mark({ number, at, to }: { number: number; at: readonly [number, number]; to: readonly [number, number] }): ReactElement {
  const [x, y] = to;
  return (
    <>
      <path className={style['leader']} d={`M${at[0]} ${at[1]}L${x} ${y}`} />
      <circle className={style['disc']} cx={x} cy={y} r="12" />
      <text className={style['number']} x={x} y={y}>
        {number}
      </text>
    </>
  );
}
