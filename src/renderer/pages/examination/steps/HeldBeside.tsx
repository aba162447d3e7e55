import { type ReactElement, useState } from 'react';
import { Link } from 'wouter';
import type { Photo } from '../../../../domain/photo/photo.ts';
import { Button } from '../../../parts/Button.tsx';
import { Dialog } from '../../../parts/Dialog.tsx';
import { Thumb } from '../../../parts/Thumb.tsx';
import style from './HeldBeside.module.css';

export interface OtherSkin {
  readonly exuviaId: string;
  readonly name: string;
  readonly photoId: string | null;
  readonly words: string;
}

interface Props {
  skins: readonly OtherSkin[];
  none: string;
  /** Of the skin on the table. */
  shown: Photo | undefined;
}

/** Other skins, each of which can be held beside this one. */
export function HeldBeside({ skins, none, shown }: Props): ReactElement {
  const [beside, setBeside] = useState<OtherSkin | null>(null);
  if (skins.length === 0) return <p className={style['none']}>{none}</p>;
  return (
    <>
      <ul className={style['skins']}>
        {skins.map((skin) => (
          <li key={skin.exuviaId} className={style['skin']}>
            <Thumb photoId={skin.photoId} alt="" className={style['thumb']} />
            <span className={style['words']}>
              <Link to={`/examination/${skin.exuviaId}`}>{skin.name}</Link>
              <span className={style['soft']}>{skin.words}</span>
            </span>
            {skin.photoId !== null && shown && (
              <Button onClick={() => setBeside(skin)}>
                Hold beside<span className="spoken-only">: {skin.name}</span>
              </Button>
            )}
          </li>
        ))}
      </ul>
      {beside && shown && (
        <Dialog title="Side by side" wide onClose={() => setBeside(null)} foot={<Button onClick={() => setBeside(null)}>Close</Button>}>
          <div className={style['pair']}>
            <figure>
              <Thumb photoId={shown.id} alt="Photo of this skin" kind="screen" fit="contain" className={style['large']} />
              <figcaption>This skin</figcaption>
            </figure>
            <figure>
              <Thumb photoId={beside.photoId} alt={`Photo of ${beside.name}`} kind="screen" fit="contain" className={style['large']} />
              <figcaption>
                {beside.name} ({beside.words})
              </figcaption>
            </figure>
          </div>
        </Dialog>
      )}
    </>
  );
}
