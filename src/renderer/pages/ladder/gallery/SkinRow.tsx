import { type CSSProperties, type ReactElement, useMemo, useState } from 'react';
import { useElementWidth } from '../useElementWidth.ts';
import { fittingScale, GALLERY_GAP_PX, NARROWEST_FIGURE_PX } from './commonScale.ts';
import { EmptyPlace } from './EmptyPlace.tsx';
import type { GalleryEntry, PlateEntry } from './entries.ts';
import style from './Gallery.module.css';
import { PlateFigure } from './PlateFigure.tsx';
import { ScaleBar } from './ScaleBar.tsx';
import { ZoomControl } from './ZoomControl.tsx';

const HIGHEST_PLATE_PX = 400;

/** @param plates those of the entries that are at scale, at least one. */
export function SkinRow({ entries, plates }: { entries: readonly GalleryEntry[]; plates: readonly PlateEntry[] }): ReactElement {
  const { ref, widthPx } = useElementWidth<HTMLDivElement>();
  const [zoom, setZoom] = useState(1);
  const fitting = useMemo(
    () =>
      fittingScale(
        plates.map(({ plate }) => plate),
        { widthPx, heightPx: HIGHEST_PLATE_PX, reservedPx: (entries.length - plates.length) * (NARROWEST_FIGURE_PX + GALLERY_GAP_PX) },
      ),
    [plates, entries, widthPx],
  );
  const room = useMemo(() => {
    const carapaceLineMm = Math.max(...plates.map(({ plate }) => plate.carapaceAtMm));
    return { carapaceLineMm, heightMm: carapaceLineMm + Math.max(...plates.map(({ plate }) => plate.heightMm - plate.carapaceAtMm)) };
  }, [plates]);
  // Zooming makes none of them anew: what they are sized by stands once, above them.
  const figures = useMemo(
    () =>
      entries.map((entry) =>
        entry.kind === 'plate' ? (
          <PlateFigure key={entry.rung.moltId} entry={entry} room={room} />
        ) : (
          <EmptyPlace key={`${entry.kind} ${entry.rung.moltId}`} entry={entry} room={room} />
        ),
      ),
    [entries, room],
  );
  const pxPerMm = fitting * zoom;
  const scale: CSSProperties & { '--px-per-mm': number } = { '--px-per-mm': pxPerMm };
  return (
    <div ref={ref}>
      {widthPx > 0 && (
        <>
          <div className={style['bar']}>
            <ScaleBar pxPerMm={pxPerMm} />
            <ZoomControl zoom={zoom} pxPerMm={pxPerMm} onZoom={setZoom} />
          </div>
          <section className={style['row']} aria-label="Skins at one scale">
            <ol className={style['figures']} style={scale}>
              {figures}
            </ol>
          </section>
        </>
      )}
    </div>
  );
}
