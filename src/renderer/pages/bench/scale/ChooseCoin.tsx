import { type ReactElement, useState } from 'react';
import type { Disk } from '../../../../domain/finding/refinement.ts';
import type { PointedObject } from '../../../bench/tools/placingScale.ts';
import { Button } from '../../../parts/Button.tsx';
import style from '../panel.module.css';
import { WhichCoin } from './WhichCoin.tsx';

/** A coin by one click on its middle, or by three on its rim where its middle is covered. */
export function ChooseCoin({ onChosen }: { onChosen: (object: PointedObject) => void }): ReactElement {
  const [disk, setDisk] = useState<Disk | null>(null);
  const begin = (by: 'middle' | 'rim') => {
    if (disk !== null) onChosen({ kind: 'coin', disk, by });
  };
  return (
    <>
      <WhichCoin label="Which coin" hint="Diameters and thickness as the mints publish them." onChange={setDisk} />
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
