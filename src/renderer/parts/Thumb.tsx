import { type ReactElement, useState } from 'react';
import { addressOf } from '../client/ask.ts';
import { Icon } from './Icon.tsx';
import style from './Thumb.module.css';

interface Props {
  /** null shows an empty mount. */
  photoId: string | null;
  /** What the picture shows; '' when the words beside it say so already. */
  alt: string;
  kind?: 'thumbnail' | 'screen';
  /** `cover` fills the mount and may crop; `contain` shows the whole picture. */
  fit?: 'cover' | 'contain';
  className?: string | undefined;
}

/** A smaller copy of a photo in a mount that keeps its place while loading and says so when the copy is gone. */
export function Thumb({ photoId, alt, kind = 'thumbnail', fit = 'cover', className }: Props): ReactElement {
  const [broken, setBroken] = useState<string | null>(null);
  const classes = [style['mount'], style[fit], className].filter(Boolean).join(' ');
  if (photoId === null) {
    return (
      <span className={classes}>
        <Icon name="photo" />
      </span>
    );
  }
  if (broken === photoId) {
    return (
      <span className={classes}>
        <Icon name="warning" />
        <span className="spoken-only">{alt} (photo not readable)</span>
      </span>
    );
  }
  return (
    <span className={classes}>
      <img
        src={addressOf('GET /api/photos/{photoId}/renditions/{kind}', { photoId, kind })}
        alt={alt}
        loading="lazy"
        decoding="async"
        onError={() => setBroken(photoId)}
      />
    </span>
  );
}
