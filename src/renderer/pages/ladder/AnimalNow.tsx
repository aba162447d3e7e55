import type { ReactElement } from 'react';
import type { GrowthReport } from '../../../domain/growth/growthReport.ts';
import type { Rung } from '../../../domain/growth/rung.ts';
import type { SizeNow } from '../../../domain/growth/sizeNow.ts';
import {
  DOUBTED_SKIN,
  foretoldInWords,
  fromSkinInWords,
  notForetoldInWords,
  SPAN_CAUTION,
  sizeNowInWords,
} from '../../../words/animalNow.ts';
import { rungName } from '../../../words/ladder.ts';
import style from './AnimalNow.module.css';
import page from './LadderPage.module.css';

/** How large the animal is after its last molt, foretold from its latest measured skin. Null without a molt. */
export function AnimalNow({
  rungs,
  growth: { carapaceNow, spanNow, inDoubt },
  called,
}: {
  rungs: readonly Rung[];
  growth: GrowthReport;
  called: string;
}): ReactElement | null {
  const last = rungs.at(-1);
  if (!last) return null;
  const measured = rungs.findLast(({ carapaceLengthMm, stepKnown }) => carapaceLengthMm && stepKnown);
  if (measured && inDoubt.includes(measured.moltId) && !spanNow)
    return <p className={page['small']}>Carapace and leg span: {DOUBTED_SKIN}.</p>;
  return (
    <>
      <dl className={style['sizes']}>
        <Size name="Carapace" size={carapaceNow} shows="carapace length" rungs={rungs} />
        <Size name="Leg span" size={spanNow} shows="leg span" rungs={rungs} />
      </dl>
      {(carapaceNow || spanNow) && (
        <p className={page['small']}>
          {foretoldInWords(called, rungName(last))} {spanNow && SPAN_CAUTION}
        </p>
      )}
    </>
  );
}

interface SizeProps {
  readonly name: string;
  readonly size: SizeNow | null;
  readonly shows: string;
  readonly rungs: readonly Rung[];
}

function Size({ name, size, shows, rungs }: SizeProps): ReactElement {
  const skin = rungs.find(({ moltId }) => moltId === size?.moltId);
  const from = size && skin ? fromSkinInWords(size, rungName(skin).toLowerCase()) : null;
  return (
    <div>
      <dt>{name}</dt>
      <dd className={size ? 'figures' : style['none']}>
        {size ? sizeNowInWords(size) : notForetoldInWords(shows)}
        {from && <span className={page['small']}> ({from})</span>}
      </dd>
    </div>
  );
}
