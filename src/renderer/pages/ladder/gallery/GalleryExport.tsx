import { type ReactElement, useState } from 'react';
import type { SheetScale, SheetSize } from '../../../../domain/plate/sheet.ts';
import { addressOf } from '../../../client/ask.ts';
import { fileName } from '../../../leaving/save.ts';
import { Select } from '../../../parts/Select.tsx';
import style from './Gallery.module.css';

const SHEETS: readonly { value: SheetSize; label: string }[] = [
  { value: 'a4', label: 'A4' },
  { value: 'letter', label: 'Letter' },
];
const SCALES: readonly { value: SheetScale; label: string }[] = [
  { value: 'fitted', label: 'Fitted to the sheet' },
  { value: 'true', label: 'True scale' },
];

/** Saves all skins on one sheet, or one after the other in one moving picture. */
export function GalleryExport({ specimenId, called, skins }: { specimenId: string; called: string; skins: number }): ReactElement {
  const [sheet, setSheet] = useState<SheetSize>('a4');
  const [scale, setScale] = useState<SheetScale>('fitted');
  const query = `?${new URLSearchParams({ sheet, scale })}`;
  const sheetName = `${called} contact sheet, ${sheet === 'a4' ? 'A4' : 'Letter'}, ${scale === 'true' ? 'true scale' : 'fitted'}`;
  return (
    <details className={style['leaving']}>
      <summary>Save a contact sheet or a flip-book</summary>
      <div className={style['sheetChoices']}>
        <Select label="Paper" value={sheet} options={SHEETS} onChange={setSheet} />
        <Select label="Scale" value={scale} options={SCALES} onChange={setScale} />
      </div>
      <p className={style['links']}>
        <a
          href={addressOf('GET /api/specimens/{specimenId}/contact-sheet.pdf', { specimenId }) + query}
          download={fileName(`${sheetName}.pdf`)}
        >
          Contact sheet (PDF)
        </a>
        <a
          href={addressOf('GET /api/specimens/{specimenId}/contact-sheet.png', { specimenId }) + query}
          download={fileName(`${sheetName}.png`)}
        >
          Contact sheet (PNG)
        </a>
        {skins > 1 && (
          <a
            href={addressOf('GET /api/specimens/{specimenId}/flip-book.webp', { specimenId })}
            download={fileName(`${called} flip-book.webp`)}
          >
            Flip-book (animated WebP)
          </a>
        )}
      </p>
    </details>
  );
}
