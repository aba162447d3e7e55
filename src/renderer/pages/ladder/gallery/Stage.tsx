import type { CSSProperties, ReactElement } from 'react';
import { frameAround } from '../../../../domain/plate/frame.ts';
import { rungName } from '../../../../words/ladder.ts';
import { useElementWidth } from '../useElementWidth.ts';
import { CutImage } from './CutImage.tsx';
import { scaled } from './commonScale.ts';
import type { PlateEntry } from './entries.ts';
import style from './Gallery.module.css';
import { ScaleBar } from './ScaleBar.tsx';
import { SkinCutout } from './SkinCutout.tsx';

const HIGHEST_PX = 460;

interface Props {
  /** All that can come to stand here: they decide the scale, so that it stays. */
  plates: readonly PlateEntry[];
  /** Those that do, from the lowest up, with how much of each is seen; outlined ones stand without their ground. */
  shown: readonly { readonly entry: PlateEntry; readonly opacity: number; readonly outline?: 'lower' | 'upper' }[];
  label: string;
}

/** Skins over each other, carapace middle on carapace middle, at one locked scale. */
export function Stage({ plates, shown, label }: Props): ReactElement {
  const { ref, widthPx } = useElementWidth<HTMLDivElement>();
  const frame = frameAround(plates.map(({ plate }) => plate));
  const pxPerMm = Math.min(widthPx / frame.widthMm, HIGHEST_PX / frame.heightMm);
  const scale: CSSProperties & { '--px-per-mm': number } = {
    '--px-per-mm': pxPerMm,
    width: scaled(frame.widthMm),
    height: scaled(frame.heightMm),
  };
  return (
    <div ref={ref} className={style['stage']}>
      {widthPx > 0 && (
        <>
          <section className={style['frame']} style={scale} aria-label={label}>
            {shown.map(({ entry, opacity, outline }) => (
              <span
                key={entry.rung.moltId}
                className={`${style['laid']} ${outline ? style[outline] : ''}`}
                style={{
                  left: scaled(frame.carapaceFromLeftMm - entry.plate.carapaceFromLeftMm),
                  top: scaled(frame.carapaceAtMm - entry.plate.carapaceAtMm),
                  width: scaled(entry.plate.widthMm),
                  height: scaled(entry.plate.heightMm),
                  opacity,
                }}
              >
                <Picture entry={entry} alone={outline !== undefined} />
              </span>
            ))}
          </section>
          <ScaleBar pxPerMm={pxPerMm} />
        </>
      )}
    </div>
  );
}

function Picture({ entry, alone }: { entry: PlateEntry; alone: boolean }): ReactElement {
  const alt = `Skin of ${rungName(entry.rung).toLowerCase()}, at the common scale`;
  return alone ? <SkinCutout entry={entry} alt={alt} /> : <CutImage entry={entry} alt={alt} />;
}
