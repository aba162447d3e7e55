import type { ReactElement } from 'react';
import style from './WelcomePlate.module.css';

const STEPS = [0.34, 0.46, 0.62, 0.84] as const;
const WIDTH = 300;

/** A plate for the first page: four skins of one animal, each a step larger than the one before. Decorative. */
export function WelcomePlate(): ReactElement {
  let top = 20;
  return (
    <svg className={style['plate']} viewBox={`0 0 ${WIDTH} 520`} fill="none" aria-hidden="true">
      {STEPS.map((scale) => {
        const y = top + 86 * scale;
        top += 172 * scale + 14;
        return (
          <g key={scale} transform={`translate(${WIDTH / 2} ${y}) scale(${scale})`} strokeWidth={1.4 / scale}>
            <Skin />
          </g>
        );
      })}
    </svg>
  );
}

const LEFT_LEGS = [
  'M-14-18C-34-34-46-62-40-84c2-6 6-8 10-6',
  'M-17-10C-44-22-72-40-84-58c-3-6-8-7-12-4',
  'M-17 2C-44 6-70 20-86 38c-4 5-9 5-13 2',
  'M-14 12C-36 24-56 50-60 76c-1 6-5 9-10 8',
] as const;

/** A skin from above, unit about 200 wide: the carapace lifted, the abdomen shriveled. */
function Skin(): ReactElement {
  return (
    <g strokeLinecap="round" strokeLinejoin="round">
      <g className={style['legs']}>
        {LEFT_LEGS.map((leg) => (
          <path key={leg} d={leg} />
        ))}
        <g transform="scale(-1 1)">
          {LEFT_LEGS.map((leg) => (
            <path key={leg} d={leg} />
          ))}
        </g>
        <path d="M-6-22C-12-36-14-46-9-54M6-22c6-14 8-24 3-32" />
      </g>
      <path className={style['carapace']} transform="scale(1.25)" d="M0-26c12 0 19 9 19 21S13 17 0 17-19 7-19-5s7-21 19-21z" />
      <path
        className={style['line']}
        d="M-4-1c2-3 6-3 8 0M0 2v10M-12-10c3 2 5 4 6 7M12-10c-3 2-5 4-6 7M-12 6c3-1 5-2 7-4M12 6c-3-1-5-2-7-4"
      />
      <path className={style['line']} d="M-9 19c-12 10-15 28-7 42 5 9 11 11 16 8 6 4 14 0 17-9 5-15 0-32-8-41" />
      <path className={style['faint']} d="M-8 30c5 4 11 4 16 0M-10 42c6 5 14 5 20 0M-7 54c5 4 9 4 14 0" />
    </g>
  );
}
