import { type CSSProperties, type ReactElement, useMemo, useState } from 'react';
import { useElementWidth } from '../useElementWidth.ts';
import { fittingScale, openingScale, spacingOf } from './commonScale.ts';
import { EmptyPlace } from './EmptyPlace.tsx';
import type { GalleryEntry, PlateEntry } from './entries.ts';
import style from './Gallery.module.css';
import { PlateFigure } from './PlateFigure.tsx';
import { useLitInSight, useMiddleKept, useNewestInSight } from './rowScrolling.ts';
import { ScaleBar } from './ScaleBar.tsx';
import { ZoomControl } from './ZoomControl.tsx';

const HIGHEST_PLATE_PX = 380;

/** @param plates those of the entries that are at scale, at least one. */
export function SkinRow({ entries, plates }: { entries: readonly GalleryEntry[]; plates: readonly PlateEntry[] }): ReactElement {
  const { ref, widthPx } = useElementWidth<HTMLDivElement>();
  const [zoom, setZoom] = useState(1);
  const { spacing, fitting, opening } = useMemo(() => {
    const sizes = plates.map(({ plate }) => plate);
    const place = { widthPx, heightPx: HIGHEST_PLATE_PX, empty: entries.length - plates.length };
    const spacing = spacingOf(sizes, place);
    const space = { ...place, ...spacing };
    const fitting = fittingScale(sizes, space);
    return { spacing, fitting, opening: openingScale(fitting, sizes, space) };
  }, [plates, entries, widthPx]);
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
  const pxPerMm = opening * zoom;
  const { rowRef, keepMiddle } = useMiddleKept(pxPerMm);
  useNewestInSight(rowRef, widthPx > 0);
  useLitInSight(rowRef);
  const look: CSSProperties & Record<'--px-per-mm' | '--narrowest' | '--gap', string | number> = {
    '--px-per-mm': pxPerMm,
    '--narrowest': `${spacing.narrowestPx}px`,
    '--gap': `${spacing.gapPx}px`,
  };
  const change = (to: number) => {
    keepMiddle();
    setZoom(to);
  };
  return (
    <div ref={ref}>
      {widthPx > 0 && (
        <>
          <div className={style['bar']}>
            <ScaleBar pxPerMm={pxPerMm} />
            <ZoomControl zoom={zoom} fitting={fitting / opening} pxPerMm={pxPerMm} onZoom={change} />
          </div>
          <section ref={rowRef} className={style['row']} aria-label="Skins at one scale">
            <ol className={style['figures']} style={look}>
              {figures}
            </ol>
          </section>
        </>
      )}
    </div>
  );
}
