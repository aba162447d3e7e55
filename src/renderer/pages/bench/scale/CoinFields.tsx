import { type ReactElement, useMemo, useState } from 'react';
import { asDisk } from '../../../../domain/finding/coin/coinMarks.ts';
import type { CoinScale } from '../../../../domain/measuring/calibration.ts';
import { scaleObjectName } from '../../../../words/scaleObjects.ts';
import { changeScale } from '../../../bench/deeds/scale.ts';
import { bringIntoView } from '../../../parts/bringIntoView.ts';
import { Select } from '../../../parts/Select.tsx';
import { NumberField } from '../NumberField.tsx';
import { PlusMinusField } from '../PlusMinusField.tsx';
import style from '../panel.module.css';
import { useBench, useWork } from '../useWork.ts';
import { betterCoinInWords, coinHintOf } from './coinHint.ts';
import { DiameterDoubt } from './DiameterDoubt.tsx';
import { coinOptions } from './objects.ts';
import { useProposals } from './useProposals.ts';

/** Which coin gives the scale, and its size. */
export function CoinFields({ marks }: { marks: CoinScale }): ReactElement {
  const { bench, sheet } = useWork();
  const check = useBench((state) => state.edited.document.check);
  const { data: proposals } = useProposals(false);
  const hint = useMemo(() => coinHintOf(marks, check, proposals ?? [], sheet.photo), [marks, check, proposals, sheet.photo]);
  // A disk of one's own takes no diameter over from the coin that was chosen before.
  const [awaitsDiameter, setAwaitsDiameter] = useState(false);
  const change = (part: Partial<CoinScale>) => changeScale(bench, { ...marks, ...part });
  const choose = (coin: CoinScale['coin']) => {
    setAwaitsDiameter(coin === 'own' && marks.coin !== 'own');
    if (coin !== 'own') changeScale(bench, asDisk(marks, { coin }));
  };
  return (
    <>
      <Select label="Which coin" value={awaitsDiameter ? 'own' : marks.coin} options={coinOptions(hint?.coins ?? [])} onChange={choose} />
      {hint?.isBetter && <p className={style['soft']}>{betterCoinInWords(hint)}</p>}
      {awaitsDiameter && (
        <p className={style['soft']} role="status">
          Type its diameter. Until then the photo is measured by “{scaleObjectName(marks)}”.
        </p>
      )}
      <div className={style['pair']} key={awaitsDiameter ? 'awaited' : 'known'} ref={awaitsDiameter ? bringIntoView : undefined}>
        <NumberField
          label="Diameter, mm"
          value={awaitsDiameter ? null : marks.diameterMm}
          most={5000}
          aboveZero
          onChange={(diameterMm) => {
            setAwaitsDiameter(false);
            change({ diameterMm, coin: 'own' });
          }}
        />
        <PlusMinusField
          label="Known to ± mm"
          standardUncertainty={marks.diameterStandardUncertaintyMm}
          figures={3}
          most={200}
          onChange={(diameterStandardUncertaintyMm) => change({ diameterStandardUncertaintyMm })}
        />
        <NumberField label="Thickness, mm" value={marks.thicknessMm} most={100} onChange={(thicknessMm) => change({ thicknessMm })} />
      </div>
      <DiameterDoubt marks={marks} />
    </>
  );
}
