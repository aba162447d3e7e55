import type { ReactElement } from 'react';
import type { SizeAfterMolt } from '../../../domain/growth/afterMolt.ts';
import type { GrowthReport } from '../../../domain/growth/growthReport.ts';
import type { Rung } from '../../../domain/growth/rung.ts';
import { foretoldInWords, notForetoldInWords, SPAN_CAUTION, sizeNowInWords } from '../../../words/animalNow.ts';
import { rungName } from '../../../words/ladder.ts';
import style from './AnimalNow.module.css';
import page from './LadderPage.module.css';

/** How large the animal is after its last molt, foretold from the skin of that molt. Null without a molt. */
export function AnimalNow({
  rungs,
  growth: { carapaceNow, spanNow },
  called,
}: {
  rungs: readonly Rung[];
  growth: GrowthReport;
  called: string;
}): ReactElement | null {
  const last = rungs.at(-1);
  if (!last) return null;
  return (
    <>
      <dl className={style['sizes']}>
        <Size name="Carapace" size={carapaceNow} from="carapace length" />
        <Size name="Leg span" size={spanNow} from="leg span" />
      </dl>
      <p className={page['small']}>
        {foretoldInWords(called, rungName(last))} {spanNow && SPAN_CAUTION}
      </p>
    </>
  );
}

function Size({ name, size, from }: { name: string; size: SizeAfterMolt | null; from: string }): ReactElement {
  return (
    <div>
      <dt>{name}</dt>
      <dd className={size ? 'figures' : style['none']}>{size ? sizeNowInWords(size) : notForetoldInWords(from)}</dd>
    </div>
  );
}
