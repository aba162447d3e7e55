import { type ReactElement, useMemo, useState } from 'react';
import type { GalleryItem } from '../../../../api/contract/growth.ts';
import type { Rung } from '../../../../domain/growth/rung.ts';
import { Choice } from '../chart/Choice.tsx';
import { galleryEntries } from './entries.ts';
import { FlipBook } from './FlipBook.tsx';
import style from './Gallery.module.css';
import { GalleryExport } from './GalleryExport.tsx';
import { OffScale } from './OffScale.tsx';
import { Overlay } from './Overlay.tsx';
import { Preparing } from './Preparing.tsx';
import { SkinRow } from './SkinRow.tsx';
import { CutsProvider } from './useCuts.tsx';

const MODES = [
  { value: 'row', label: 'In a row' },
  { value: 'overlay', label: 'Over each other' },
  { value: 'flip', label: 'One by one' },
] as const;
type Mode = (typeof MODES)[number]['value'];

interface Props {
  specimenId: string;
  called: string;
  rungs: readonly Rung[];
  items: readonly GalleryItem[];
}

/** All skins of the animal at one scale, oldest first, three ways to look at them. */
export function SkinGallery({ specimenId, called, rungs, items }: Props): ReactElement {
  const entries = useMemo(() => galleryEntries(rungs, items), [rungs, items]);
  const [mode, setMode] = useState<Mode>('row');
  const plates = useMemo(() => entries.filter((entry) => entry.kind === 'plate'), [entries]);
  return (
    <CutsProvider specimenId={specimenId} items={items}>
      {plates.length > 0 && (
        <div className={style['gallery']}>
          {plates.length > 1 && <Choice legend="Skins" value={mode} options={MODES} onChange={setMode} />}
          <Preparing />
          {mode === 'row' && <SkinRow entries={entries} plates={plates} />}
          {mode === 'overlay' && <Overlay plates={plates} />}
          {mode === 'flip' && <FlipBook plates={plates} />}
          <p className={style['small']}>
            Each photo is laid flat by its own scale object and cut round the skin, head up. Parts that stand above the scale object look a
            little larger than they are; the figures are corrected for it.
          </p>
          <GalleryExport specimenId={specimenId} called={called} skins={plates.length} />
        </div>
      )}
      <OffScale entries={entries} />
    </CutsProvider>
  );
}
