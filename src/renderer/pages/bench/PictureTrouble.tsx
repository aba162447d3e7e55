import type { ReactElement } from 'react';
import { useStore } from 'zustand';
import { FailureNotice, Notice } from '../../parts/Notice.tsx';
import style from './PhotoCanvas.module.css';
import type { PictureStore } from './picture/picture.ts';

/** Says when only the smaller copy, or nothing, of the photo can be shown. */
export function PictureTrouble({ store }: { store: PictureStore }): ReactElement | null {
  const { trouble, screen } = useStore(store);
  if (trouble === null) return null;
  return (
    <div className={style['trouble']}>
      {screen === null ? (
        <FailureNotice error={trouble} />
      ) : (
        <Notice tone="warning" title="Only the smaller copy can be shown">
          The photo itself could not be decoded here. Points placed on the smaller copy count, but cannot be as exact.
        </Notice>
      )}
    </div>
  );
}
