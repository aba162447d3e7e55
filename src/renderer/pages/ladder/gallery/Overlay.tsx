import { type ReactElement, useState } from 'react';
import { rungName } from '../../../../words/ladder.ts';
import { Select } from '../../../parts/Select.tsx';
import type { PlateEntry } from './entries.ts';
import style from './Gallery.module.css';
import { Stage } from './Stage.tsx';

/** Two skins over each other at true scale, one fading into the other. @param plates at least two. */
export function Overlay({ plates }: { plates: readonly PlateEntry[] }): ReactElement | null {
  const [lowerId, setLower] = useState(plates.at(-2)?.rung.moltId ?? '');
  const [upperId, setUpper] = useState(plates.at(-1)?.rung.moltId ?? '');
  const [share, setShare] = useState(0.5);
  const lower = plates.find(({ rung }) => rung.moltId === lowerId) ?? plates[0];
  const upper = plates.find(({ rung }) => rung.moltId === upperId) ?? plates.at(-1);
  if (!lower || !upper) return null;
  const options = plates.map(({ rung }) => ({ value: rung.moltId, label: rungName(rung) }));
  const below = { entry: lower, outline: 'lower' } as const;
  const shown =
    lower === upper
      ? [{ ...below, opacity: 1 }]
      : [
          // Up to the middle nothing is taken from the lower one: there both are seen.
          { ...below, opacity: Math.min(1, 2 * (1 - share)) },
          { entry: upper, outline: 'upper', opacity: share } as const,
        ];
  const percent = Math.round(100 * share);
  return (
    <>
      <div className={style['pair']}>
        <Select label="Below" value={lower.rung.moltId} options={options} onChange={setLower} />
        <label className={style['fade']}>
          <span>Fade</span>
          <input
            type="range"
            min="0"
            max="1"
            step="0.01"
            value={share}
            aria-valuetext={`${percent} % of ${rungName(upper.rung).toLowerCase()}`}
            onChange={(event) => setShare(Number(event.target.value))}
          />
        </label>
        <Select label="Above" value={upper.rung.moltId} options={options} onChange={setUpper} />
      </div>
      <Stage plates={[lower, upper]} shown={shown} label="Two skins over each other" />
      <p className={style['small']}>
        {lower === upper ? (
          'The same skin twice: choose two to compare.'
        ) : (
          <>
            <span className={style['lowerKey']} aria-hidden="true" /> {rungName(lower.rung)} outlined in slate,{' '}
            <span className={style['upperKey']} aria-hidden="true" /> {rungName(upper.rung).toLowerCase()} in red, carapace on carapace. The
            ground is taken away where a skin stands apart from it; a shadow may stay.
          </>
        )}
      </p>
    </>
  );
}
