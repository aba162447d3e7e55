import type { ReactElement } from 'react';
import type { Band } from '../../../../domain/sexing/evidence/weigh.ts';
import style from './Beam.module.css';

const ARM: readonly Band[] = ['leaning', 'probable', 'strong', 'established'];

interface Props {
  towards: 'female' | 'male' | null;
  band: Band;
  conflict: boolean;
}

/** A balance: the female arm to the left, the male arm to the right, filled as far as the evidence carries. The words stand beside it. */
export function Beam({ towards, band, conflict }: Props): ReactElement {
  const reach = ARM.indexOf(band);
  const filled = (sex: 'female' | 'male', place: number) => !conflict && towards === sex && place <= reach;
  return (
    <svg viewBox="0 0 232 34" className={style['beam']} aria-hidden="true">
      {ARM.map((one, place) => (
        <rect
          key={`f${one}`}
          x={100 - (place + 1) * 22}
          y={13 - place * 2}
          width="19"
          height={8 + place * 4}
          className={filled('female', place) ? style['filled'] : style['empty']}
        />
      ))}
      {ARM.map((one, place) => (
        <rect
          key={`m${one}`}
          x={113 + 3 + place * 22 + 3}
          y={13 - place * 2}
          width="19"
          height={8 + place * 4}
          className={filled('male', place) ? style['filled'] : style['empty']}
        />
      ))}
      <path className={conflict ? style['torn'] : style['pivot']} d={conflict ? 'M103 10l12 14M115 10l-12 14' : 'M109 9v16M103 25h12'} />
    </svg>
  );
}
