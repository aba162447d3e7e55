import type { ReactElement } from 'react';
import { rungMark, rungName, unmeasuredInWords } from '../../../../words/ladder.ts';
import { type RowRoom, scaled } from './commonScale.ts';
import type { GalleryEntry } from './entries.ts';
import style from './Gallery.module.css';

type EmptyEntry = Exclude<GalleryEntry, { kind: 'plate' }>;

const HALF_HEIGHT_PX = 40;

/** Holds the place of what has no picture at scale, and says why. */
export function EmptyPlace({ entry, room }: { entry: EmptyEntry; room: RowRoom }): ReactElement {
  return (
    <li className={style['figure']} style={{ width: 'var(--narrowest)' }} data-molt={entry.kind === 'gap' ? undefined : entry.rung.moltId}>
      <div
        className={style['stand']}
        style={{ height: scaled(room.heightMm), paddingTop: `max(0px, ${scaled(room.carapaceLineMm)} - ${HALF_HEIGHT_PX}px)` }}
      >
        <span className={style['empty']} style={{ height: 2 * HALF_HEIGHT_PX }} />
      </div>
      <p className={style['caption']}>
        <strong>
          <span className={style['whole']}>{entry.kind === 'gap' ? 'Gap' : rungName(entry.rung)}</span>
          <span className={style['mark']} aria-hidden="true">
            {entry.kind === 'gap' ? '–' : rungMark(entry.rung)}
          </span>
        </strong>
        <span className={style['fact']}>{reason(entry)}</span>
      </p>
    </li>
  );
}

function reason(entry: EmptyEntry): string {
  switch (entry.kind) {
    case 'gap':
      return entry.words;
    case 'off-scale':
      return 'photo not at scale';
    case 'no-photo':
      return unmeasuredInWords(entry.rung);
  }
}
