import { type ReactElement, useState } from 'react';
import { Link } from 'wouter';
import type { Photo } from '../../../domain/photo/photo.ts';
import { VIEW_LABELS } from '../../../words/labels.ts';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { DayText } from '../../parts/DayText.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { IconButton } from '../../parts/IconButton.tsx';
import { Thumb } from '../../parts/Thumb.tsx';
import { RemoveDialog } from '../../removing/RemoveDialog.tsx';
import { PhotoDialog } from './PhotoDialog.tsx';
import style from './PhotoStrip.module.css';

/** Photos side by side; each leads to the Bench and can be set right or removed. */
export function PhotoStrip({ photos, intakePath }: { photos: readonly Photo[]; intakePath: string }): ReactElement {
  const [open, setOpen] = useState<{ photo: Photo; what: 'edit' | 'remove' } | null>(null);
  const close = () => setOpen(null);
  return (
    <>
      <ul className={style['strip']}>
        {photos.map((photo) => (
          <li key={photo.id} className={style['photo']}>
            <Link to={`/bench/${photo.id}`} className={style['link']}>
              <Thumb photoId={photo.id} alt={`${VIEW_LABELS[photo.view]}; open on the Bench`} className={style['thumb']} />
              <span className={style['way']} aria-hidden="true">
                <Icon name="measure" sizePx={16} />
                Bench
              </span>
            </Link>
            <div className={style['foot']}>
              <span className={style['words']}>
                {VIEW_LABELS[photo.view]}
                {photo.takenOn && (
                  <>
                    <br />
                    <DayText day={photo.takenOn} />
                  </>
                )}
              </span>
              <IconButton icon="edit" label={`Say what ${photo.originalName} shows`} onClick={() => setOpen({ photo, what: 'edit' })} />
              <IconButton icon="remove" label={`Remove ${photo.originalName}`} onClick={() => setOpen({ photo, what: 'remove' })} />
            </div>
          </li>
        ))}
        <li className={style['add']}>
          <ButtonLink kind="quiet" to={intakePath} icon="add">
            {photos.length === 0 ? 'Bring in a photo' : 'Another photo'}
          </ButtonLink>
        </li>
      </ul>
      {open?.what === 'edit' && <PhotoDialog photo={open.photo} onClose={close} />}
      {open?.what === 'remove' && (
        <RemoveDialog kind="photo" id={open.photo.id} what={`the photo ${open.photo.originalName}`} onClose={close} />
      )}
    </>
  );
}
