import type { ReactElement } from 'react';
import type { GrowthReport } from '../../../domain/growth/growthReport.ts';
import type { LegRegrowth } from '../../../domain/growth/legs/regrowth.ts';
import type { Rung } from '../../../domain/growth/rung.ts';
import type { NameOfMolt } from '../../../words/growth.ts';
import { capitalized, LEG_LABELS } from '../../../words/labels.ts';
import { moltNames } from '../../../words/ladder.ts';
import { allometryInWords, stageInWords } from '../../../words/legs.ts';
import { SIZE_LABELS } from '../../../words/quantities.ts';
import page from './LadderPage.module.css';
import style from './Legs.module.css';

/** How legs grow against the carapace, and how lost ones grow back. */
export function Legs({ rungs, growth }: { rungs: readonly Rung[]; growth: GrowthReport }): ReactElement {
  const nameOf = moltNames(rungs);
  return (
    <>
      <p className={page['small']}>{allometryInWords(SIZE_LABELS.legFirstMm, growth.legFirst)}</p>
      <p className={page['small']}>{allometryInWords(SIZE_LABELS.legFourthMm, growth.legFourth)}</p>
      {growth.regrowth.length === 0 && <p className={page['small']}>No skin shows a leg noted as missing or regenerated.</p>}
      {growth.regrowth.map((regrowth) => (
        <Regrowth key={regrowth.leg} regrowth={regrowth} nameOf={nameOf} />
      ))}
    </>
  );
}

function Regrowth({ regrowth: { leg, partner, stages }, nameOf }: { regrowth: LegRegrowth; nameOf: NameOfMolt }): ReactElement {
  return (
    <div className={style['leg']}>
      <h3>{capitalized(LEG_LABELS[leg])}</h3>
      <ol className={style['stages']}>
        {stages.map((stage, index) => (
          <li key={stage.moltId}>
            <strong>{nameOf(stage.moltId)}:</strong> {stageInWords(stage, stages[index - 1], partner, nameOf)}.
          </li>
        ))}
      </ol>
    </div>
  );
}
