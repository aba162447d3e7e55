import type { ReactElement } from 'react';
import type { OffScaleReason } from '../../../../domain/plate/platePhoto.ts';
import { rungName } from '../../../../words/ladder.ts';
import { ButtonLink } from '../../../parts/ButtonLink.tsx';
import type { GalleryEntry } from './entries.ts';
import style from './Gallery.module.css';

const REASONS: Readonly<Record<OffScaleReason, string>> = {
  'no-scale-marked': 'nothing of known size is marked in the photo yet',
  'marks-do-not-fit': 'the marks on the scale object do not fit together',
  'seen-too-flat': 'the photo is taken too flat over the table to be laid out',
};

/** Which skins are not among the others, and what would bring them there. */
export function OffScale({ entries }: { entries: readonly GalleryEntry[] }): ReactElement | null {
  const offScale = entries.filter((entry) => entry.kind === 'off-scale');
  if (offScale.length === 0) return null;
  return (
    <ul className={style['offScale']}>
      {offScale.map(({ rung, photo, reason }) => (
        <li key={rung.moltId}>
          <span>
            <strong>{rungName(rung)}</strong> is not at scale: {REASONS[reason]}.
          </span>
          <ButtonLink to={`/bench/${photo.id}`} kind="quiet" icon="measure">
            Give it a scale on the Bench
          </ButtonLink>
        </li>
      ))}
    </ul>
  );
}
