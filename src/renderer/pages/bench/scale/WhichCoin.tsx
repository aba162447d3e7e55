import { type ReactElement, useState } from 'react';
import type { Disk } from '../../../../domain/finding/refinement.ts';
import type { CoinName, CoinScale } from '../../../../domain/measuring/calibration.ts';
import { rectangularStandardUncertainty } from '../../../../domain/measuring/knownRectangles.ts';
import { bringIntoView } from '../../../parts/bringIntoView.ts';
import { Select } from '../../../parts/Select.tsx';
import { NumberField } from '../NumberField.tsx';
import style from '../panel.module.css';
import { coinOptions } from './objects.ts';

/** What a caliper on a disk leaves open, until the keeper says better. */
const OWN_HALF_WIDTH_MM = 0.05;

interface Props {
  label: string;
  hint: string;
  /** Coins that another object of the picture speaks for, the likeliest first: they stand first, and are said to fit. */
  fitting?: readonly CoinName[];
  /** Null as long as nobody has said which coin it is, or how wide a disk of their own is. */
  onChange: (disk: Disk | null) => void;
}

/** Which coin lies there. No coin is chosen before the keeper has chosen one: a scale by the wrong coin looks like any other. */
export function WhichCoin({ label, hint, fitting = [], onChange }: Props): ReactElement {
  const [coin, setCoin] = useState<CoinScale['coin'] | ''>('');
  const [diameterMm, setDiameterMm] = useState<number | null>(null);
  const [thicknessMm, setThicknessMm] = useState(0);
  const say = (now: { coin?: CoinScale['coin'] | ''; diameterMm?: number | null; thicknessMm?: number }) => {
    const said = { coin, diameterMm, thicknessMm, ...now };
    setCoin(said.coin);
    setDiameterMm(said.diameterMm);
    setThicknessMm(said.thicknessMm);
    onChange(diskFrom(said));
  };
  return (
    <>
      <Select
        label={label}
        hint={hint}
        value={coin}
        options={[{ value: '', label: 'Choose …' }, ...coinOptions(fitting)]}
        onChange={(chosen) => say({ coin: chosen })}
      />
      {coin === 'own' && (
        <div className={style['pair']} ref={bringIntoView}>
          <NumberField
            label="Its diameter, mm"
            hint="Needed: there is no scale without it."
            value={diameterMm}
            most={5000}
            aboveZero
            atOnce
            onChange={(typed) => say({ diameterMm: typed })}
            onUnusable={() => say({ diameterMm: null })}
          />
          <NumberField label="Thickness, mm" value={thicknessMm} most={100} atOnce onChange={(typed) => say({ thicknessMm: typed })} />
        </div>
      )}
    </>
  );
}

function diskFrom(said: { coin: CoinScale['coin'] | ''; diameterMm: number | null; thicknessMm: number }): Disk | null {
  const { coin, diameterMm, thicknessMm } = said;
  if (coin === '') return null;
  if (coin !== 'own') return { coin };
  if (diameterMm === null) return null;
  return { coin, diameterMm, diameterStandardUncertaintyMm: rectangularStandardUncertainty(OWN_HALF_WIDTH_MM), thicknessMm };
}
