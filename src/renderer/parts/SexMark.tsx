import type { ReactElement } from 'react';
import type { Level, SexSign } from '../../domain/sexing/determination.ts';
import { sexInWords } from '../../words/sex.ts';
import style from './SexMark.module.css';

/** How much of the ring is drawn: the surer, the more closed. */
const RING_SHARE: Readonly<Record<Level, number>> = { leaning: 0.3, probable: 0.55, strong: 0.8, established: 1 };
const RING_RADIUS = 11;
const RING_LENGTH = 2 * Math.PI * RING_RADIUS;

/**
 * The sex an animal carries: the usual sign inside a ring that closes with certainty, and the same in words. `compact`
 * keeps the words for tooltip and screen readers only.
 */
export function SexMark({ sign, compact = false }: { sign: SexSign; compact?: boolean }): ReactElement {
  const words = sexInWords(sign);
  const share = sign.level === null ? 0 : RING_SHARE[sign.level];
  return (
    <span className={`${style['mark']} ${style[sign.sex]}`} title={compact ? words : undefined}>
      <svg viewBox="0 0 28 28" width="28" height="28" fill="none" stroke="currentColor" strokeLinecap="round" aria-hidden="true">
        <circle cx="14" cy="14" r={RING_RADIUS} className={style['track']} strokeWidth="1" />
        {share > 0 && (
          <circle
            cx="14"
            cy="14"
            r={RING_RADIUS}
            strokeWidth="2"
            strokeDasharray={`${share * RING_LENGTH} ${RING_LENGTH}`}
            transform="rotate(-90 14 14)"
          />
        )}
        <path d={SIGN_STROKES[sign.sex]} strokeWidth="1.6" strokeLinejoin="round" />
      </svg>
      {sign.conflict && <span className={style['conflict']} aria-hidden="true" />}
      <span className={compact ? 'spoken-only' : style['words']}>{words}</span>
    </span>
  );
}

const SIGN_STROKES: Readonly<Record<SexSign['sex'], string>> = {
  female: 'M14 8a3.200 3.200 0 1 1 0 6.400A3.200 3.200 0 1 1 14 8zM14 14.400v5.600M11.800 17.300h4.400',
  male: 'M12.800 12a3.200 3.200 0 1 1 0 6.400 3.200 3.200 0 1 1 0-6.400zM15.200 13l3.800-3.800M16 9h3.200v3.200',
  unsexed: 'M11.500 14h5',
  anomalous: 'M11.500 11.500l5 5M16.500 11.500l-5 5',
};
