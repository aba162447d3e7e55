import { useEffect, useState } from 'react';
import type { Photo } from '../../../domain/photo/photo.ts';
import { type OpenPicture, openPicture } from './picture/picture.ts';

/** The pixels of a photo for as long as the component stands; null in the first moment. */
export function useOpenPicture(photo: Photo): OpenPicture | null {
  const [open, setOpen] = useState<OpenPicture | null>(null);
  useEffect(() => {
    const picture = openPicture(photo);
    setOpen(picture);
    return () => picture.close();
  }, [photo]);
  return open;
}
