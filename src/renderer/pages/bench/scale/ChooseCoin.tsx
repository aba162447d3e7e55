import { type ReactElement, useState } from 'react';
import type { Disk } from '../../../../domain/finding/refinement.ts';
import type { CoinScale } from '../../../../domain/measuring/calibration.ts';
import { rectangularStandardUncertainty } from '../../../../domain/measuring/knownRectangles.ts';
import type { PointedObject } from '../../../bench/tools/placingScale.ts';
import { Button } from '../../../parts/Button.tsx';
import { Select } from '../../../parts/Select.tsx';
import { NumberField } from '../NumberField.tsx';
import style from '../panel.module.css';
import { COIN_OPTIONS } from './objects.ts';

/** What a caliper on a disk leaves open, until the keeper says better. */
const OWN_HALF_WIDTH_MM = 0.05;

/** A coin by one click on its middle, or by three on its rim where its middle is covered. */
export function ChooseCoin({ onChosen }: { onChosen: (object: PointedObject) => void }): ReactElement {
  const [coin, setCoin] = useState<CoinScale['coin']>('us-quarter');
  const [diameterMm, setDiameterMm] = useState<number | null>(null);
  const [thicknessMm, setThicknessMm] = useState(0);
  const disk: Disk | null = coin === 'own' ? ownDisk(diameterMm, thicknessMm) : { coin };
  const begin = (by: 'middle' | 'rim') => {
    if (disk !== null) onChosen({ kind: 'coin', disk, by });
  };
  return (
    <>
      <Select
        label="Which coin"
        hint="Diameters and thickness as the mints publish them."
        value={coin}
        options={COIN_OPTIONS}
        onChange={setCoin}
      />
      {coin === 'own' && (
        <div className={style['pair']}>
          <NumberField label="Diameter, mm" value={diameterMm} most={5000} aboveZero atOnce onChange={setDiameterMm} />
          <NumberField label="Thickness, mm" value={thicknessMm} most={100} atOnce onChange={setThicknessMm} />
        </div>
      )}
      <div className={style['row']}>
        <Button kind="primary" disabled={disk === null} onClick={() => begin('middle')}>
          Click its middle
        </Button>
        <Button disabled={disk === null} onClick={() => begin('rim')}>
          Click three points of its rim
        </Button>
      </div>
    </>
  );
}

function ownDisk(diameterMm: number | null, thicknessMm: number): Disk | null {
  if (diameterMm === null) return null;
  return { coin: 'own', diameterMm, diameterStandardUncertaintyMm: rectangularStandardUncertainty(OWN_HALF_WIDTH_MM), thicknessMm };
}
