import { type ReactElement, useMemo, useState } from 'react';
import type { GalleryItem } from '../../../../api/contract/growth.ts';
import type { Rung } from '../../../../domain/growth/rung.ts';
import { rungName } from '../../../../words/ladder.ts';
import { ButtonLink } from '../../../parts/ButtonLink.tsx';
import { useElementWidth } from '../useElementWidth.ts';
import { fittingScale, GALLERY_GAP_PX, NARROWEST_FIGURE_PX } from './commonScale.ts';
import { EmptyPlace } from './EmptyPlace.tsx';
import { galleryEntries, type OffScaleReason } from './entries.ts';
import style from './Gallery.module.css';
import { PlateFigure } from './PlateFigure.tsx';
import { ScaleBar } from './ScaleBar.tsx';
import { ZoomControl } from './ZoomControl.tsx';

const HIGHEST_PLATE_PX = 460;

const REASONS: Readonly<Record<OffScaleReason, string>> = {
  'no-scale-marked': 'nothing of known size is marked in the photo yet',
  'marks-do-not-fit': 'the marks on the scale object do not fit together',
  'seen-too-flat': 'the photo is taken too flat over the table to be laid out',
};

/** All skins of the animal side by side at one scale, oldest first. */
export function SkinGallery({ rungs, items }: { rungs: readonly Rung[]; items: readonly GalleryItem[] }): ReactElement {
  const { ref, widthPx } = useElementWidth<HTMLDivElement>();
  const entries = useMemo(() => galleryEntries(rungs, items), [rungs, items]);
  const [zoom, setZoom] = useState(1);
  const plates = entries.filter((entry) => entry.kind === 'plate');
  const offScale = entries.filter((entry) => entry.kind === 'off-scale');
  const fitting = fittingScale(
    plates.map(({ plate }) => plate),
    { widthPx, heightPx: HIGHEST_PLATE_PX, reservedPx: (entries.length - plates.length) * (NARROWEST_FIGURE_PX + GALLERY_GAP_PX) },
  );
  const pxPerMm = fitting * zoom;
  const carapaceLinePx = Math.max(...plates.map(({ plate }) => plate.carapaceAtMm * pxPerMm));
  const belowLinePx = Math.max(...plates.map(({ plate }) => (plate.heightMm - plate.carapaceAtMm) * pxPerMm));
  const room = { carapaceLinePx, heightPx: carapaceLinePx + belowLinePx };
  return (
    <div ref={ref}>
      {plates.length > 0 && widthPx > 0 && (
        <>
          <div className={style['bar']}>
            <ScaleBar pxPerMm={pxPerMm} />
            <ZoomControl zoom={zoom} pxPerMm={pxPerMm} onZoom={setZoom} />
          </div>
          <section className={style['row']} aria-label="Skins at one scale">
            <ol className={style['figures']}>
              {entries.map((entry) =>
                entry.kind === 'plate' ? (
                  <PlateFigure key={entry.rung.moltId} {...entry} pxPerMm={pxPerMm} room={room} />
                ) : (
                  <EmptyPlace key={`${entry.kind} ${entry.rung.moltId}`} entry={entry} room={room} />
                ),
              )}
            </ol>
          </section>
          <p className={style['small']}>
            Each photo is laid flat by its own scale object and cut round the skin, head up. Parts that stand above the scale object look a
            little larger than they are; the figures are corrected for it.
          </p>
        </>
      )}
      {offScale.length > 0 && (
        <ul className={style['offScale']}>
          {offScale.map(({ rung, photo, reason }) => (
            <li key={rung.moltId}>
              <span>
                <strong>{rungName(rung)}</strong> is not at scale: {REASONS[reason]}.
              </span>
              <ButtonLink to={`/bench/${photo.id}`} kind="quiet" icon="measure">
                Set its scale on the Bench
              </ButtonLink>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
