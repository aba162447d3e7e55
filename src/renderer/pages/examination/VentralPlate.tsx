import type { ReactElement } from 'react';
import style from './VentralPlate.module.css';

const WALL =
  'M150 30C118 20 86 30 64 56C36 90 27 142 37 190C48 246 98 300 150 304C202 300 252 246 263 190C273 142 264 90 236 56C214 30 182 20 150 30Z';
const FURROW = 'M104 142Q150 158 196 142';
const FOLDS = ['M58 78Q84 66 104 70', 'M242 78Q216 66 196 70', 'M62 236Q92 250 118 246', 'M238 236Q208 250 182 246', 'M150 172V262'];
/** The front pair lies at the furrow, the rear pair behind it. */
const LUNGS = [
  { xPx: 96, yPx: 122, turnDegrees: -14 },
  { xPx: 204, yPx: 122, turnDegrees: 14 },
  { xPx: 98, yPx: 208, turnDegrees: -6 },
  { xPx: 202, yPx: 208, turnDegrees: 6 },
] as const;
const LEAVES = [-14, -7, 0, 7, 14] as const;

const LEGEND = [
  'Front book lungs',
  'Furrow',
  'Receptacles (spermathecae)',
  'Uterus externus, the lip they rise from',
  'Rear book lungs',
  'Spinnerets',
] as const;

const DESCRIPTION =
  'Two line drawings of the belly wall of a shed abdomen, seen from inside, front end up. In both, two pairs of pale book lungs and, ' +
  'between the front pair, the furrow across the middle; a dashed ring marks the place to read there. In the female two stalked ' +
  'receptacles rise from a lip in front of the furrow. In the male the same place is flat.';

/** Where to look: the inner side of the abdomen of both sexes. Drawn for this app; not after any animal. */
export function VentralPlate(): ReactElement {
  return (
    <figure className={style['plate']}>
      <svg viewBox="0 0 640 334" role="img" aria-label={DESCRIPTION} className={style['drawing']}>
        <g transform="translate(24 8)">
          <Wall />
          <path className={style['lip']} d="M118 145Q150 128 182 145Q150 158 118 145Z" />
          <path className={style['organ']} d="M139 140C134 128 128 120 131 106M161 140C166 128 172 120 169 106" />
          <ellipse className={style['organ']} cx="132" cy="98" rx="8" ry="9" transform="rotate(-12 132 98)" />
          <ellipse className={style['organ']} cx="168" cy="98" rx="8" ry="9" transform="rotate(12 168 98)" />
          <Mark number={1} at={[80, 118]} to={[12, 84]} />
          <Mark number={2} at={[106, 143]} to={[8, 160]} />
          <Mark number={3} at={[171, 92]} to={[252, 22]} />
          <Mark number={4} at={[176, 143]} to={[288, 158]} />
          <Mark number={5} at={[214, 214]} to={[282, 246]} />
          <Mark number={6} at={[162, 306]} to={[226, 312]} />
        </g>
        <g transform="translate(322 8)">
          <Wall />
          <Mark number={1} at={[220, 118]} to={[288, 84]} />
          <Mark number={2} at={[194, 143]} to={[292, 160]} />
          <Mark number={5} at={[214, 214]} to={[282, 246]} />
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
      <path className={style['wall']} d={WALL} />
      {FOLDS.map((fold) => (
        <path key={fold} className={style['fold']} d={fold} />
      ))}
      <path className={style['line']} d="M140 29C142 16 158 16 160 29" />
      {LUNGS.map(({ xPx, yPx, turnDegrees }) => (
        <g key={`${xPx} ${yPx}`} transform={`translate(${xPx} ${yPx}) rotate(${turnDegrees})`}>
          <rect className={style['lung']} x="-28" y="-21" width="56" height="42" rx="19" />
          {LEAVES.map((offset) => (
            <path key={offset} className={style['fold']} d={`M${-24 + Math.abs(offset) / 2} ${offset}H${24 - Math.abs(offset) / 2}`} />
          ))}
        </g>
      ))}
      <path className={style['furrow']} d={FURROW} />
      <path className={style['line']} d="M136 302c-4 8-3 14 2 16 5-2 6-8 4-15M164 302c4 8 3 14-2 16-5-2-6-8-4-15" />
      <ellipse className={style['ring']} cx="150" cy="120" rx="48" ry="44" />
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
