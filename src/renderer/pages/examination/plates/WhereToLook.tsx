import type { ReactElement } from 'react';
import style from './WhereToLook.module.css';

const DESCRIPTION =
  'Line drawing in two parts. Left: a shed skin from above with its carapace lifted off and the abdomen trailing behind as a crumpled rag. ' +
  'Right: the same abdomen spread out, inner side up, stalk on top: four pale book lungs, and a ring around the strip between the front two.';
const LEGS = ['M44 66C26 52 20 36 10 30', 'M42 76C24 70 14 64 4 66', 'M43 86C28 90 18 98 8 104', 'M47 94C36 106 30 120 22 130'] as const;

/** From the skin as it is found to the strip that is read. Drawn for this app. */
export function WhereToLook(): ReactElement {
  return (
    <figure className={style['plate']}>
      <svg viewBox="0 0 330 170" role="img" aria-label={DESCRIPTION} className={style['drawing']}>
        {LEGS.map((leg) => (
          <g key={leg}>
            <path d={leg} />
            <path d={leg} transform="matrix(-1 0 0 1 130 0)" />
          </g>
        ))}
        <path className={style['wall']} d="M65 58c14 0 22 10 22 22s-8 22-22 22-22-10-22-22 8-22 22-22Z" />
        <path className={style['lid']} d="M52 54c0-14 8-22 15-22s13 8 12 20c-8-4-18-3-27 2Z" />
        <path className={style['rag']} d="M58 104c-6 6 2 10-4 16s4 8 0 16 10 10 14 6 8 2 10-6-4-8 0-14-4-8 0-14-10-8-20-4Z" />
        <path className={style['way']} d="M104 122C130 130 140 120 160 104M152 104l9-1-1 9" />
        <g transform="translate(176 6)">
          <path className={style['wall']} d="M70 8C40 2 14 30 10 72s22 82 60 84c38-2 64-42 60-84S100 2 70 8Z" />
          <g className={style['lung']}>
            <rect x="24" y="44" width="34" height="26" rx="11" transform="rotate(-12 41 57)" />
            <rect x="82" y="44" width="34" height="26" rx="11" transform="rotate(12 99 57)" />
            <rect x="28" y="98" width="34" height="26" rx="11" transform="rotate(-6 45 111)" />
            <rect x="78" y="98" width="34" height="26" rx="11" transform="rotate(6 95 111)" />
          </g>
          <path className={style['furrow']} d="M48 70Q70 78 92 70" />
          <ellipse className={style['ring']} cx="70" cy="62" rx="24" ry="20" />
          <path d="M64 8c2-8 10-8 12 0M64 154c-2 6-2 8 1 9 3-2 3-6 2-10M76 154c2 6 2 8-1 9-3-2-3-6-2-10" />
        </g>
      </svg>
      <figcaption className={style['note']}>
        The abdomen of a skin is the rag behind the legs. Spread it inner side up with the stalk away from you: the place to read is the
        ring between the <em>front</em> pair of book lungs. Between the rear pair there is nothing to find.
      </figcaption>
    </figure>
  );
}
