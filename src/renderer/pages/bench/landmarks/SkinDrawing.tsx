import type { ReactElement } from 'react';
import { LEG_IDS, LEG_JOINTS, legLandmark } from '../../../../domain/measuring/landmarks.ts';
import { hairPath, LEFT_PALP, mirrored, type PlatePoint, platePointOf, segmentPath } from '../../../bench/plate.ts';
import style from './SkinDrawing.module.css';

/** Width of a leg at each of its joints, from the body outwards, in units of the drawing. */
const LEG_WIDTHS = [15, 13, 11.5, 9.5, 7.5, 4] as const;
const PALP_WIDTHS = [11, 10, 9, 8, 4] as const;

/** A shed skin of a tarantula laid out and seen from above, the carapace in its place. Drawn for this app. */
export function SkinDrawing(): ReactElement {
  return (
    <g className={style['skin']}>
      <g className={style['faint']}>
        <Limb joints={LEFT_PALP} widths={PALP_WIDTHS} />
        <Limb joints={LEFT_PALP.map(mirrored)} widths={PALP_WIDTHS} />
        <Abdomen />
      </g>
      {LEG_IDS.map((leg) => (
        <Limb key={leg} joints={LEG_JOINTS.map((joint) => platePointOf(legLandmark(leg, joint)))} widths={LEG_WIDTHS} />
      ))}
      <Chelicerae />
      <Carapace />
    </g>
  );
}

function Limb({ joints, widths }: { joints: readonly PlatePoint[]; widths: readonly number[] }): ReactElement {
  return (
    <g>
      {joints.slice(1).map((to, index) => {
        const from = joints[index] ?? to;
        const [base, tip] = [widths[index] ?? 4, widths[index + 1] ?? 4];
        return (
          <g key={`${to.x} ${to.y}`}>
            <path className={style['segment']} d={segmentPath(from, to, base, tip)} />
            <path className={style['hair']} d={hairPath(from, to, tip, Math.round(Math.hypot(to.x - from.x, to.y - from.y) / 5))} />
          </g>
        );
      })}
    </g>
  );
}

/** The abdomen of a skin is a shrivelled bag, split open behind the carapace: nothing on it can be measured. */
function Abdomen(): ReactElement {
  return (
    <>
      <path d="M193 212c-17 5-30 24-31 51-1 30 13 62 38 71 25-9 39-41 38-71-1-27-14-46-31-51" />
      <path
        className={style['hair']}
        d="M174 240c9 6 17 4 26 6 10 2 18-2 26-6M168 268c11 7 20 3 32 7 12-4 22 0 32-7M174 298c8 5 17 3 26 6 9-3 18-1 26-6M192 222c2 9 1 17 3 25M209 226c-2 8 0 15-2 22M184 282c2 8 6 12 7 20M215 280c-1 9-5 14-6 22"
      />
      <path d="M194 331l-5 11M206 331l5 11" />
    </>
  );
}

function Chelicerae(): ReactElement {
  return (
    <>
      <path className={style['segment']} d="M199 141c-9 2-15-1-16-9-1-9 5-15 11-15 4 0 5 5 5 11z" />
      <path className={style['segment']} d="M201 141c9 2 15-1 16-9 1-9-5-15-11-15-4 0-5 5-5 11z" />
      <path className={style['hair']} d="M188 122l-2-5M192 119l-1-5M196 118v-5M204 118v-5M208 119l1-5M212 122l2-5" />
    </>
  );
}

function Carapace(): ReactElement {
  return (
    <>
      <path
        className={style['lid']}
        d="M200 139c11 0 18 3 22 9 6 8 9 16 9 24 0 13-7 25-17 33-4 3-8 4-10 4-2-2-6-2-8 0-2 0-6-1-10-4-10-8-17-20-17-33 0-8 3-16 9-24 4-6 11-9 22-9z"
      />
      <path d="M194 150c0-4 3-6 6-6s6 2 6 6-3 5-6 5-6-1-6-5z" />
      <path d="M198 148.500h.5M201.500 148.500h.5M197 151.500h.5M202.500 151.500h.5" />
      <path d="M195 183c3-3 7-3 10 0" />
      <path
        className={style['hair']}
        d="M193 181c-5-5-9-12-11-20M207 181c5-5 9-12 11-20M191 184c-7-2-13-6-18-12M209 184c7-2 13-6 18-12M192 187c-6 2-12 2-18-1M208 187c6 2 12 2 18-1M195 190c-3 5-7 8-12 10M205 190c3 5 7 8 12 10M200 190v12"
      />
    </>
  );
}
