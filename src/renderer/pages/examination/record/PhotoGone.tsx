import type { ReactElement } from 'react';
import { useAnswer } from '../../../client/queries.ts';
import style from './SignedPhotos.module.css';

/** Evidence that is no longer with its animal: that it is gone, and by what its file can be known again. */
export function PhotoGone({ photoId, place }: { photoId: string; place: number }): ReactElement {
  const photo = useAnswer('GET /api/photos/{photoId}', { path: { photoId } });
  if (!photo.data) {
    return (
      <p className={style['gone']}>
        {photo.error ? `Evidence photo ${place} is gone, and so is its record.` : `Evidence photo ${place} …`}
      </p>
    );
  }
  const { originalName, sha256, subject } = photo.data;
  return (
    <div className={style['gone']}>
      <p>
        Evidence photo {place}, {originalName}, is no longer with this animal
        {subject.kind === 'none' ? ': it belongs to none now.' : ': it was given to another one.'}
      </p>
      <Fingerprint sha256={sha256} />
    </div>
  );
}

/** What tells whether a file found again is the one that was signed with. */
export function Fingerprint({ sha256 }: { sha256: string }): ReactElement {
  return (
    <p className={style['fingerprint']}>
      Fingerprint of the file (SHA-256): <span className="figures">{sha256}</span>
    </p>
  );
}
